package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Random;
import org.conetender.core.Larkmoor;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a message or a line means; nonsense gets a sentence. */
class SetTopicTest {

    private static final SetTopic SETS = new SetTopic(Larkmoor.with(), new Names("homie", "larkmoor"));
    private static final String A = "homie/5/larkmoor-a/";

    private static Ask ask(String property, String payload) {
        return ((Heard.Understood) SETS.read(A + property + "/set", payload)).ask();
    }

    private static String no(String topic, String payload) {
        return ((Heard.Refused) SETS.read(topic, payload)).sentence();
    }

    @ParameterizedTest
    @EnumSource(Step.class)
    void everyStepIsAPlainWordOnBothFaces(Step step) {
        assertThat(ask("hand/step", step.word())).isEqualTo(new Ask.Did(step));
        assertThat(TellLine.read("a " + step.word())).isEqualTo(new Heard.Understood("a", new Ask.Did(step)));
        assertThat(Description.STEPS.split(",")).contains(step.word());
    }

    @Test
    void figuresComeAsFlatDocuments() {
        assertThat(ask("hand/filled", "{\"litres\":2,\"ppt\":25}")).isEqualTo(new Ask.DidFill(2, 25));
        assertThat(ask("hand/stocked", "{ \"lot\" : \"L-0417\", \"cysts-g\" : 1.5 }"))
                .isEqualTo(new Ask.DidStock("L-0417", 1.5));
        assertThat(ask("hand/count", "{\"nauplii\":120,\"umbrella\":3,\"unhatched\":40,\"sample-ml\":0.25}"))
                .isEqualTo(new Ask.DidCount(120, 3, 40, 0.25));
        assertThat(ask("hand/stocked", "{\"lot\":417,\"cysts-g\":1}")).isEqualTo(new Ask.DidStock("417", 1));
        assertThat(ask("hand/stocked", "{\"cysts-g\":1.5}"))
                .isEqualTo(new Ask.DidStockAsUsual(Optional.empty(), Optional.of(1.5)));
        assertThat(ask("hand/stocked", "{}")).isEqualTo(new Ask.Did(Step.STOCKED));
    }

    @Test
    void theOtherSettablesSpeakForThemselves() {
        assertThat(ask("water/setpoint", "26.5")).isEqualTo(new Ask.SetSetpoint(26.5));
        assertThat(ask("hatch/ready-by", "fri 07:30"))
                .isEqualTo(new Ask.ReadyBy(Optional.of(Hour.parse("fri 07:30"))));
        for (String nothing : new String[] {"", "\0", "none"}) {
            assertThat(ask("hatch/ready-by", nothing)).isEqualTo(new Ask.ReadyBy(Optional.empty()));
        }
        assertThat(ask("hand/withdraw", "")).isEqualTo(new Ask.Withdraw("last"));
        assertThat(ask("hand/withdraw", "\0")).as("Homie's empty string").isEqualTo(new Ask.Withdraw("last"));
        assertThat(ask("hand/withdraw", "filled")).isEqualTo(new Ask.Withdraw("filled"));
        assertThat(ask("hand/acknowledge", "dry")).isEqualTo(new Ask.Acknowledge("dry"));
        assertThat(ask("hand/shelve", "{\"alarm\":\"dry\",\"hours\":8}")).isEqualTo(new Ask.Shelve("dry", 8));
        assertThat(ask("usual/ppt", "30")).isEqualTo(new Ask.SetUsual(Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.of(30.0)));
        assertThat(ask("usual/lot", "L-0500"))
                .isEqualTo(new Ask.SetUsual(Optional.of("L-0500"), Optional.empty(),
                Optional.empty(), Optional.empty()));
        assertThat(SETS.read("homie/5/larkmoor/site/away/set", "neighbour"))
                .isEqualTo(new Heard.Understood("", new Ask.Away("neighbour")));
        assertThat(SETS.read("homie/5/larkmoor/site/away/set", "\0"))
                .isEqualTo(new Heard.Understood("", new Ask.Away("")));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            hand/step    | jump                              | there is no step 'jump'; the steps are started
            hand/step    | STARTED                           | there is no step
            hand/shelve  | {"alarm":"dry"}                   | 'hours' is missing
            hand/shelve  | dry 8                             | Not understood
            hand/filled  | {"litres":2}                      | 'ppt' is missing
            hand/count   | {"nauplii":3}                     | 'unhatched' and 'sample-ml' are missing
            site/tin     | {"lot":"L-0417"}                  | the figure 'cysts-g' is missing
            hand/weighed | 9.5                               | Not understood
            hand/filled  | {"litres":"two","ppt":25}         | 'litres' must be a number
            hand/filled  | {"litres":2,"ppt":25,"x":1}       | unknown figure 'x'; known are litres, ppt
            hand/filled  | {"litres":1e999,"ppt":25}         | must be a number
            hand/filled  | {"litres":2,"litres":3,"ppt":1}   | stands twice
            hand/filled  | [2,25]                            | expected '{' at character 1
            hand/filled  | {"litres":2,"ppt":25} and         | text behind the object
            hand/filled  | {"litres":02,"ppt":25}            | expected a number
            hand/filled  | {"litres":2                       | expected ',' or '}'
            hand/count   | {"nauplii":1.5,"umbrella":0,"unhatched":0,"sample-ml":1} | whole number
            water/setpoint | warm                            | 'setpoint' must be a number
            water/setpoint | NaN                             | 'setpoint' must be a number
            usual/litres | 2 L                               | 'litres' must be a number
            hatch/ready-by | at noon                         | an hour reads 07:30, fri 07:30 or
            heat/on      | true                              | 'heat/on' cannot be set
            hand/next-step | x                               | cannot be set
            """)
    void nonsenseGetsASentenceThatNamesIt(String property, String payload, String words) {
        assertThat(no(A + property + "/set", payload)).startsWith("Not understood: ").contains(words.strip())
                .endsWith("nothing was changed.");
    }

    @Test
    void otherTopicsAreNotOurs() {
        for (String t : new String[] {"homie/5/larkmoor-z/hand/step/set", "homie/5/larkmoor-a/hand/step",
            "homie/5/larkmoorx/hand/step/set", "homie/4/larkmoor-a/hand/step/set", "", "/set"}) {
            assertThat(SETS.property(t)).as(t).isEmpty();
        }
        assertThat(SETS.property(A + "hand/step/set")).contains(A + "hand/step");
        assertThat(no("elsewhere", "x")).contains("nothing to set at elsewhere");
        assertThat(no(A + "hand/step/set", "x".repeat(1_025))).contains("too long");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            a filled litres=2 ppt=25       | DidFill[litres=2.0, ppt=25.0]
            a stocked lot=L-9 cysts-g=1.5  | DidStock[lot=L-9, cystsG=1.5]
            a stocked cysts-g=1.5          | DidStockAsUsual[lot=Optional.empty, cystsG=Optional[1.5]]
            a stocked lot=L-9              | DidStockAsUsual[lot=Optional[L-9], cystsG=Optional.empty]
            a weighed wet-g=9.5            | DidWeigh[wetG=9.5]
            site tin lot=417 cysts-g=425   | TinHolds[lot=417, cystsG=425.0]
            a setpoint 26.5                | SetSetpoint[degreesC=26.5]
            a ready-by none                | ReadyBy[hour=Optional.empty]
            a withdraw                     | Withdraw[what=last]
            a withdraw filled              | Withdraw[what=filled]
            a acknowledge air-failed       | Acknowledge[alarm=air-failed]
            a shelve dry 8                 | Shelve[alarm=dry, hours=8.0]
            site shelve clock 0.5          | Shelve[alarm=clock, hours=0.5]
            a alarms                       | Alarms[]
            site alarms                    | Alarms[]
            site away helper=neighbour          | Away[helper=neighbour]
            site away                      | Away[helper=nobody]
            site back                      | Away[helper=]
            """)
    void aLineSaysTheSame(String line, String ask) {
        assertThat(TellLine.read(line)).isInstanceOfSatisfying(Heard.Understood.class, u -> {
            assertThat(u.ask().toString()).isEqualTo(ask.strip());
            assertThat(u.cone()).isEqualTo(line.startsWith("site") ? "" : "a");
        });
    }

    @Test
    void anHourMayBeTwoWords() {
        for (String line : new String[] {"a ready-by fri 07:30", "a ready-by  Friday   7:30"}) {
            assertThat(TellLine.read(line)).isEqualTo(new Heard.Understood("a",
                    new Ask.ReadyBy(Optional.of(Hour.parse("fri 07:30")))));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a", "a jump", "a started now", "a filled litres", "a filled litres=two",
        "a filled litres=2 litres=3", "a filled =2", "a setpoint", "a setpoint 1 2", "a acknowledge",
        "a usual", "a usual colour=red", "a count nauplii=3", "a setpoint NaN", "a withdraw a b",
        "a ready-by", "a ready-by at noon", "a ready-by 07:30 none"})
    void aLineThatIsNotUnderstoodIsAnsweredWithASentence(String line) {
        assertThat(TellLine.read(line)).isInstanceOfSatisfying(Heard.Refused.class,
                r -> assertThat(r.sentence()).matches("(Say|Not understood: ).*\\."));
    }

    /** Who leaves out a name or a figure is shown a whole line, and that one is understood. */
    @ParameterizedTest
    @ValueSource(strings = {"filled litres=2", "stocked 4", "weighed 9.5", "weighed wet-g=9,5", "count 180",
        "tin L-0417 cysts-g=200", "usual", "away neighbour"})
    void anExampleIsGivenThatWouldBeUnderstood(String line) {
        assertThat(TellLine.read("a " + line)).isInstanceOfSatisfying(Heard.Refused.class, r -> {
            String shown = r.sentence().replaceAll(".*; say it as in '(.*)'\\.", "$1");
            assertThat(shown).startsWith("a " + line.split(" ")[0] + " ");
            assertThat(TellLine.read(shown)).isInstanceOf(Heard.Understood.class);
        });
    }

    /** Seeded: anything at all is either understood or answered, on both faces. */
    @Test
    void nothingThatIsSentThrows() {
        String[] properties = {"hand/step", "hand/filled", "hand/stocked", "hand/count", "water/setpoint",
            "usual/litres", "hand/withdraw", "x/y"};
        for (int seed = 1; seed <= 3_000; seed++) {
            Random random = new Random(seed);
            String payload = mangled(random);
            assertThat(SETS.read(A + properties[random.nextInt(properties.length)] + "/set", payload))
                    .isNotNull();
            assertThat(TellLine.read(payload)).isNotNull();
        }
    }

    private static String mangled(Random random) {
        StringBuilder s = new StringBuilder(
                "{\"litres\":2.5,\"ppt\":25,\"lot\":\"L-\\u0034\\n\",\"cysts-g\":1e-1}");
        for (int i = 0; i < 1 + random.nextInt(4); i++) {
            int at = random.nextInt(Math.max(1, s.length()));
            switch (random.nextInt(4)) {
                case 0 -> s.insert(at, (char) random.nextInt(0x2fff));
                case 1 -> s.delete(at, Math.min(s.length(), at + 1 + random.nextInt(5)));
                case 2 -> s.insert(at, "\\u\"{},:=-.eE 0\0".charAt(random.nextInt(14)));
                default -> s.setLength(at);
            }
        }
        return s.toString();
    }

    /** Who is told what is missing keeps the figures that were given. */
    @Test
    void anExampleKeepsTheFiguresThatWereGiven() {
        assertThat(shown("a filled ppt=30")).endsWith("; say it as in 'a filled litres=2 ppt=30'.");
        assertThat(shown("b stocked lot=L-9 cysts-g=two"))
                .endsWith("; say it as in 'b stocked lot=L-9 cysts-g=4'.");
    }

    private static String shown(String line) {
        return ((Heard.Refused) TellLine.read(line)).sentence();
    }
}
