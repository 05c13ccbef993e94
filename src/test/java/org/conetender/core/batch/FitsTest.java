package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.conetender.core.Larkmoor;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Which step is welcome in which stage, and what a person is told when it is not. */
class FitsTest {

    private static final Moment AT = new Moment("boot-1", 0, 0, true);

    /** Reports that lead to each stage, in order. */
    static final Map<String, List<Change>> WAYS = ways();

    private static Map<String, List<Change>> ways() {
        Map<String, List<Change>> w = new TreeMap<>();
        Change fill = new Change.Told(new Ask.DidFill(2, 25));
        Change stock = new Change.Told(new Ask.DidStock("L-0417", 2));
        w.put("clean", List.of());
        w.put("filled", List.of(fill));
        w.put("hydrating", List.of(fill, stock));
        w.put("incubating", plus(w.get("hydrating"), new Change.Moved("incubating", "")));
        w.put("hatching", plus(w.get("incubating"), new Change.Moved("hatching", "")));
        w.put("ready", plus(w.get("hatching"), new Change.Moved("ready", "")));
        w.put("settling", plus(w.get("ready"), did(Step.SETTLE)));
        w.put("settled", plus(w.get("settling"), new Change.Moved("settled", "")));
        w.put("drawing", plus(w.get("settled"), did(Step.DRAWING)));
        w.put("drained", plus(w.get("drawing"), did(Step.DRAINED)));
        w.put("abandoned", plus(w.get("incubating"), did(Step.ABANDONED)));
        return w;
    }

    private static Change did(Step s) {
        return new Change.Told(new Ask.Did(s));
    }

    private static List<Change> plus(List<Change> a, Change b) {
        List<Change> out = new java.util.ArrayList<>(a);
        out.add(b);
        return out;
    }

    static ConeBook in(String stage) {
        ConeBook b = Book.empty(Larkmoor.with(), AT).cone("a");
        long seq = 1;
        for (Change c : WAYS.get(stage)) {
            b = b.after(new Fact(seq, AT.plusMs(seq * 1000), "a", "r" + seq, c));
            seq++;
        }
        assertThat(b.batch().stage().word()).isEqualTo(stage);
        return b;
    }

    /** For each step the stages in which it is welcome; everywhere else it is refused. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            STARTED    | clean drained hatching ready settling settled drawing
            FILLED     | clean filled drained
            SALTED     | filled hydrating incubating hatching ready settling settled drawing
            STOCKED    | clean filled drained
            FIRST_SEEN | hydrating incubating hatching ready settling settled drawing
            NONE_SEEN  | hydrating incubating hatching ready settling settled drawing
            SETTLE     | hatching ready
            DRAWING    | settling settled
            PART_DRAWN | drawing
            DRAINED    | filled hydrating incubating hatching ready settling settled drawing abandoned
            RINSED     | clean drained
            CLEANED    | clean filled hatching ready settling settled drawing drained abandoned
            DISINFECTED| clean drained
            TOPPED_UP  | filled hydrating incubating hatching ready settling settled drawing abandoned
            ABANDONED  | filled hydrating incubating hatching ready settling settled drawing
            TOO_EARLY  | drawing drained
            RIGHT      | drawing drained
            LATE       | drawing drained
            """)
    void eachStepIsWelcomeInItsStagesOnly(Step step, String stages) {
        Set<String> welcome = Set.of(stages.strip().split(" "));
        for (String stage : WAYS.keySet()) {
            var no = Fits.refusal(in(stage), step);
            assertThat(no.isEmpty()).as(step.word() + " in " + stage + ": " + no)
                    .isEqualTo(welcome.contains(stage));
        }
    }

    @Test
    void whatDoesNotTouchTheBatchIsAlwaysWelcome() {
        for (String stage : WAYS.keySet()) {
            for (Step s : EnumSet.of(Step.VALVE_SHUT, Step.VALVE_OPEN, Step.HANDS_IN,
                    Step.RELAY_EXCHANGED)) {
                assertThat(Fits.refusal(in(stage), s)).isEmpty();
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Step.class)
    void everyRefusalSaysWhatToDoOrWhatToWaitFor(Step step) {
        for (String stage : WAYS.keySet()) {
            Fits.refusal(in(stage), step).ifPresent(no -> assertThat(no).endsWith(".").hasSizeGreaterThan(20)
                    .doesNotContain("null").doesNotStartWith("Cone")
                    .containsPattern("report|wait|say it|nothing to|already|no batch"));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            hydrating | STARTED    | batch 1 is hydrating in it
            filled    | STARTED    | filling is reported already; report 'stocked' when the cysts are. If the
            filled    | STARTED    | If the cone stands empty, report 'drained' before 'started'.
            incubating| STARTED    | report 'drained' or 'abandoned'
            abandoned | STARTED    | the abandoned batch is still in it
            clean     | SALTED     | report 'filled' first
            filled    | FIRST_SEEN | report 'stocked' first
            drained   | TOPPED_UP  | report 'filled' instead
            incubating| SETTLE     | 'first-seen' if nauplii swim
            settling  | SETTLE     | settling already
            drained   | SETTLE     | nothing to harvest
            ready     | DRAWING    | report 'settle' and wait
            drawing   | DRAWING    | 'drained' when it is done
            settled   | PART_DRAWN | report 'drawing' first, then 'part-drawn'
            ready     | PART_DRAWN | report 'settle', 'drawing' and 'part-drawn' as you do them, or one after
            incubating| PART_DRAWN | nothing has hatched yet
            clean     | PART_DRAWN | there is nothing to harvest
            clean     | DRAINED    | holds no water
            incubating| CLEANED    | report 'drained' first, then 'cleaned'
            ready     | RINSED     | still holds a batch
            ready     | RIGHT      | there is no harvest to judge
            clean     | ABANDONED  | no batch to abandon
            """)
    void theReasonIsTheStagesOwn(String stage, Step step, String words) {
        assertThat(Fits.refusal(in(stage), step).orElseThrow()).contains(words.strip());
    }

    /** Whoever filled without salt is reminded of it: 'started' would have stood for it too. */
    @Test
    void aStartOfAConeThatIsFilledWithoutSaltNamesBothStepsThatAreLeft() {
        ConeBook fresh = Book.empty(Larkmoor.with(), AT).cone("a").after(new Fact(1, AT, "a", "r1",
                new Change.Told(new Ask.DidFill(2, 0))));
        assertThat(Fits.refusal(fresh, Step.STARTED).orElseThrow())
                .contains("report 'salted' when the salt is in, and 'stocked' when the cysts are.");
    }

    @Test
    void countsAreForWaterWithCysts() {
        for (String stage : WAYS.keySet()) {
            assertThat(Fits.countRefusal(in(stage).batch().stage()).isEmpty())
                    .isEqualTo(in(stage).batch().stage().develops());
        }
    }

    @Test
    void figuresThatCannotBeRightAreRefusedWithTheirBound() {
        bad(new Ask.DidFill(0, 25), "litres = 0.0", "0.5 to 20");
        bad(new Ask.DidFill(2, 95), "ppt = 95.0", "0 to 80");
        bad(new Ask.DidFill(Double.NaN, 25), "litres = NaN", "0.5 to 20");
        bad(new Ask.DidStock("L-0417", 300), "cysts-g = 300.0", "0.01 to 200");
        bad(new Ask.DidStock(" ", 2), "label", "1 to 40");
        bad(new Ask.DidStock("x".repeat(41), 2), "label", "L-0417");
        bad(new Ask.DidStock("L\n1", 2), "label", "L-0417");
        bad(new Ask.DidCount(-1, 0, 0, 1), "counts", "1000000");
        bad(new Ask.DidCount(1, 0, 2_000_000, 1), "counts", "1000000");
        bad(new Ask.DidCount(0, 0, 0, 1), "nothing was counted", "'none-seen'");
        bad(new Ask.DidCount(1, 0, 0, 0), "sample-ml = 0.0", "0.01 to 1000");
        for (Ask good : Arrays.asList(new Ask.DidFill(2, 0), new Ask.DidStock("L-0417", 0.5),
                new Ask.DidCount(120, 3, 40, 0.25), new Ask.Did(Step.STARTED), new Ask.SetSetpoint(99))) {
            assertThat(Fits.badFigures(good)).isEmpty();
        }
    }

    private static void bad(Ask ask, String... words) {
        assertThat(Fits.badFigures(ask).orElseThrow()).contains(words).endsWith(".");
    }
}
