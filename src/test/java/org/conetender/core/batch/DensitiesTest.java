package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/**
 * How many nauplii a gram is taken to give, by counts of sub-samples: in 2 L with 2 g each one in 1 mL stands
 * for 1,000.
 */
class DensitiesTest {

    private static final double RIPE = 500;

    private Lots lots = Lots.NONE;
    private long seq;

    private DensitiesTest counted(long batch, int nauplii, int umbrella, double degreeHours) {
        return counted("L-0417", batch, new Ask.DidCount(nauplii, umbrella, 9, 1), degreeHours);
    }

    private DensitiesTest counted(String lot, long batch, Ask.DidCount c, double degreeHours) {
        String source = "r" + ++seq;
        Moment at = new Moment("boot", seq, 0, false);
        Fact report = new Fact(seq, at, "a", source, new Change.Told(c));
        lots = lots.after(report).counted(report, FitsTest.in("hatching").batch());
        lots = lots.after(new Fact(++seq, at, "a", source, new Change.Taught(lot, batch, new Lesson(
                new Lesson.At(degreeHours, degreeHours + 50, 20),
                new Lesson.Sight.Counted(c.nauplii(), c.umbrella(), c.unhatched())))));
        return this;
    }

    private double perGram() {
        return lots.naupliiPerGram("L-0417", "a", 7, RIPE);
    }

    @Test
    void withoutACountItIsTheUsual() {
        assertThat(perGram()).isEqualTo(Oxygen.USUAL_NAUPLII_PER_G);
    }

    @Test
    void whatSwimsAndWhatHangsUnderItsShellCountsWithTwoStandardErrors() {
        counted(1, 250, 5, RIPE);
        assertThat(perGram()).isCloseTo((255 + 2 * 16) * 1_000.0, within(1e-6));
    }

    @Test
    void theSmallerTheSampleTheMoreEachOneStandsFor() {
        counted("L-0417", 1, new Ask.DidCount(63, 0, 0, 0.25), RIPE);
        assertThat(perGram()).isCloseTo((63 + 2 * 8) * 4_000.0, within(1e-6));
    }

    @Test
    void oneBatchMakesNobodyBelieveInFewerTwoDo() {
        counted(1, 168, 0, RIPE);
        assertThat(perGram()).isEqualTo(Oxygen.USUAL_NAUPLII_PER_G);
        counted(2, 99, 0, RIPE);
        assertThat(perGram()).as("the denser of them").isCloseTo((168 + 2 * 13) * 1_000.0, within(1e-6));
    }

    @Test
    void ofOneBatchTheDensestCountIsTaken() {
        counted(1, 168, 0, RIPE).counted(1, 99, 0, RIPE).counted(2, 80, 0, RIPE);
        assertThat(perGram()).isCloseTo(194_000, within(1e-6));
    }

    @Test
    void noLotGivesMoreOrFewerThanItsBounds() {
        counted(1, 624, 0, RIPE);
        assertThat(perGram()).isEqualTo(400_000);
        counted(2, 8, 0, RIPE);
        assertThat(perGram()).isEqualTo(400_000);
        lots = Lots.NONE;
        counted(1, 8, 0, RIPE).counted(2, 8, 0, RIPE);
        assertThat(perGram()).isEqualTo(80_000);
    }

    /** More may hatch yet. */
    @Test
    void beforeItIsRipeOnlyMoreThanUsualCounts() {
        counted(1, 168, 0, RIPE).counted(2, 168, 0, RIPE - 1);
        assertThat(perGram()).as("as if only one had been counted").isEqualTo(Oxygen.USUAL_NAUPLII_PER_G);
        counted(2, 250, 0, RIPE - 1);
        assertThat(perGram()).as("no more than usual").isEqualTo(Oxygen.USUAL_NAUPLII_PER_G);
        counted(3, 288, 0, RIPE - 1);
        assertThat(perGram()).isCloseTo((288 + 2 * 17) * 1_000.0, within(1e-6));
    }

    @Test
    void anotherLotTellsNothing() {
        counted("Sea-1", 1, new Ask.DidCount(300, 0, 0, 1), RIPE);
        assertThat(perGram()).isEqualTo(Oxygen.USUAL_NAUPLII_PER_G);
    }

    @Test
    void aTinWithoutANameTellsOfItsOwnBatchOnly() {
        counted("unknown", 7, new Ask.DidCount(288, 0, 0, 1), RIPE);
        counted("unknown", 8, new Ask.DidCount(360, 0, 0, 1), RIPE);
        assertThat(lots.naupliiPerGram("unknown", "a", 7, RIPE)).isCloseTo(322_000, within(1e-6));
        assertThat(lots.naupliiPerGram("unknown", "b", 7, RIPE)).isEqualTo(Oxygen.USUAL_NAUPLII_PER_G);
    }

    @Test
    void whereNobodyKnowsTheWaterOrTheCystsACountTellsNoDensity() {
        Fact report = new Fact(1, new Moment("boot", 0, 0, false), "a", "r",
                new Change.Told(new Ask.DidCount(9, 0, 0, 1)));
        assertThat(lots.counted(report, FitsTest.in("filled").batch())).isSameAs(lots);
        assertThat(lots.counted(report, FitsTest.in("clean").batch())).isSameAs(lots);
        Fact other = new Fact(1, new Moment("boot", 0, 0, false), "a", "r", new Change.ClockSet());
        assertThat(lots.counted(other, FitsTest.in("ready").batch())).isSameAs(lots);
    }

    @Test
    void theOldestSamplesGoBeyondTwoHundred() {
        for (int i = 0; i < 201; i++) {
            counted(i, 100 + i, 0, RIPE);
        }
        assertThat(lots.densities().samples()).hasSize(200);
        assertThat(lots.densities().samples().getFirst().source()).isEqualTo("r3");
        assertThat(lots.densities().samples().getLast().perGram()).isEqualTo(1_000);
    }
}
