package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.conetender.core.judge.Estimate.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the filter finds of a cone whose truth the test knows. */
class EstimateTest {

    private static final double AIM_C = 27;

    /** A cone and what is known of it, with a thermostat of the test's own. */
    private static final class Learner {
        final Basin basin;
        Estimate e;
        double roomSeenC = 20;
        boolean on;

        Learner(Basin basin, Traits prior) {
            this.basin = basin;
            this.e = Estimate.first(prior, basin.waterC);
        }

        Learner second(boolean learn) {
            double probeC = basin.second(on);
            e = e.after(new Step(1, on ? 1 : 0, roomSeenC, probeC, learn));
            return this;
        }

        /** Full power until it shows the set-point, then a quarter of an hour off. */
        Learner warmUp() {
            on = true;
            for (int t = 0; t < 6 * 3_600 && e.readingC() < AIM_C; t++) {
                second(true);
            }
            on = false;
            return seconds(900);
        }

        Learner seconds(int n) {
            for (int t = 0; t < n; t++) {
                second(true);
            }
            return this;
        }

        /** On and off at the edges of a band, as a thermostat would. */
        Learner held(int n) {
            for (int t = 0; t < n; t++) {
                on = e.readingC() < (on ? AIM_C + 0.1 : AIM_C - 0.1);
                second(true);
            }
            return this;
        }
    }

    /** What the probe lags beyond what the model has for it counts as the heater's. */
    private static double lagS(Basin.Build b) {
        return b.elementS() + b.probeS() - Underway.PROBE_S;
    }

    @ParameterizedTest
    @CsvSource({"25,2,1.34,25,10,0.7", "25,2,1.34,45,15,1.3", "25,2,0.94,85,10,1.2", "50,2,1.34,60,12,0.8",
        "100,10,3.9,30,20,0.7", "60,10,2.7,80,8,1.3", "10,0.5,0.5,40,15,1.3"})
    void oneWarmUpTellsRiseAndLagThoughTheLossesWereWrong(double watts, double litres, double loss,
            double elementS, double probeS, double wrong) {
        Basin.Build b = new Basin.Build(watts, litres, loss, elementS, probeS);
        for (double off : new double[] {0.93, 1, 1.07}) {
            Traits prior = Traits.nominal(off * watts, loss * wrong, litres * Basin.J_PER_L_K);
            Learner l = new Learner(new Basin(b, 20, 7), prior).warmUp();
            assertThat(l.e.traits().riseKPerS() / b.riseKPerS()).as("rise from %.2f", off)
                    .isCloseTo(1, within(0.03));
            assertThat(l.e.traits().lagS()).isCloseTo(lagS(b), within(10.0));
            assertThat(l.e.lagDoubtS()).as("and it says that it knows").isLessThan(10);
            assertThat(l.e.riseDoubt()).isLessThan(0.035);
            l.held(4 * 3_600);
            // A probe slower than the model's is taken for a slower and a little stronger heater.
            assertThat(l.e.traits().riseKPerS() / b.riseKPerS()).as("after some hours, from %.2f", off)
                    .isCloseTo(1, within(b.probeS() == Underway.PROBE_S ? 0.02 : 0.05));
            assertThat(l.e.traits().lagS()).isCloseTo(lagS(b), within(6.0));
        }
    }

    /** Truth within two standard deviations on 95 of 100 cones of any lag, after a rise and after hours. */
    @ParameterizedTest
    @ValueSource(ints = {0, 3 * 3_600})
    void itsDoubtsAreHonest(int heldS) {
        int riseOutside = 0;
        int lagOutside = 0;
        int cones = 120;
        for (int seed = 1; seed <= cones; seed++) {
            Random random = new Random(seed);
            Basin.Build b = new Basin.Build(20 + 30 * random.nextDouble(), 2, 0.9 + random.nextDouble() / 2,
                    20 + 70 * random.nextDouble(), 5 + 15 * random.nextDouble());
            Traits prior = Traits.nominal(b.watts() * (1 + 0.04 * random.nextGaussian()),
                    b.lossWPerK() * (0.7 + 0.6 * random.nextDouble()), 2 * Basin.J_PER_L_K);
            Estimate e = new Learner(new Basin(b, 20, seed), prior).warmUp().held(heldS).e;
            riseOutside += Math.abs(e.traits().riseKPerS() / b.riseKPerS() - 1) > 2 * e.riseDoubt() ? 1 : 0;
            lagOutside += Math.abs(e.traits().lagS() - lagS(b)) > 2 * e.lagDoubtS() ? 1 : 0;
        }
        assertThat(riseOutside).as("cones whose rise is beyond two standard deviations")
                .isLessThanOrEqualTo(cones / 20);
        assertThat(lagOutside).as("whose lag is").isLessThanOrEqualTo(cones / 20);
    }

    @Test
    void theReadingIsKnownBetterThanTheProbeShowsIt() {
        Learner l = new Learner(new Basin(Basin.Build.USUAL, 20, 3), Basin.Build.USUAL.configured(0.8))
                .warmUp().held(3_600);
        double squares = 0;
        double drift = 0;
        for (int t = 0; t < 7_200; t++) {
            l.held(1);
            double off = l.e.readingC() - l.basin.sleeveC();
            squares += off * off;
            drift += off;
        }
        assertThat(Math.sqrt(squares / 7_200)).as("rms; the steps and noise alone make 0.027 K")
                .isLessThan(0.015);
        assertThat(drift / 7_200).as("on the mean").isCloseTo(0, within(0.005));
        assertThat(l.e.misfit()).as("a model of this form fits").isLessThan(2);
    }

    @Test
    void whatIsOnItsWayIsKnownBeforeItShows() {
        Learner l = new Learner(new Basin(Basin.Build.FIERCE, 20, 4), Basin.Build.FIERCE.configured(1))
                .warmUp().seconds(1_800).held(3_600);
        l.on = true;
        l.seconds(200);
        double plateauC = l.e.plateauC();
        double shownC = l.basin.sleeveC();
        double lossesK = Basin.Build.FIERCE.lossPerS() * (plateauC - 20) * 400;
        l.on = false;
        l.seconds(400);
        assertThat(plateauC).as("far beyond what it shows").isGreaterThan(shownC + 0.4);
        assertThat(l.basin.sleeveC()).isCloseTo(plateauC - lossesK, within(0.06));
    }

    @Test
    void nothingIsLearnedWhileItIsTold() {
        Learner l = new Learner(new Basin(Basin.Build.USUAL, 20, 5), Basin.Build.USUAL.configured(1.2))
                .warmUp();
        Estimate before = l.e;
        l.basin.power = Basin.Power.DEAD;
        l.on = true;
        for (int t = 0; t < 1_800; t++) {
            l.second(false);
        }
        assertThat(l.e.traits()).isEqualTo(before.traits());
        assertThat(l.e.driftKPerS()).isEqualTo(before.driftKPerS());
        assertThat(l.e.riseDoubt()).isEqualTo(before.riseDoubt());
        assertThat(l.e.misfit()).isEqualTo(before.misfit());
        assertThat(l.e.readingC()).as("but the reading is followed")
                .isCloseTo(l.basin.sleeveC(), within(0.08));
    }

    @Test
    void withoutAReadingItGoesOnAsExpectedAndLearnsNothing() {
        Learner l = new Learner(new Basin(Basin.Build.USUAL, 20, 6), Basin.Build.USUAL.configured(0.9))
                .warmUp().held(7_200);
        l.on = true;
        blind(l, 5);
        Traits before = l.e.traits();
        double doubt = l.e.riseDoubt();
        blind(l, 600);
        assertThat(l.e.traits()).isEqualTo(before);
        assertThat(l.e.riseDoubt()).as("it only grows with time").isBetween(doubt, 1.1 * doubt);
        assertThat(l.e.readingC()).as("ten minutes of heat without a look at them")
                .isCloseTo(l.basin.sleeveC(), within(0.05));
    }

    private static void blind(Learner l, int seconds) {
        for (int t = 0; t < seconds; t++) {
            l.basin.second(l.on);
            l.e = l.e.after(new Step(1, l.on ? 1 : 0, 20, Double.NaN, true));
        }
    }

    @Test
    void aConeThatIsSeenAgainIsTheSameCone() {
        Learner l = new Learner(new Basin(Basin.Build.USUAL, 20, 7), Basin.Build.USUAL.configured(0.9))
                .warmUp();
        l.on = true;
        l.seconds(100);
        Estimate again = l.e.again(l.e.traits(), 22.5);
        assertThat(again.traits()).isEqualTo(l.e.traits());
        assertThat(again.lagDoubtS()).isEqualTo(l.e.lagDoubtS());
        assertThat(again.nominal()).isEqualTo(l.e.nominal());
        assertThat(again.readingC()).isEqualTo(22.5);
        assertThat(again.plateauC()).as("no heat is on its way any more").isEqualTo(22.5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-6, 5})
    void anotherRoomThanIsSeenShowsAsDriftAndNotAsRise(double byK) {
        Learner l = new Learner(new Basin(Basin.Build.USUAL, 20, 8), Basin.Build.USUAL.configured(1))
                .warmUp().held(2 * 3_600);
        double rise = l.e.traits().riseKPerS();
        l.basin.roomC += byK;
        l.held(4 * 3_600);
        assertThat(l.e.traits().riseKPerS() / rise).isCloseTo(1, within(0.03));
        double duty = Basin.Build.USUAL.lossWPerK() * (AIM_C - 20 - byK) / Basin.Build.USUAL.watts();
        assertThat(l.e.holdingDuty(AIM_C, 20)).as("by drift and losses together the duty is right")
                .isCloseTo(duty, within(0.02));
        assertThat(Math.signum(l.e.driftKPerS())).isEqualTo(Math.signum(byK));
        assertThat(l.e.misfit()).isLessThan(3);
    }

    @Test
    void aLidPutOnIsLearnedWithinAnHour() {
        Learner l = new Learner(new Basin(Basin.Build.USUAL, 20, 9), Basin.Build.USUAL.configured(1))
                .warmUp().held(2 * 3_600);
        l.basin.lossFactor = 0.7;
        l.held(3_600);
        double duty = 0.7 * Basin.Build.USUAL.lossWPerK() * (AIM_C - 20) / Basin.Build.USUAL.watts();
        assertThat(l.e.holdingDuty(AIM_C, 20)).isCloseTo(duty, within(0.03));
        assertThat(l.e.traits().riseKPerS() / Basin.Build.USUAL.riseKPerS()).isCloseTo(1, within(0.03));
    }

    @Test
    void whateverIsReadTheTraitsStayWithinReason() {
        Random random = new Random(10);
        Traits prior = Basin.Build.USUAL.configured(1);
        Estimate e = Estimate.first(prior, 25);
        for (int t = 0; t < 20_000; t++) {
            double probeC = random.nextInt(20) == 0 ? Double.NaN : -20 + 120 * random.nextDouble();
            e = e.after(new Step(0.5 + random.nextDouble(), random.nextInt(2), 20, probeC, true));
            assertThat(e.traits().riseKPerS() / prior.riseKPerS()).isBetween(0.299, 3.001);
            assertThat(e.traits().lossPerS() / prior.lossPerS()).isBetween(0.299, 3.001);
            assertThat(e.traits().lagS()).isBetween(5.0, 150.0);
            assertThat(e.readingC()).isFinite();
            assertThat(e.riseDoubt()).isFinite().isNotNegative();
        }
        assertThat(e.misfit()).as("and it says that nothing fits").isGreaterThan(100);
    }

    @Test
    void aTickOfAnotherLengthFindsTheSameCone() {
        Basin basin = new Basin(Basin.Build.USUAL, 20, 11);
        Estimate e = Estimate.first(Basin.Build.USUAL.configured(0.8), 20);
        for (int t = 0; t < 1_200; t++) {
            double probeC = Double.NaN;
            for (int s = 0; s < 2; s++) {
                probeC = basin.second(t < 900);
            }
            e = e.after(new Step(2, t < 900 ? 1 : 0, 20, probeC, true));
        }
        assertThat(e.traits().riseKPerS() / Basin.Build.USUAL.riseKPerS()).isCloseTo(1, within(0.02));
        assertThat(e.traits().lagS()).isCloseTo(lagS(Basin.Build.USUAL), within(10.0));
    }
}
