package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Danger: a heater whose output cannot be set. */
class StuckHeaterTest {

    private static final String HEART = "site.heartbeat";
    private static final String NEITHER = "neither the heater's output nor its cut-out's can be set";

    /** Cone a is warmed, and has been for a while. */
    private static Story warming(Story s) {
        s.senses.water("a", 22);
        return s.does(Step.STARTED).minutes(3);
    }

    private static boolean beats(Story s) {
        boolean edge = false;
        for (int i = 0; i < 5; i++) {
            boolean before = s.on(HEART);
            s.tick();
            edge |= s.on(HEART) != before;
        }
        return edge;
    }

    @Test
    void theOtherSwitchOpensAPersonIsCalledAndTheHeartStopsWithinOneTick() {
        Story s = warming(Story.at(Fitting.HEARTBEAT));
        assertThat(s.on("a.cut-out")).isTrue();
        s.unset.add("a.heat");
        s.tick();
        assertThat(s.on("a.heat")).isFalse();
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.standing("a")).containsExactly("heater-stuck");
        assertThat(s.told().getLast().what()).contains("may be on").contains("cut-out is open now");
        assertThat(s.told().getLast().kind().priority()).isEqualTo(AlarmKind.Priority.NOW);
        assertThat(s.standing("b")).isEmpty();
        s.tick();
        assertThat(beats(s)).isFalse();
        assertThat(s.on(HEART)).as("its safe level").isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.cut-out", "c.heat"})
    void eitherSwitchOfAnyConeStopsTheHeart(String output) {
        Story s = warming(Story.at(Fitting.HEARTBEAT));
        s.unset.add(output);
        s.seconds(2);
        assertThat(beats(s)).isFalse();
        assertThat(s.standing(output.substring(0, 1))).containsExactly(
                output.endsWith("heat") ? "heater-stuck" : "cut-out-stuck");
        assertThat(s.on(output.charAt(0) + ".heat")).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.lamp", "b.air-pause", HEART})
    void noOtherOutputStopsTheHeartOrTheHeat(String output) {
        Story s = warming(Story.at(Fitting.HEARTBEAT));
        s.unset.add(output);
        s.seconds(2);
        assertThat(beats(s)).isTrue();
        assertThat(s.on("a.cut-out")).isTrue();
    }

    @Test
    void whatFailsTogetherIsSaidTogetherAndWithoutACutOutThatIsSaid() {
        Story s = warming(Story.at());
        s.unset.add("a.heat");
        s.unset.add("a.cut-out");
        s.tick();
        assertThat(s.messages()).singleElement().satisfies(m -> assertThat(m.alarms()).singleElement()
                .satisfies(a -> assertThat(a.what()).isEqualTo(NEITHER)));
        Story bare = warming(Story.at(Fitting.NO_CUT_OUT));
        bare.unset.add("a.heat");
        bare.tick();
        assertThat(bare.told().getLast().what()).endsWith("no cut-out is fitted");
        assertThat(bare.on("a.heat")).isFalse();
    }

    /** First one switch does not obey and the other holds the heater; later nothing does. */
    @ParameterizedTest
    @CsvSource({"cut-out, heat, false", "cut-out, heat, true", "heat, cut-out, false", "heat, cut-out, true"})
    void whoKnowsOfOneSwitchHearsOfTheOther(String first, String second, boolean restarts) {
        Story s = warming(Story.at());
        s.unset.add("a." + first);
        s.minutes(1);
        assertThat(s.ask("a", new Ask.Acknowledge(alarm(first))).accepted()).isTrue();
        s.minutes(30);
        if (restarts) {
            s.restart("boot-1", 3_000);
        }
        s.unset.add("a." + second);
        s.seconds(2);
        assertThat(s.told(alarm(second))).isEqualTo(1);
        assertThat(s.told().getLast().what()).isEqualTo(NEITHER);
        s.minutes(30);
        assertThat(s.told(alarm(first))).as("known, and still there").isEqualTo(1);
    }

    private static String alarm(String output) {
        return output.equals("heat") ? "heater-stuck" : "cut-out-stuck";
    }

    @Test
    void anOutputThatObeysAgainIsOursAgainAndTheHeartBeatsOn() {
        Story s = warming(Story.at(Fitting.HEARTBEAT));
        s.unset.add("a.heat");
        s.minutes(1);
        s.unset.clear();
        s.seconds(2);
        assertThat(beats(s)).isTrue();
        assertThat(s.on("a.cut-out")).isTrue();
        s.minutes(3);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.told("heater-stuck")).isEqualTo(1);
    }

    /** It obeyed for three minutes after the machine was switched off and on: this is another time. */
    @Test
    void itIsToldAgainAlsoShortlyAfterARestart() {
        Story s = Story.at().does(Step.STARTED);
        s.unset.add("a.heat");
        s.minutes(1);
        assertThat(s.ask("a", new Ask.Acknowledge("heater-stuck")).accepted()).isTrue();
        s.unset.clear();
        s.restart("boot-2", 30_000).minutes(4);
        assertThat(s.standing("a")).doesNotContain("heater-stuck");
        s.unset.add("a.heat");
        s.minutes(3);
        assertThat(s.standing("a")).contains("heater-stuck");
        assertThat(s.told("heater-stuck")).isEqualTo(2);
    }

    @Test
    void aHeaterThatMayBeOnCountsAgainstTheSitesLimit() {
        Story s = new Story(Larkmoor.room().limit(50).build());
        for (String cone : new String[] {"a", "b", "c"}) {
            s.senses.water(cone, 22);
            assertThat(s.did(cone, Step.STARTED).accepted()).isTrue();
        }
        s.unset.add("a.heat");
        int[] most = new int[1];
        int[] ever = new int[1];
        s.each(x -> {
            int on = (x.on("b.heat") ? 1 : 0) + (x.on("c.heat") ? 1 : 0);
            most[0] = Math.max(most[0], on);
            ever[0] += on;
        });
        s.minutes(20);
        assertThat(ever[0]).as("the others are still warmed").isPositive();
        assertThat(most[0]).as("of two heaters of 25 W beside the one at large").isEqualTo(1);
    }

    /** Cone a is found welded with others at work. @param fitted whether a cut-out holds it */
    private static int mostBeside(boolean fitted) {
        Story s = new Story((fitted ? Larkmoor.room(Fitting.ROOM_PROBE)
                : Larkmoor.room(Fitting.ROOM_PROBE, Fitting.NO_CUT_OUT)).limit(50).build());
        s.senses.water("a", 27.4);
        s.does(Step.STARTED).minutes(6);
        for (double c = 27.4; c < 28.4 && s.standing("a").isEmpty(); c += 0.1) {
            s.senses.water("a", c);
            s.minutes(1);
        }
        assertThat(s.standing("a")).containsExactly("welded");
        for (String cone : new String[] {"b", "c"}) {
            s.senses.water(cone, 22);
            assertThat(s.did(cone, Step.STARTED).accepted()).isTrue();
        }
        int[] most = new int[1];
        s.each(x -> most[0] = Math.max(most[0], (x.on("b.heat") ? 1 : 0) + (x.on("c.heat") ? 1 : 0)));
        s.minutes(15);
        return most[0];
    }

    @Test
    void soDoesOneThatWasFoundWeldedUnlessACutOutHoldsIt() {
        assertThat(mostBeside(false)).as("of two heaters of 25 W beside it, by 50 W").isEqualTo(1);
        assertThat(mostBeside(true)).isEqualTo(2);
    }

    @Test
    void withoutThisGuardTheHeartWouldBeatOnBesideAHeaterThatNobodyCanStop() {
        Story s = warming(Story.without(StuckHeater.class, Fitting.HEARTBEAT));
        s.unset.add("a.heat");
        s.minutes(1);
        assertThat(beats(s)).isTrue();
        assertThat(s.on("a.cut-out")).isTrue();
        assertThat(s.standing("a")).isEmpty();
    }
}
