package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.conetender.core.hatch.Efficiency.Found;
import org.junit.jupiter.api.Test;

/** What counts and weights of a lot's batches say together of the nauplii that a gram gives. */
class EfficiencyTest {

    private static final double EACH = 1_000;

    private static Efficiency of(Found... found) {
        return Efficiency.of(List.of(found)).orElseThrow();
    }

    @Test
    void aWeightAloneTellsNoNumber() {
        assertThat(Efficiency.of(List.of(new Found(0, 0, 5), new Found(0, 0, 4)))).isEmpty();
        assertThat(Efficiency.of(List.of(new Found(250, EACH, 0)))).isEmpty();
        assertThat(Efficiency.of(List.of())).isEmpty();
    }

    @Test
    void oneBatchThatWasCountedAndWeighedIsWhatWasCounted() {
        Efficiency e = of(new Found(250, EACH, 5));
        assertThat(e.next().median()).isCloseTo(250_500, within(1.0));
        assertThat(e.wetMicrograms().get(1)).isCloseTo(5e6 / 250_500, within(1e-6));
    }

    /** Where no batch was both counted and weighed. */
    @Test
    void aWeightNarrowsNothingThatNoCountStandsBeside() {
        double counted = Math.sqrt(2 * 0.01 + (1 + 250 * 0.002) / 250.5);
        assertThat(of(new Found(250, EACH, 0), new Found(0, 0, 5)).next().sd())
                .isCloseTo(counted, within(1e-9));
        assertThat(of(new Found(250, EACH, 5), new Found(0, 0, 5)).next().sd()).isLessThan(counted - 1e-3);
    }

    @Test
    void aLighterBatchGaveFewerButIsNotBelievedToTheLetter() {
        Efficiency e = of(new Found(250, EACH, 5), new Found(0, 0, 5), new Found(0, 0, 2.5));
        double ratio = e.weighed(5).median() / e.weighed(2.5).median();
        assertThat(ratio).isBetween(1.1, 1.9);
        assertThat(e.weighed(5).sd()).isGreaterThan(0.07);
    }

    @Test
    void theOrderOfBatchesAndTheirUnitsDoNotMatter() {
        Found a = new Found(250, EACH, 5);
        Found b = new Found(0, 0, 4);
        Found c = new Found(180, EACH, 0);
        assertThat(of(a, b, c).lnPerGram()).isCloseTo(of(c, b, a).lnPerGram(), within(1e-9));
        Efficiency heavy = of(new Found(250, EACH, 50), new Found(0, 0, 40), c);
        assertThat(heavy.lnPerGram()).isCloseTo(of(a, b, c).lnPerGram(), within(1e-9));
        assertThat(heavy.lnWetG()).isCloseTo(of(a, b, c).lnWetG() + Math.log(10), within(1e-9));
    }

    @Test
    void aSampleWithoutNaupliiSaysThatTheyWereFew() {
        assertThat(of(new Found(0, EACH, 0.01), new Found(3, EACH, 0)).next().median()).isLessThan(10_000);
    }

    /** Of 4,000 lots as the model has them, four batches each, two counted and three weighed. */
    @Test
    void fourOfFiveTruthsLieInTheInterval() {
        Random random = new Random(5);
        int next = 0;
        int weighed = 0;
        int lots = 4_000;
        for (int i = 0; i < lots; i++) {
            double ln = Math.log(230_000) + 0.3 * random.nextGaussian();
            double wet = Math.log(20e-6) + 0.4 * random.nextGaussian();
            double[] truth = new double[5];
            List<Found> found = new ArrayList<>();
            for (int b = 0; b < truth.length; b++) {
                truth[b] = ln + Efficiency.BATCH_SD * random.nextGaussian();
                double mean = Math.exp(truth[b] + Math.sqrt(Odds.ALIKE) * random.nextGaussian()) / EACH;
                double grams = Math.exp(truth[b] + wet + Efficiency.WEIGHT_SD * random.nextGaussian());
                int n = (int) Math.round(mean + Math.sqrt(mean) * random.nextGaussian());
                found.add(new Found(b < 2 ? n : 0, b < 2 ? EACH : 0, b > 0 ? grams : 0));
            }
            Efficiency e = Efficiency.of(found.subList(0, 4)).orElseThrow();
            next += holds(e.next(), truth[4]);
            weighed += holds(e.weighed(found.get(3).wetPerGram()), truth[3]);
        }
        assertThat((double) next / lots).isBetween(0.78, 0.82);
        assertThat((double) weighed / lots).isBetween(0.78, 0.82);
    }

    private static int holds(Efficiency.PerGram n, double truth) {
        return Math.exp(truth) >= n.within(false) && Math.exp(truth) <= n.within(true) ? 1 : 0;
    }
}
