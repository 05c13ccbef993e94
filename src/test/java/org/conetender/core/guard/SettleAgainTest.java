package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Result;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: air that is stopped again before the water has recovered from the last time. */
class SettleAgainTest {

    private static Story hatched(Fitting... f) {
        Story s = Story.at(f);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        return s.minutes(5);
    }

    private static void refused(Story s, String... why) {
        Result.Reply r = s.did("a", Step.SETTLE);
        assertThat(r.accepted()).as(r.sentence()).isFalse();
        assertThat(r.sentence()).contains(why);
        s.seconds(3);
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void theCapIsNotUsedTwiceInARowAndThePersonIsToldWhen() {
        Story s = hatched().does(Step.SETTLE).minutes(10);
        assertThat(s.stage()).isEqualTo("ready");
        refused(s, "not had air for long enough", "report 'settle' in 13 min.");
        s.minutes(8);
        refused(s, "in 4 min.");
        s.minutes(4);
        assertThat(s.did("a", Step.SETTLE).accepted()).isTrue();
        assertThat(s.on("a.air-pause")).isTrue();
    }

    @Test
    void aSeparationBrokenOffAtOnceMayBeBegunAgain() {
        Story s = hatched().does(Step.SETTLE).minutes(2);
        s.ask("a", new Ask.Withdraw("settle"));
        s.seconds(5);
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.did("a", Step.SETTLE).accepted()).isTrue();
    }

    @Test
    void takingTheReportBackDoesNotGiveTheMinutesBack() {
        Story s = hatched().does(Step.SETTLE).minutes(9);
        s.ask("a", new Ask.Withdraw("settle"));
        s.seconds(5);
        refused(s, "in 11 min.");
    }

    private static Story takenBack(Story s, Step... slips) {
        s.does(slips).seconds(10);
        for (Step _ : slips) {
            assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        }
        return s.seconds(5);
    }

    private static Story drawing(Fitting... f) {
        return hatched(f).does(Step.SETTLE).minutes(7).does(Step.DRAWING).minutes(3);
    }

    /** Whoever says by mistake that it is empty has not given the animals new water. */
    @Test
    void aMistakenReportThatNoneAreInItGivesNoMinutesBack() {
        refused(takenBack(drawing(), Step.DRAINED), "in 12 min.");
        refused(takenBack(drawing(), Step.CLEANED), "not had air for long enough");
        refused(takenBack(drawing(), Step.ABANDONED), "not had air for long enough");
        refused(takenBack(drawing(), Step.DRAINED, Step.CLEANED), "not had air for long enough");
        refused(takenBack(drawing(), Step.STARTED), "not had air for long enough");
        refused(takenBack(drawing(), Step.STARTED, Step.FIRST_SEEN), "not had air for long enough");
        Story seen = hatched().does(Step.SETTLE).minutes(9);
        assertThat(seen.ask("a", new Ask.Withdraw("settle")).accepted()).isTrue();
        refused(takenBack(seen, Step.TOPPED_UP), "not had air for long enough");
        assertThat(seen.ask("a", new Ask.Withdraw("first-seen")).accepted()).isTrue();
        refused(seen.does(Step.FIRST_SEEN), "not had air for long enough");
    }

    @Test
    void norDoesARestartBeforeItIsTakenBack() {
        Story s = drawing().does(Step.DRAINED);
        s.restart("boot-1", 3_000).seconds(10);
        assertThat(s.ask("a", new Ask.Withdraw("drained")).accepted()).isTrue();
        refused(s, "in 22 min.");
        Story other = drawing().does(Step.STARTED);
        other.restart("boot-2", 60_000).seconds(10);
        assertThat(other.ask("a", new Ask.Withdraw("started")).sentence()).contains("is withdrawn");
        refused(other, "in 22 min.");
    }

    /** The valve is shut and the pump runs: nothing came to them while they counted as drawn. */
    @Test
    void behindAShutValveTheyBreatheOnThoughTheyCountAsDrawn() {
        Story s = hatched(Fitting.SIPHONING).does(Step.VALVE_SHUT, Step.SETTLE).minutes(7);
        s.does(Step.DRAWING).minutes(3);
        s.does(Step.DRAINED).minutes(5);
        assertThat(s.ask("a", new Ask.Withdraw("drained")).accepted()).isTrue();
        s.seconds(5);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString()
                .startsWith("no air was seen to arrive for more than 14 min");
    }

    /** What was drawn and not taken back within its time is gone, and other cysts have other water. */
    @Test
    void whatCannotBeTakenBackAnyMoreOwesNothing() {
        Story s = hatched(Fitting.SIPHONING).does(Step.VALVE_SHUT, Step.SETTLE).minutes(7);
        s.does(Step.DRAWING, Step.DRAINED).minutes(31);
        s.does(Step.STARTED, Step.VALVE_SHUT, Step.FIRST_SEEN);
        assertThat(s.did("a", Step.SETTLE).sentence()).contains("'settle' is recorded");
    }

    @Test
    void whatWasPartDrawnRestsBeforeTheSecondHarvest() {
        Story s = hatched().does(Step.SETTLE).minutes(7);
        s.does(Step.DRAWING).minutes(4);
        s.does(Step.PART_DRAWN);
        s.seconds(5);
        refused(s, "report 'settle' in 14 min.");
    }

    @Test
    void afterARestartTheAirRunsFirstWhatCouldHaveBeenMissing() {
        Story s = hatched().does(Step.SETTLE).minutes(5);
        s.restart("boot-1", 3_000).seconds(5);
        refused(s, "in 22 min.");
        Story dark = hatched();
        dark.restart("boot-2", 600_000).minutes(1);
        refused(dark, "in 21 min.");
    }

    @Test
    void norDoesARestartGiveAirThroughAValveThatIsShut() {
        Story s = hatched(Fitting.SIPHONING).does(Step.VALVE_SHUT).minutes(9);
        refused(s, "valve has been shut for too long");
        s.restart("boot-1", 3_000).seconds(10);
        refused(s, "valve has been shut for too long");
    }

    /** Nothing that is reported any more tells of the minutes that are missing. */
    @Test
    void norTheMinutesOfASeparationThatWasTakenBack() {
        Story s = hatched().does(Step.SETTLE).minutes(9);
        assertThat(s.ask("a", new Ask.Withdraw("settle")).accepted()).isTrue();
        s.seconds(5);
        refused(s, "in 11 min.");
        s.restart("boot-1", 3_000).seconds(10);
        refused(s, "not had air for long enough");
    }

    @Test
    void aRestartLongAfterTheLastReportCostsNothing() {
        Story s = hatched().minutes(30);
        s.restart("boot-1", 3_000).minutes(1);
        assertThat(s.did("a", Step.SETTLE).accepted()).isTrue();
    }

    @Test
    void handsInTheWaterAreToldWhenItWillBePossible() {
        Story s = hatched().does(Step.HANDS_IN).minutes(4);
        refused(s, "hands are in the water", "report 'settle' in 11 min.");
        s.minutes(12);
        assertThat(s.did("a", Step.SETTLE).accepted()).isTrue();
    }

    @Test
    void whereNoAirArrivesItIsNotStoppedToo() {
        Story s = hatched(Fitting.AIR_PROOF);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.minutes(1);
        refused(s, "no air arrives", "in 1 min.");
        s.minutes(9);
        refused(s, "no air arrives", "in 13 min.");
        s.senses.contact("a.air-proof", Level.CLOSED);
        s.minutes(5);
        refused(s, "not had air for long enough", "in 8 min.");
    }

    @Test
    void aValveLongShutCountsAsTimeWithoutAir() {
        Story s = hatched(Fitting.SIPHONING).does(Step.VALVE_SHUT);
        s.seconds(40);
        assertThat(s.did("a", Step.SETTLE).accepted()).as("shut a moment ago").isTrue();
        Story slow = hatched(Fitting.SIPHONING).does(Step.VALVE_SHUT).minutes(8);
        refused(slow, "valve has been shut for too long", "'valve-open'", "in 10 min.");
        slow.does(Step.VALVE_OPEN).minutes(10);
        slow.does(Step.VALVE_SHUT);
        assertThat(slow.did("a", Step.SETTLE).accepted()).isTrue();
    }

    @Test
    void waterOfUnknownWarmthCountsAsTheWarmest() {
        Story s = Story.at();
        s.ask("a", new Ask.DidStock("L-0417", 7));
        s.does(Step.FIRST_SEEN);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(5);
        s.does(Step.SETTLE);
        long off = s.now().monoMs();
        while (s.on("a.air-pause")) {
            s.tick();
        }
        // At 27 °C this charge stands 4.2 min, at 35 °C it stands 2.4 min (science.md §7.1 to §7.3).
        assertThat(s.now().monoMs() - off).isLessThan(150_000);
    }

    @Test
    void whoDrawsAndLeavesTheProbeDryLosesNoMinutes() {
        Story s = hatched().does(Step.SETTLE).minutes(7);
        s.does(Step.DRAWING).minutes(1);
        s.senses.probe("a-water", new Reading.Absent());
        s.pass(java.time.Duration.ofSeconds(200));
        assertThat(s.on("a.air-pause")).as("it has 12 min in all").isTrue();
    }

    @Test
    void withoutThisGuardTheCapCouldBeUsedAgainAtOnce() {
        Story s = Story.without(Suffocation.class);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE).minutes(9);
        s.ask("a", new Ask.Withdraw("settle"));
        assertThat(s.did("a", Step.SETTLE).accepted()).isTrue();
    }
}
