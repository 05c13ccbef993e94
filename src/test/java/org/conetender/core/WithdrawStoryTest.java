package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Optional;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A report that was a mistake: what taking it back may change, and what it must never bring about. */
class WithdrawStoryTest {

    private static Story settling(Fitting... fittings) {
        Story s = Story.at(fittings);
        return s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
    }

    private static String withdraw(Story s, String what, boolean accepted) {
        Result.Reply r = s.ask("a", new Ask.Withdraw(what));
        assertThat(r.accepted()).as(r.sentence()).isEqualTo(accepted);
        return r.sentence();
    }

    @Test
    void onlyTheLastReportCanBeNamed() {
        Story s = settling();
        assertThat(withdraw(s, "first-seen", false))
                .contains("the last report was 'settle', not 'first-seen'");
        assertThat(s.stage()).isEqualTo("settling");
        withdraw(s, "settle", true);
        assertThat(s.stage()).isEqualTo("hatching");
        assertThat(withdraw(s, "first-seen", true)).contains("the batch is hydrating. ");
    }

    @Test
    void everyWordOfAShortReportNamesIt() {
        for (String word : new String[] {"started", "filled", "salted", "stocked", "last"}) {
            Story s = Story.at().does(Step.STARTED);
            withdraw(s, word, true);
            assertThat(s.stage()).as(word).isEqualTo("clean");
        }
    }

    @Test
    void theAnswerNamesWhatWasTakenBack() {
        Story s = Story.at().does(Step.STARTED);
        s.ask("a", new Ask.SetSetpoint(25));
        assertThat(withdraw(s, "last", true)).contains("'setpoint' of 09:00 is withdrawn");
        assertThat(withdraw(s, "last", true))
                .contains("'started' of 09:00 is withdrawn; the cone is clean. ");
    }

    /** A cone that was dry: the stocking was written with the filling that it stands for. */
    @Test
    void theFillingThatAStockingStoodForIsNamedAfterIt() {
        for (String what : new String[] {"last", "filled", "stocked"}) {
            Story s = Story.at();
            s.ask("a", new Ask.DidStock("L-0417", 2));
            assertThat(withdraw(s, what, true)).startsWith("Cone a: 'stocked' of 09:00 is withdrawn, and "
                    + "with it the filling that it stood for; the cone is clean.");
        }
        Story s = Story.at().does(Step.FILLED);
        s.ask("a", new Ask.DidStock("L-0417", 2));
        assertThat(withdraw(s, "last", true)).contains("'stocked' of 09:00 is withdrawn; the batch is fil");
        assertThat(withdraw(s, "last", true)).contains("'filled' of 09:00 is withdrawn; the cone is cl");
    }

    @Test
    void itsHourIsNamedWhereAClockTells() {
        Story s = Story.at().does(Step.STARTED).minutes(20).does(Step.FIRST_SEEN).minutes(20);
        assertThat(withdraw(s, "last", true)).contains("'first-seen' of 09:20 is withdrawn; the batch");
        s.wall(0, false).does(Step.SALTED);
        assertThat(withdraw(s, "last", true)).contains("'salted' is withdrawn; the batch");
    }

    /** Whoever takes back what was refused takes back the good report before it. */
    @Test
    void aRefusalInBetweenIsNamedWithTheReportThatIsTakenBackInstead() {
        Story s = settling().minutes(2);
        assertThat(s.did("a", Step.PART_DRAWN).accepted()).isFalse();
        s.minutes(3);
        s.ask("a", new Ask.SetUsual(Optional.of("L-0418"), Optional.empty(), Optional.empty(),
                Optional.empty()));
        assertThat(withdraw(s, "last", true)).startsWith("Cone a: 'settle' of 09:00 is withdrawn "
                + "('part-drawn' of 09:02 had been refused, so there was nothing of it to take back; if "
                + "'settle' was right, report it again); the batch is hatching.");
        assertThat(withdraw(s, "last", true)).as("once").doesNotContain("refused");
        assertThat(s.did("a", Step.DRAWING).accepted()).isFalse();
        s.does(Step.FIRST_SEEN);
        assertThat(withdraw(s, "last", true)).as("another was taken since").doesNotContain("refused");
    }

    @Test
    void whoNamesTheReportIsNotAskedWhetherTheRefusedOneWasMeant() {
        Story s = settling().minutes(2);
        assertThat(s.did("a", Step.PART_DRAWN).accepted()).isFalse();
        assertThat(withdraw(s, "settle", true)).contains("'settle' of 09:00 is withdrawn")
                .doesNotContain("refused");
    }

    /** Else the report before it would be taken back without a word. */
    @Test
    void handsInEndsByItselfAndIsNotTakenForTheReportBefore() {
        Story s = Story.at().does(Step.STARTED);
        s.ask("a", new Ask.SetSetpoint(25));
        s.does(Step.HANDS_IN);
        assertThat(withdraw(s, "last", false)).contains("'hands-in' cannot be withdrawn");
        assertThat(s.batch("a").marks().setpointC()).hasValue(25);
        withdraw(s, "setpoint", true);
        assertThat(s.batch("a").marks().setpointC()).isEmpty();
    }

    @Test
    void whatIsOlderThanHalfAnHourStands() {
        Story s = Story.at().does(Step.STARTED).minutes(31);
        assertThat(withdraw(s, "last", false)).contains("over half an hour old");
        assertThat(withdraw(Story.at(), "last", false)).contains("no report to withdraw");
    }

    @Test
    void aSettlingTakenBackGivesTheAirBackAtOnce() {
        Story s = settling().minutes(2);
        assertThat(s.on("a.air-pause")).isTrue();
        withdraw(s, "settle", true);
        assertThat(s.on("a.air-pause")).isFalse();
    }

    /** The air came back by itself; taking back a remark that was made meanwhile must not stop it anew. */
    @Test
    void takingBackARemarkNeverStopsTheAirAgain() {
        Story s = settling();
        assertThat(s.ask("a", new Ask.DidCount(41, 3, 9, 1)).accepted()).isTrue();
        s.minutes(11);
        assertThat(s.stage()).isEqualTo("ready");
        s.each(t -> assertThat(t.on("a.air-pause")).isFalse());
        withdraw(s, "count", true);
        s.minutes(20);
    }

    /** Where the valve was opened too early the pump ran on; taking that back must not flood it later. */
    @Test
    void takingBackAValveReportNeverStopsThePumpWithAnOpenValve() {
        Story s = Story.at(Fitting.SIPHONING).does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT);
        withdraw(s, "valve-shut", true);
        assertThat(s.did("a", Step.SETTLE).accepted()).isFalse();
        s.each(t -> assertThat(t.on("a.air-pause")).isFalse());
        s.minutes(2);
    }

    @Test
    void aFillingTakenBackTakesItsHeatAlong() {
        Story s = Story.at();
        s.senses.water("a", 20);
        s.does(Step.FILLED).minutes(10);
        assertThat(s.on("a.cut-out")).isTrue();
        withdraw(s, "filled", true);
        s.each(t -> assertThat(t.on("a.cut-out") || t.on("a.heat")).isFalse());
        s.minutes(5);
    }

    /** What never was ripe is not ready again, and a remark that is taken back changes no stage. */
    @Test
    void theAnswerSaysWhereTheBatchStandsAndNothingElse() {
        Story s = Story.at().does(Step.STARTED);
        s.minutes(60 * 14).does(Step.FIRST_SEEN, Step.SETTLE).minutes(7).does(Step.DRAWING, Step.PART_DRAWN);
        for (String what : new String[] {"part-drawn", "drawing", "settle"}) {
            assertThat(withdraw(s, what, true)).as(what).doesNotContain("ready again", "is ready.")
                    .contains(what.equals("settle") ? "; the batch is hatching. Next: "
                    : "; the batch goes on hatching. Next: wait; it is not ripe yet");
        }
        s.does(Step.VALVE_SHUT, Step.VALVE_OPEN);
        assertThat(withdraw(s, "valve-open", true))
                .contains("; the batch is hatching. Next: open the air valve");
        Story none = Story.at().does(Step.STARTED);
        none.minutes(60 * 14).does(Step.FIRST_SEEN, Step.NONE_SEEN);
        assertThat(withdraw(none, "none-seen", true)).contains("; the batch is hatching. Next: ")
                .doesNotContain("again");
    }

    @Test
    void anHourThatWasGivenUpIsSaidToBeWantedAgain() {
        Story s = Story.at().does(Step.STARTED);
        assertThat(s.ask("a", new Ask.ReadyBy(Optional.of(Hour.parse("2026-03-03 18:30")))).accepted())
                .isTrue();
        s.ask("a", new Ask.ReadyBy(Optional.empty()));
        assertThat(withdraw(s, "ready-by", true)).contains("'ready-by' of 09:00 is withdrawn, and "
                + "2026-03-03 18:30 (Tue) is wanted again; the batch is hydrating. Next: ");
        s.ask("a", new Ask.SetSetpoint(25));
        assertThat(withdraw(s, "setpoint", true)).contains("18:30 (Tue) is wanted again");
        assertThat(withdraw(s, "ready-by", true)).doesNotContain("wanted again");
    }

    /** Not that anything was on its way to the record: hours later that would say nothing. */
    @Test
    void theRecordSaysWhatBroughtTheAirBack() {
        Story s = settling().minutes(7).does(Step.DRAWING, Step.PART_DRAWN).minutes(1);
        withdraw(s, "part-drawn", true);
        s.minutes(2);
        assertThat(s.paper.facts()).filteredOn(f -> f.change() instanceof Change.Moved(String to, String _)
                && to.equals("ready")).extracting(Fact::change).containsExactly(
                new Change.Moved("ready", "'part-drawn' was withdrawn; its air is on"));
        String before = s.stage();
        s.restart("boot-1", 2_000).minutes(1);
        assertThat(s.stage()).isEqualTo(before).isEqualTo("ready");
        assertThat(s.told("air-back")).isZero();
    }

    @Test
    void aSetPointTakenBackIsTheConesOwnAgain() {
        Story s = Story.at().does(Step.STARTED);
        s.ask("a", new Ask.SetSetpoint(24));
        withdraw(s, "setpoint", true);
        s.tick();
        assertThat(s.state().live().cones().get("a").hold().aimC()).isEqualTo(27);
    }

    /** As a restart reads it: the withdrawal is a fact like any other. */
    @Test
    void whatWasTakenBackStaysTakenBackAfterARestart() {
        Story s = settling().minutes(1);
        withdraw(s, "settle", true);
        s.restart("boot-1", 2_000).minutes(1);
        assertThat(s.stage()).isEqualTo("hatching");
        s.pass(Duration.ofSeconds(5));
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.told("air-back")).isZero();
    }

    /** Else a cause that still stands would be told as new at once. */
    @Test
    void aFillingThatWasAMistakeEndsNoAlarm() {
        Story s = Story.at().does(Step.STARTED, Step.FIRST_SEEN, Step.STARTED);
        s.senses.water("a", 38.6);
        s.seconds(5);
        assertThat(s.told("cooked")).isEqualTo(1);
        withdraw(s, "started", true);
        s.seconds(30);
        assertThat(s.stage()).isEqualTo("hatching");
        assertThat(s.standing("a")).contains("cooked");
        assertThat(s.told("cooked")).isEqualTo(1);
    }

    /** Killed before the next checkpoint: the last one still holds the hours of the cysts taken back. */
    @ParameterizedTest
    @ValueSource(strings = {"boot-1", "boot-2"})
    void otherCystsInTheSameWaterGetNoHoursOfThoseTakenBack(String boot) {
        Story s = Story.at().does(Step.FILLED, Step.STOCKED).minutes(21);
        assertThat(degreeHours(s)).isGreaterThan(3);
        long batch = s.batch("a").number();
        if (boot.equals("boot-2")) {
            s.restart(boot, 30_000);
        }
        withdraw(s, "stocked", true);
        s.does(Step.STOCKED).restart(s.now().boot(), 2_000).tick();
        assertThat(s.batch("a").number()).isEqualTo(batch);
        assertThat(s.stage()).isEqualTo("hydrating");
        assertThat(degreeHours(s)).isLessThan(0.1);
        // Later than a loop of deaths, in which the stocking would be set aside.
        double own = degreeHours(s.minutes(12));
        s.restart(s.now().boot(), 2_000).tick();
        assertThat(degreeHours(s)).as("its own come back").isGreaterThan(1).isCloseTo(own, within(0.5));
    }

    private static double degreeHours(Story s) {
        return s.state().live().cones().get("a").growth().done().degreeHours();
    }

    /** A cone was confused with another, and the machine restarted before anybody saw that. */
    @ParameterizedTest
    @EnumSource(value = Step.class, names = {"DRAINED", "ABANDONED"})
    void aBatchThatWasSaidToBeOverByMistakeKeepsItsHoursThroughARestart(Step slip) {
        Story s = Story.at().does(Step.STARTED);
        s.pass(Duration.ofHours(11));
        double own = s.state().live().cones().get("a").growth().done().degreeHours();
        s.does(slip).minutes(2);
        s.restart("boot-1", 3_000).seconds(10);
        assertThat(s.ask("a", new Ask.Withdraw(slip.word())).accepted()).isTrue();
        s.minutes(2);
        assertThat(s.state().live().cones().get("a").growth().done().degreeHours())
                .isCloseTo(own, within(3.0));
    }
}
