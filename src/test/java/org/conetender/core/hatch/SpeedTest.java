package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpeedTest {

    @Test
    void theNormalDistributionMeetsItsTable() {
        assertThat(Normal.Z90).isCloseTo(1.281552, within(1e-6));
        assertThat(Normal.Z75).isCloseTo(0.674490, within(1e-6));
        assertThat(Normal.share(0)).isEqualTo(0.5);
        assertThat(Normal.share(1)).isCloseTo(0.841345, within(1e-6));
        assertThat(Normal.share(-1.959964)).isCloseTo(0.025, within(1e-7));
        for (double z = -5; z <= 5; z += 0.25) {
            assertThat(Normal.quantile(Normal.share(z))).isCloseTo(z, within(1e-6));
        }
    }

    @ParameterizedTest(name = "T10 {0}, T90 {1}")
    @CsvSource({"16, 22.4, 0.131", "16, 24, 0.158", "14, 26, 0.242"})
    void synchronyTurnsIntoTheSigmaOfTheConversionTable(double t10, double t90, double sigma) {
        // science.md §3.4: T50 is the geometric middle, and one sigma serves every temperature.
        Speed speed = new Speed(16 * Math.sqrt(t10 * t90), sigma, 0.1, 0);
        assertThat(speed.k10() / 16).isCloseTo(t10, within(0.02 * t10));
        assertThat(speed.k90() / 16).isCloseTo(t90, within(0.02 * t90));
    }

    @Test
    void theThreeQuantilesAreOneFactorApart() {
        Speed s = Speed.UNKNOWN_LOT;
        assertThat(s.k90() / s.k50DegreeHours()).isCloseTo(s.k50DegreeHours() / s.k10(), within(1e-12));
        assertThat(s.degreeHoursAt(0.5)).isCloseTo(271, within(1e-9));
    }

    @Test
    void theSharesOfManyDrawnAnimalsAreThoseOfTheFormula() {
        Random random = new Random(5);
        Speed s = new Speed(260, 0.2, 0.1, 1);
        int[] hatched = new int[3];
        double[] at = {220, 260, 320};
        for (int i = 0; i < 40_000; i++) {
            double needs = 260 * Math.exp(0.2 * random.nextGaussian());
            for (int j = 0; j < at.length; j++) {
                hatched[j] += needs <= at[j] ? 1 : 0;
            }
        }
        for (int j = 0; j < at.length; j++) {
            assertThat(s.hatchedShare(at[j])).isCloseTo(hatched[j] / 40_000.0, within(0.01));
        }
    }

    @Test
    void aLotIsKnownFromItsThirdBatchOn() {
        assertThat(Speed.UNKNOWN_LOT.known()).isFalse();
        assertThat(new Speed(271, 0.15, 0.1, 2).known()).isFalse();
        assertThat(new Speed(271, 0.15, 0.1, 3).known()).isTrue();
    }

    @Test
    void evenAKnownLotScattersFromBatchToBatch() {
        Speed exact = new Speed(271, 0.15, 0, 10);
        assertThat(exact.logSdAt(0)).isCloseTo(0.03, within(1e-12));
        assertThat(exact.logSdAt(Normal.Z90)).isGreaterThan(0.03);
        assertThat(Speed.UNKNOWN_LOT.logSdAt(Normal.Z90)).isBetween(0.20, 0.22);
    }

    @Test
    void whatIsNotHatchedYetIsNoneAndWhatIsLongPastIsAll() {
        assertThat(Speed.UNKNOWN_LOT.hatchedShare(-1)).isZero();
        assertThat(Speed.UNKNOWN_LOT.hatchedShare(50)).isLessThan(1e-6);
        assertThat(Speed.UNKNOWN_LOT.hatchedShare(900)).isGreaterThan(0.999999);
    }
}
