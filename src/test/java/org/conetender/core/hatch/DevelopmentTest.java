package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.conetender.core.judge.Cooling;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Span;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DevelopmentTest {

    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    @ParameterizedTest(name = "{0} °C")
    @CsvSource({"4, 0", "12, 0", "12.5, 0.5", "20, 8", "27, 15", "30, 18", "31, 12.6667", "32, 6.6667",
        "32.9, 0.6967", "33, 0", "45, 0"})
    void theRateIsZeroThenRisesByOnePerDegreeAndFallsToZeroAtArrest(double waterC, double perHour) {
        assertThat(Rate.USUAL.perHour(waterC)).isCloseTo(perHour, within(1e-4));
    }

    @Test
    void theBestTemperatureIsWhereTheRateIsGreatest() {
        for (Rate rate : new Rate[] {Rate.USUAL, new BaseDeviationCeiling(9, 20, 36)}) {
            double best = rate.perHour(rate.bestC());
            for (double c = 0; c < 45; c += 0.01) {
                assertThat(rate.perHour(c)).isBetween(0.0, best);
            }
        }
    }

    @Test
    void aRateWithoutOrderIsRefused() {
        assertThatThrownBy(() -> new BaseDeviationCeiling(12, 34, 33))
                .hasMessageContaining("12.0, 34.0, 33.0");
        assertThatThrownBy(() -> new BaseDeviationCeiling(Double.NaN, 30, 33))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Zones(Rate.USUAL, 32)).hasMessageContaining("above arrest");
    }

    @Test
    void theConesArrestTemperatureIsTheCeiling() {
        Zones zones = Zones.of(new Cone.Limits(27, 30.5, 31.5, 37, 20));
        assertThat(zones.rate().perHour(31.5)).isZero();
        assertThat(zones.rate().perHour(30)).isEqualTo(18);
        assertThat(zones.lossC()).isEqualTo(37);
        assertThat(Zones.of(new Cone.Limits(25, 27, 29, 37, 20)).rate().perHour(28.9)).isPositive();
    }

    @Test
    void arrestKeepsProgressAndDevelopmentGoesOnAfterIt() {
        Development before = Development.NONE.advance(10 * HOUR, 26, 26, Zones.USUAL);
        Development warm = before.advance(5 * HOUR, 34, 34, Zones.USUAL);
        Development cold = warm.advance(3 * HOUR, 8, 8, Zones.USUAL);
        assertThat(cold.degreeHours()).isEqualTo(before.degreeHours()).isEqualTo(140);
        assertThat(cold.hoursWarm()).isEqualTo(5);
        assertThat(cold.hoursCold()).isEqualTo(3);
        assertThat(cold.hoursArrested()).isEqualTo(8);
        assertThat(cold.hoursAboveLoss()).isZero();
        assertThat(cold.advance(HOUR, 26, 26, Zones.USUAL).degreeHours()).isEqualTo(154);
    }

    @Test
    void timeAboveTheLossTemperatureIsCountedApart() {
        Development d = Development.NONE.advance(HOUR, 38.5, 38.5, Zones.USUAL)
                .advance(HOUR, 37, 37, Zones.USUAL);
        assertThat(d.hoursAboveLoss()).isEqualTo(1);
        assertThat(d.hoursWarm()).isEqualTo(2);
    }

    @Test
    void aSawtoothAboutTheBendGainsLessThanItsMeanWould() {
        Development swinging = Development.NONE;
        Development steady = Development.NONE;
        for (int minute = 0; minute < 600; minute++) {
            double c = 29 + 2.0 * (minute % 60) / 59;
            swinging = swinging.advance(MINUTE, c, c, Zones.USUAL);
            steady = steady.advance(MINUTE, 30, 30, Zones.USUAL);
        }
        // By hand: 17.5 on average below the bend; above it (18 + d)(1 - d/3) averages 15.389.
        assertThat(swinging.degreeHours() / 10).isCloseTo((17.5 + 15.389) / 2, within(0.05));
        assertThat(steady.degreeHours() / 10).isCloseTo(18, within(1e-9));
    }

    @Test
    void aSawtoothAboutTheBaseGainsMoreThanItsMeanWould() {
        Development swinging = Development.NONE;
        for (int minute = 0; minute < 600; minute++) {
            double c = 10 + 4.0 * (minute % 60) / 59;
            swinging = swinging.advance(MINUTE, c, c, Zones.USUAL);
        }
        assertThat(swinging.degreeHours() / 10).isCloseTo(0.5, within(0.01));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void onAnyPathNothingIsEverTakenBackAndTheTruthStaysInside(long seed) {
        Random random = new Random(seed);
        Development band = Development.NONE;
        double truth = 0;
        double c = 10 + 20 * random.nextDouble();
        for (int i = 0; i < 5_000; i++) {
            c = Math.clamp(c + random.nextGaussian() * 0.5, -2, 45);
            double below = random.nextDouble() * 2;
            double above = random.nextDouble() * 2;
            Development next = band.advance(MINUTE, c - below, c + above, Zones.USUAL);
            truth += Rate.USUAL.perHour(c) / 60;
            assertThat(next.leastDegreeHours()).isGreaterThanOrEqualTo(band.leastDegreeHours());
            assertThat(next.mostDegreeHours()).isGreaterThanOrEqualTo(band.mostDegreeHours());
            assertThat(next.hoursArrested()).isGreaterThanOrEqualTo(band.hoursArrested());
            band = next;
            assertThat(truth).isBetween(band.leastDegreeHours() - 1e-6, band.mostDegreeHours() + 1e-6);
        }
    }

    @Test
    void warmerWaterBelowTheBendIsNeverSlower() {
        Random random = new Random(9);
        for (int i = 0; i < 1_000; i++) {
            double a = random.nextDouble() * 30;
            double b = a + random.nextDouble() * (30 - a);
            assertThat(Rate.USUAL.perHour(b)).isGreaterThanOrEqualTo(Rate.USUAL.perHour(a));
        }
    }

    @Test
    void aClockThatStandsStillOrGoesBackAddsNothing() {
        Development d = Development.NONE.advance(HOUR, 26, 26, Zones.USUAL);
        assertThat(d.advance(0, 26, 26, Zones.USUAL)).isSameAs(d);
        assertThat(d.advance(-HOUR, 26, 26, Zones.USUAL)).isSameAs(d);
    }

    @Test
    void whatIsNoTemperatureIsRefused() {
        assertThatThrownBy(() -> Development.NONE.advance(1, Double.NaN, 26, Zones.USUAL))
                .hasMessageContaining("not a water temperature");
        assertThatThrownBy(() -> Development.NONE.advance(1, 27, 26, Zones.USUAL))
                .hasMessageContaining("27.0 to 26.0");
        assertThatThrownBy(() -> new Development(3, 2, 0, 0, 0)).hasMessageContaining("not a development");
        assertThatThrownBy(() -> new Development(0, 0, Double.NaN, 0, 0))
                .hasMessageContaining("not a development");
    }

    @Test
    void boundsOverARangeAreTheExtremesInsideIt() {
        Random random = new Random(17);
        DoubleUnaryOperator rate = Rate.USUAL::perHour;
        for (int i = 0; i < 500; i++) {
            double low = 8 + random.nextDouble() * 28;
            double high = low + random.nextDouble() * 8;
            double inside = low + random.nextDouble() * (high - low);
            assertThat(rate.applyAsDouble(inside)).isBetween(
                    Rate.USUAL.least(low, high) - 1e-12, Rate.USUAL.most(low, high) + 1e-12);
        }
    }

    @Test
    void aGapWidensTheIntervalAndAddsToWhatWasDone() {
        Development before = Development.NONE.advance(10 * HOUR, 26, 26, Zones.USUAL);
        Development after = before.acrossGap(new Gap(Span.exactly(HOUR), 26, 24, 20,
                Cooling.nominal(2.4), false), Zones.USUAL);
        assertThat(after.leastDegreeHours()).isBetween(149.0, 153.0);
        assertThat(after.mostDegreeHours()).isBetween(153.0, 155.0);
    }
}
