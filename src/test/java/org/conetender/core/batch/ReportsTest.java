package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** Which reports take permission away, which can be taken back, and which say how a cone stands. */
class ReportsTest {

    private static final Moment AT = new Moment("b", 0, 0, false);

    private static final List<Ask> OTHERS = List.of(new Ask.DidFill(2, 25), new Ask.DidStock("L", 2),
            new Ask.DidCount(1, 0, 0, 1), new Ask.DidWeigh(3), new Ask.TinHolds("L", 5),
            new Ask.SetUsual(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()),
            new Ask.SetSetpoint(26), new Ask.ReadyBy(Optional.empty()), new Ask.Withdraw("last"),
            new Ask.Acknowledge("dry"), new Ask.Shelve("dry", 1), new Ask.Alarms(), new Ask.Away("x"));

    private static Change did(Step s) {
        return new Change.Told(new Ask.Did(s));
    }

    private static Fact fact(Change c) {
        return new Fact(1, AT, "a", "r", c);
    }

    private static Set<Step> steps(java.util.function.Predicate<Step> which) {
        return Arrays.stream(Step.values()).filter(which).collect(Collectors.toSet());
    }

    private static List<String> others(java.util.function.Predicate<Ask> which) {
        return OTHERS.stream().filter(which).map(a -> a.getClass().getSimpleName()).toList();
    }

    @Test
    void takenAwayIsWhatHeatsOrStopsTheAir() {
        assertThat(steps(s -> Reports.takesAway(did(s)))).containsExactlyInAnyOrder(Step.DRAINED,
                Step.CLEANED, Step.ABANDONED, Step.VALVE_OPEN, Step.VALVE_SHUT, Step.HANDS_IN,
                Step.TOPPED_UP, Step.PART_DRAWN, Step.RELAY_EXCHANGED);
        assertThat(others(a -> Reports.takesAway(new Change.Told(a)))).containsExactly("Withdraw");
    }

    @Test
    void ofOurOwnOnlyWhatGivesWaitsForTheRecord() {
        assertThat(Reports.takesAway(new Change.Moved("settling", ""))).isFalse();
        assertThat(Reports.takesAway(new Change.Moved("ready", ""))).isTrue();
        assertThat(Reports.takesAway(new Change.Tripped("dry", ""))).isTrue();
        assertThat(Reports.takesAway(new Change.Released("dry", ""))).isFalse();
        assertThat(Reports.takesAway(new Change.Doubted("x"))).isTrue();
        assertThat(Reports.takesAway(new Change.Undoubted("x"))).isFalse();
        assertThat(Reports.takesAway(new Change.Taught("L", 1, new Lesson(new Lesson.At(1, 1, 1),
                new Lesson.Sight.First())))).isFalse();
        assertThat(Reports.takesAway(new Change.ClockSet())).isTrue();
    }

    @Test
    void whatAPersonSaidOfTheBatchCanBeTakenBack() {
        assertThat(steps(s -> !Reports.withdrawable(fact(did(s))))).containsExactly(Step.HANDS_IN);
        assertThat(others(a -> Reports.withdrawable(fact(new Change.Told(a))))).containsExactly("DidFill",
                "DidStock", "DidCount", "DidWeigh", "SetSetpoint", "ReadyBy");
        assertThat(Reports.withdrawable(fact(new Change.Moved("ready", "")))).isFalse();
    }

    @Test
    void anExchangeIsOneStep() {
        assertThat(steps(s -> Reports.exchange(fact(did(s))))).containsExactly(Step.RELAY_EXCHANGED);
        assertThat(Reports.exchange(fact(new Change.ClockSet()))).isFalse();
    }

    @Test
    void theNewestReportIsKnownByItsWord() {
        assertThat(Reports.newest(FitsTest.in("clean"))).isEmpty();
        assertThat(Reports.newest(FitsTest.in("settled"))).contains("settle");
        assertThat(Reports.newest(FitsTest.in("drained"))).contains("drained");
    }

    @Test
    void howAConeStandsIsSaidByWhatChangesIt() {
        assertThat(steps(s -> !Lives.reports(new Ask.Did(s)))).containsExactlyInAnyOrder(Step.HANDS_IN,
                Step.VALVE_SHUT, Step.VALVE_OPEN, Step.RELAY_EXCHANGED, Step.NONE_SEEN);
        assertThat(others(Lives::reports)).containsExactly("DidFill", "DidStock", "Withdraw");
    }
}
