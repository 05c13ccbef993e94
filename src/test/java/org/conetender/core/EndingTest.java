package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.hatch.Development;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A word that ends a batch which still hatches: who meant another cone hears it while it can be undone. */
class EndingTest {

    private static final String WHAT_TO_DO = "If it was another cone, say 'withdraw' within half an hour.";

    /** Nauplii swim, and the interval in which it may be ready lies ahead. */
    private static Story hatching() {
        Story s = Story.at();
        s.senses.water("a", 27);
        s.ask("a", new Ask.DidFill(2, 25));
        s.ask("a", new Ask.DidStock("L-0433", 2));
        return s.minutes(60 * 10).does(Step.FIRST_SEEN).minutes(60);
    }

    @ParameterizedTest
    @EnumSource(names = {"DRAINED", "CLEANED", "STARTED"})
    void itNamesTheBatchThatItEndsAndHowFarThatWas(Step step) {
        Story s = hatching();
        assertThat(s.did("a", step).sentence()).containsPattern("This ends batch 1 \\(L-0433, "
                + "[1-9]\\d? % hatched, ready about (Tue )?\\d\\d:\\d\\d\\); what had hatched counts as its "
                + "harvest\\. ").endsWith(WHAT_TO_DO);
        assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        assertThat(s.stage()).isEqualTo("hatching");
        assertThat(s.batch("a").number()).isEqualTo(1);
    }

    /** The everyday slip: the cone beside it was meant. This one is ripe, is drawn, or was in part. */
    @Test
    void aStartNamesWhateverLiveBatchItEnds() {
        Story ripe = hatching().minutes(60 * 20);
        assertThat(ripe.stage()).isEqualTo("ready");
        assertThat(ripe.did("a", Step.STARTED).sentence()).containsPattern("This ends batch 1 \\(L-0433, "
                + "\\d+ % hatched, ready\\); what had hatched counts as its harvest\\. ")
                .endsWith(WHAT_TO_DO);
        assertThat(ripe.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        assertThat(ripe.stage()).isEqualTo("ready");
        Story due = hatching().minutes(60 * 12);
        assertThat(due.did("a", Step.STARTED).sentence()).contains("This ends batch 1 (")
                .endsWith(WHAT_TO_DO);
        Story drawn = ripe.does(Step.VALVE_SHUT, Step.SETTLE).minutes(7).does(Step.DRAWING);
        assertThat(drawn.did("a", Step.STARTED).sentence()).containsPattern("This ends batch 1 \\(L-0433, "
                + "\\d+ % hatched\\); what").endsWith(WHAT_TO_DO);
        Story part = hatching().does(Step.VALVE_SHUT, Step.SETTLE).minutes(3)
                .does(Step.DRAWING, Step.PART_DRAWN, Step.VALVE_OPEN);
        assertThat(part.did("a", Step.STARTED).sentence())
                .containsPattern("This ends batch 1 \\([^)]+\\)\\. ").endsWith(WHAT_TO_DO);
        Story drained = hatching().does(Step.DRAINED);
        assertThat(drained.did("a", Step.STARTED).sentence()).doesNotContain("ends");
    }

    /** Only drained: what else would end it is refused while nothing has hatched. */
    @Test
    void whatIsDrainedBeforeItHatchesIsSaidToEndWithoutAHarvest() {
        Story s = Story.at();
        s.does(Step.STARTED).minutes(60);
        for (int hours : new int[] {0, 6}) {
            s.minutes(60L * hours);
            String said = s.did("a", Step.DRAINED).sentence();
            assertThat(said).containsPattern("This ends batch 1 \\(L-0417, "
                    + "0 % hatched, ready about Tue \\d\\d:\\d\\d\\) without a harvest\\. ")
                    .endsWith(WHAT_TO_DO)
                    .doesNotContain("Was the hour right?");
            assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        }
        assertThat(s.stage()).isEqualTo("incubating");
        Story filled = Story.at().does(Step.FILLED);
        assertThat(filled.did("a", Step.DRAINED).sentence()).doesNotContain("ends");
    }

    @Test
    void withoutAClockItTellsTheHoursUntilThen() {
        Story s = hatching().wall(0, false).minutes(2);
        assertThat(s.did("a", Step.CLEANED).sentence()).containsPattern(", ready in about \\d+\\.\\d h\\)");
    }

    @Test
    void whereTheTinHasNoLabelNoneIsNamed() {
        Story s = Story.at().does(Step.FILLED);
        s.ask("a", new Ask.DidStock("unknown", 2));
        s.does(Step.FIRST_SEEN);
        assertThat(s.did("a", Step.CLEANED).sentence()).containsPattern("This ends batch 1 \\(0 % hatched, ");
    }

    /** Early on purpose is allowed; who did not know must not lose what would have hatched. */
    @Test
    void aSeparationOfWhatIsNotRipeSaysSo() {
        Story s = hatching().does(Step.VALVE_SHUT);
        assertThat(s.did("a", Step.SETTLE).sentence()).containsPattern("It is not ripe yet \\(L-0433, "
                + "[1-9]\\d? % hatched, ready about (Tue )?\\d\\d:\\d\\d\\): what has not hatched stays "
                + "behind with the shells. To let it go on, say 'withdraw'\\.$");
        assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        assertThat(s.stage()).isEqualTo("hatching");
        assertThat(hatching().minutes(60 * 12).does(Step.VALVE_SHUT).did("a", Step.SETTLE).sentence())
                .doesNotContain("ripe");
    }

    @Test
    void whatBreaksASeparationOffSaysSo() {
        Story s = hatching().minutes(60 * 12).does(Step.VALVE_SHUT, Step.SETTLE).minutes(2);
        assertThat(s.did("a", Step.HANDS_IN).sentence()).endsWith(" This breaks the separation off: the air "
                + "comes back and stirs the layer up. To separate anew say 'settle'.");
        assertThat(s.seconds(1).stage()).isEqualTo("ready");
        assertThat(s.did("a", Step.VALVE_OPEN).sentence()).doesNotContain("separation off");
        Story siphons = Story.at(Fitting.SIPHONING).does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT,
                Step.SETTLE).minutes(2);
        assertThat(siphons.did("a", Step.VALVE_OPEN).sentence()).endsWith("stirs the layer up. To separate "
                + "anew say 'valve-shut', then 'settle'.");
        assertThat(siphons.seconds(1).stage()).isEqualTo("ready");
    }

    /** Its probe has been silent since a restart: it may well be ripe. */
    @Test
    void whereNobodyKnowsItIsNotCalledUnripe() {
        Story s = hatching();
        s.senses.probe("a-water", new Reading.Absent());
        s.restart("boot-2", 60_000).minutes(60 * 20);
        s.does(Step.VALVE_SHUT);
        assertThat(s.did("a", Step.SETTLE).sentence()).contains("is recorded").doesNotContain("ripe");
    }

    /** It was called ready too early, given up, and settled once more. */
    @Test
    void whatWasCalledReadyTooEarlyIsSaidToBeUnripeAgain() {
        Story s = Story.at();
        s.does(Step.STARTED).minutes(60);
        s.does(Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.minutes(40);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.did("a", Step.SETTLE).sentence()).contains("It is not ripe yet (");
    }

    @Test
    void whatIsShelvedBeforeItComesIsSaidNotToStand() {
        Story s = hatching();
        assertThat(s.ask("a", new Ask.Shelve("probe", 8)).sentence())
                .contains("alarm 'probe' does not stand now; if it comes within 8 h nobody is called, and it "
                        + "is in the list. Next: ").doesNotContain("stays");
    }

    @Test
    void whatNeverHatchedHasNoHourToJudgeUnlessAWeightTellsOtherwise() {
        Story s = Story.at().does(Step.STARTED);
        s.minutes(120);
        assertThat(s.did("a", Step.DRAINED).sentence()).doesNotContain("rinse the nauplii");
        assertThat(s.did("a", Step.RIGHT).sentence()).contains("no harvest to judge: as far")
                .contains("say what they weigh").doesNotContain("withdraw");
        s.minutes(40);
        assertThat(s.ask("a", new Ask.DidWeigh(4)).accepted()).as("they came out").isTrue();
        assertThat(s.did("a", Step.RIGHT).accepted()).isTrue();
    }

    @Test
    void whoeverCountedNaupliiHasHarvestedThem() {
        Story s = Story.at().does(Step.STARTED);
        s.minutes(60 * 8).ask("a", new Ask.DidCount(180, 5, 20, 1));
        assertThat(s.did("a", Step.DRAINED).sentence()).contains("Next: unplug the heater; "
                + "rinse the nauplii; once the heater is cool scrub and rinse the cone");
        assertThat(s.did("a", Step.RIGHT).accepted()).isTrue();
    }

    @Test
    void aHeaterIsPluggedInOnceHandsAreOut() {
        Story s = Story.at().does(Step.STARTED).minutes(2);
        s.does(Step.DRAINED).minutes(1);
        assertThat(s.did("a", Step.CLEANED).sentence()).contains("add salt and cysts, take your hands out, "
                + "plug the heater in; then report 'started'");
        assertThat(s.did("a", Step.STARTED).sentence()).contains("with the heater unplugged meanwhile");
    }

    @Test
    void whatWasGivenUpHasAHarvestOnlyIfItWasDrawn() {
        Story given = hatching().does(Step.ABANDONED, Step.DRAINED);
        assertThat(given.ask("a", new Ask.DidWeigh(4)).sentence()).contains("there is no harvest to weigh");
        assertThat(given.did("a", Step.LATE).sentence()).contains("there is no harvest to judge");
        Story drawn = hatching().does(Step.VALVE_SHUT, Step.SETTLE).minutes(3).does(Step.DRAWING,
                Step.ABANDONED);
        assertThat(drawn.ask("a", new Ask.DidWeigh(4)).accepted()).isTrue();
        drawn.does(Step.DRAINED);
        assertThat(drawn.ask("a", new Ask.DidWeigh(4)).accepted()).isTrue();
    }

    /** Whoever means another cone and takes it back has lost nothing of what was measured. */
    @Test
    void aBatchThatWasBegunByMistakeGivesItsHoursBack() {
        Story s = hatching().minutes(60);
        double done = s.state().live().cones().get("a").growth().done().degreeHours();
        s.does(Step.STARTED).minutes(5);
        assertThat(s.state().live().cones().get("a").growth().done().degreeHours()).isLessThan(5);
        assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        s.minutes(1);
        Development back = s.state().live().cones().get("a").growth().done();
        assertThat(back.degreeHours()).isBetween(done, done + 3);
        assertThat(back.mostDegreeHours() - back.leastDegreeHours()).isLessThan(3);
    }

    /** What hatched through its interval, was separated, drawn in part or emptied was meant. */
    @Test
    void whereItMayBeRipeOrWasHarvestedNothingIsSaid() {
        assertThat(hatching().minutes(60 * 12).did("a", Step.CLEANED).sentence()).doesNotContain("ends");
        assertThat(hatching().minutes(60 * 12).did("a", Step.DRAINED).sentence()).doesNotContain("ends")
                .contains("Was the hour right?");
        Story settled = hatching().does(Step.VALVE_SHUT, Step.SETTLE).minutes(3);
        assertThat(settled.did("a", Step.CLEANED).sentence()).doesNotContain("ends");
        Story part = hatching().does(Step.VALVE_SHUT, Step.SETTLE).minutes(3)
                .does(Step.DRAWING, Step.PART_DRAWN, Step.VALVE_OPEN);
        assertThat(part.did("a", Step.CLEANED).sentence()).doesNotContain("ends");
        assertThat(hatching().does(Step.DRAINED).did("a", Step.CLEANED).sentence()).doesNotContain("ends");
    }
}
