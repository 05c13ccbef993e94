package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.image.Ask;
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
    void whatIsShelvedBeforeItComesIsSaidNotToStand() {
        Story s = hatching();
        assertThat(s.ask("a", new Ask.Shelve("probe", 8)).sentence())
                .contains("it stays in the list. It does not stand now. Next: ");
    }

    @Test
    void whatNeverHatchedOrWasGivenUpHasNoHarvest() {
        Story s = Story.at().does(Step.STARTED);
        s.minutes(120);
        assertThat(s.did("a", Step.DRAINED).sentence()).doesNotContain("rinse the nauplii");
        assertThat(s.ask("a", new Ask.DidWeigh(4)).sentence()).contains("no harvest to weigh: as far "
                + "as was told nothing had hatched", "report 'first-seen'");
        assertThat(s.did("a", Step.RIGHT).sentence()).contains("no harvest to judge: as far");
        assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        s.does(Step.FIRST_SEEN);
        assertThat(s.did("a", Step.DRAINED).sentence()).contains("rinse the nauplii");
        assertThat(s.ask("a", new Ask.DidWeigh(4)).accepted()).isTrue();

        Story given = hatching().does(Step.ABANDONED, Step.DRAINED);
        assertThat(given.ask("a", new Ask.DidWeigh(4)).sentence()).contains("there is no harvest to weigh");
        assertThat(given.did("a", Step.LATE).sentence()).contains("there is no harvest to judge");
        Story drawn = hatching().does(Step.VALVE_SHUT, Step.SETTLE).minutes(3).does(Step.DRAWING,
                Step.ABANDONED, Step.DRAINED);
        assertThat(drawn.ask("a", new Ask.DidWeigh(4)).accepted()).isTrue();
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
