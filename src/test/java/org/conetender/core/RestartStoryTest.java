package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Reconsidered;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** What a restart brings back, on a machine with and without a clock of its own. */
class RestartStoryTest {

    private static final long TEN_YEARS = 10L * 365 * 24 * 3_600_000;
    private static final long MINUTE = 60_000;

    private static Story growing(int hours) {
        Story s = Story.at(Fitting.ROOM_PROBE);
        s.does(Step.STARTED);
        return s.minutes(60L * hours + 1);
    }

    private static Development done(Story s) {
        return s.state().live().cones().get("a").growth().done();
    }

    /** @param downMs true length  @param afterC what the water is found at */
    private static Story unset(Story s, long downMs, double afterC) {
        s.wall(0, false).restart("boot-2", downMs).wall(-TEN_YEARS, false);
        s.senses.water("a", afterC);
        return s.seconds(5);
    }

    @Test
    void hoursOfAnUnknownCutAreAnIntervalThatShrinksToTheTruthWhenTheClockIsSet() {
        Story s = growing(5);
        double before = done(s).degreeHours();
        s.senses.room(27);
        unset(s, 90 * MINUTE, 27).minutes(3);
        Development unknown = done(s);
        assertThat(unknown.mostDegreeHours() - unknown.leastDegreeHours()).isGreaterThan(100);
        s.wall(TEN_YEARS, true).minutes(1);
        Development known = done(s);
        assertThat(known.mostDegreeHours() - known.leastDegreeHours()).isLessThan(30);
        // The room may have been 2 K warmer: at most 17 °C·h in an hour of the cut and what lay around it.
        assertThat(known.mostDegreeHours()).isLessThan(before + 17 * 1.7);
        assertThat(known.leastDegreeHours()).isGreaterThan(before);
    }

    /** The wide interval of a quarter hour without a clock must not turn the batch into another stage. */
    @Test
    void aBatchDoesNotMoveOnByHoursThatAreOnlyAssumed() {
        Story s = growing(8);
        s.senses.room(27);
        unset(s, 2 * MINUTE, 27).minutes(50);
        assertThat(done(s).degreeHours()).as("the middle of the interval").isGreaterThan(250);
        assertThat(s.stage()).isEqualTo("incubating");
    }

    @Test
    void afterAnHourItMovesOnAndStepsBackWhenTheTruthTurnsUp() {
        Story s = growing(8);
        s.senses.room(27);
        unset(s, 2 * MINUTE, 27).minutes(62);
        assertThat(s.stage()).isIn("hatching", "ready");
        s.wall(TEN_YEARS, true).minutes(1);
        assertThat(s.stage()).isEqualTo("incubating");
        assertThat(done(s).degreeHours()).isLessThan(160);
    }

    @Test
    void itNeverStepsBackPastWhatAPersonSaw() {
        Story s = growing(8);
        s.senses.room(27);
        unset(s, 2 * MINUTE, 27).minutes(62);
        s.does(Step.SALTED);
        s.wall(TEN_YEARS, true).minutes(1);
        assertThat(s.stage()).isIn("hatching", "ready");
    }

    /** The bridge is in the book, the checkpoint may be older: neither lost nor counted twice. */
    @Test
    void anotherRestartBeforeTheClockIsSetNeitherLosesNorDoublesTheCut() {
        Story once = growing(5);
        once.senses.room(27);
        unset(once, 90 * MINUTE, 27).minutes(20).wall(TEN_YEARS, true).minutes(1);
        Story twice = growing(5);
        twice.senses.room(27);
        unset(twice, 90 * MINUTE, 27).seconds(20).restart("boot-2", 2_000).minutes(20)
                .wall(TEN_YEARS, true).minutes(1);
        assertThat(done(twice).degreeHours()).isCloseTo(done(once).degreeHours(), within(0.5));
        assertThat(twice.paper.facts().stream().filter(f -> f.change() instanceof Change.Bridged)
                .filter(f -> f.cone().equals("a"))).hasSize(1);
    }

    @Test
    void aDeadProbeDoesNotMakeOldDevelopmentNew() {
        Story s = growing(5);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(120);
        double before = done(s).leastDegreeHours();
        s.restart("boot-1", 5_000);
        s.senses.water("a", 27);
        s.senses.room(27);
        s.minutes(2);
        // Two hours at 25 to 27 °C are 26 to 30 °C·h.
        assertThat(done(s).mostDegreeHours()).isGreaterThan(before + 26);
    }

    @Test
    void hoursInTheHeatSurviveARestart() {
        Story s = growing(3);
        s.senses.water("a", 39);
        s.minutes(30);
        Development before = done(s);
        assertThat(before.hoursAboveLoss()).isGreaterThan(0.4);
        s.restart("boot-1", 5_000).minutes(1);
        assertThat(done(s).hoursWarm()).isCloseTo(before.hoursWarm(), within(0.05));
        assertThat(done(s).hoursAboveLoss()).isCloseTo(before.hoursAboveLoss(), within(0.05));
        assertThat(done(s).hoursCold()).isZero();
    }

    /** A report of two hours before a cut is not fresh after it, whatever the clock says. */
    @Test
    void oldReportsDoNotBecomeFreshInANewBoot() {
        Story s = growing(5);
        s.does(Step.TOPPED_UP);
        s.minutes(120);
        unset(s, 5 * MINUTE, 27);
        assertThat(s.ask("a", new Ask.Withdraw("last")).sentence()).contains("over half an hour old");
        assertThat(s.found("handled")).isEmpty();
    }

    @Test
    void aReportJustBeforeACutOfUnknownLengthCannotBeWithdrawnUntilTheClockIsSet() {
        Story s = growing(5);
        s.does(Step.TOPPED_UP);
        s.minutes(2);
        unset(s, 5 * MINUTE, 27);
        assertThat(s.ask("a", new Ask.Withdraw("last")).sentence()).contains("the clock is not set yet");
        s.wall(TEN_YEARS, true).seconds(5);
        assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
    }

    private static Story seenDeadProbe() {
        Story s = growing(1);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(10);
        s.ask("a", new Ask.Acknowledge("probe"));
        return s.minutes(5);
    }

    @Test
    void whatAPersonAcknowledgedIsNotToldAgainAfterARestart() {
        Story s = seenDeadProbe();
        long before = s.told("probe");
        s.restart("boot-1", 3_000).minutes(300);
        assertThat(s.told("probe")).isEqualTo(before);
        assertThat(s.standing("a")).contains("probe");
    }

    @Test
    void itIsToldAgainWhenItWentAwayAndCameBack() {
        Story s = seenDeadProbe();
        s.restart("boot-1", 3_000).minutes(2);
        long before = s.told("probe");
        s.senses.water("a", 27);
        s.minutes(10);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(10);
        assertThat(s.told("probe")).isEqualTo(before + 1);
    }

    /** It ended while nobody looked: what comes hours later is another failure, through restarts too. */
    @Test
    void whatWasGoneAtTheStartIsForgotten() {
        Story s = seenDeadProbe();
        s.senses.water("a", 27);
        s.restart("boot-1", 3_000).minutes(20);
        long before = s.told("probe");
        assertThat(s.state().book().cone("a").acknowledged()).isEmpty();
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(3);
        assertThat(s.told("probe")).isEqualTo(before + 1);
    }

    /** Nothing but the report's own moment can be known of a start, however late its commit was. */
    @Test
    void aStartCountsFromTheMomentItWasReportedHoweverSlowTheDisk() {
        Story s = Story.at();
        s.paper.mood(Paper.Mood.WAITING);
        s.tick();
        long reported = s.now().monoMs();
        s.send("a", new Ask.Did(Step.STARTED));
        s.minutes(3);
        assertThat(s.stage()).isEqualTo("clean");
        s.paper.mood(Paper.Mood.KEEPING);
        s.seconds(3);
        assertThat(s.batch("a").stock().orElseThrow().at().monoMs()).isEqualTo(reported);
        assertThat(s.batch("a").stage().since().monoMs()).isEqualTo(reported);
        assertThat(done(s).degreeHours()).isCloseTo(3 * 15 / 60.0, within(0.2));
        s.restart("boot-1", 2_000).seconds(3);
        assertThat(s.batch("a").stock().orElseThrow().at().monoMs()).isEqualTo(reported);
    }

    /** What was called ready with a wide doubt is so with a narrow one: the record says it once. */
    @Test
    void aRipeBatchIsNotTakenBackForAMomentWhenTheClockIsSet() {
        Story s = Story.at(Fitting.ROOM_PROBE, Fitting.NO_HEAT);
        s.does(Step.STARTED).minutes(24 * 60 + 1);
        s.senses.room(27);
        unset(s, 120 * MINUTE, 27).minutes(70);
        assertThat(s.stage()).isEqualTo("ready");
        double wide = renewed(s).neededDegreeHours();
        s.wall(TEN_YEARS, true).seconds(3);
        double narrow = s.state().live().cones().get("a").needed();
        assertThat(done(s).mostDegreeHours()).isBetween(narrow, wide - 2);
        s.minutes(3);
        assertThat(s.paper.facts().stream().filter(f -> f.change() instanceof Change.Moved(String stage,
                String _) && (stage.equals("ready") || stage.equals(Reconsidered.HATCHING)))).hasSize(1);
    }

    private static ConeLive.Outlook outlook(Story s) {
        return s.state().live().cones().get("a").outlook();
    }

    /** Else an hour of the wide interval would stand for a minute beside degree-hours of the narrow one. */
    @Test
    void theForecastIsMadeAnewInTheTickInWhichTheClockIsSet() {
        Story s = growing(8);
        s.senses.room(27);
        unset(s, 90 * MINUTE, 27).minutes(3);
        Forecast wide = renewed(s);
        s.wall(TEN_YEARS, true).tick();
        Forecast narrow = outlook(s).forecast().orElseThrow();
        assertThat(narrow.doneDegreeHours()).isEqualTo(done(s).degreeHours(), within(1e-9));
        assertThat(narrow.ready().latest() - narrow.ready().earliest())
                .isLessThan((wide.ready().latest() - wide.ready().earliest()) / 1.5);
    }

    /** The forecast of that tick: the next is due in a minute. */
    private static Forecast renewed(Story s) {
        long before = outlook(s).atMs();
        while (outlook(s).atMs() == before) {
            s.tick();
        }
        return outlook(s).forecast().orElseThrow();
    }

    /** The floor holds from where the stage turns, also while what was done is in doubt. */
    @Test
    void waterIsForeseenToBeHeldUntilTheBatchIsCalledReady() {
        Story s = growing(16);
        s.senses.room(27);
        unset(s, 90 * MINUTE, 27).seconds(5);
        s.senses.room(20);
        s.minutes(10);
        Forecast f = s.state().live().cones().get("a").outlook().forecast().orElseThrow();
        assertThat(f.neededDegreeHours()).as("in doubt").isGreaterThan(410);
        assertThat(f.course().headingC()).isCloseTo(27, within(0.5));
    }
}
