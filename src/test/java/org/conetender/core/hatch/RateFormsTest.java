package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RateFormsTest {

    private static final SharpeSchoolfield ENZYME = (SharpeSchoolfield) RateForm.ENZYME.rate();

    static List<Rate> forms() {
        return List.of(Rate.USUAL, RateForm.BRIERE.rate(), new Briere(12, 33, 3), ENZYME);
    }

    @ParameterizedTest
    @MethodSource("forms")
    void everyFormGivesTwelveDegreeHoursAnHourAtTwentyFourDegrees(Rate rate) {
        assertThat(rate.perHour(24)).isCloseTo(12, within(1e-12));
    }

    @ParameterizedTest
    @MethodSource("forms")
    void everyFormHasOnePeakAndIsZeroOutside(Rate rate) {
        assertThat(rate.perHour(rate.baseC())).isZero();
        assertThat(rate.perHour(rate.ceilingC())).isZero();
        assertThat(rate.perHour(rate.baseC() - 20)).isZero();
        assertThat(rate.perHour(rate.ceilingC() + 20)).isZero();
        double best = rate.perHour(rate.bestC());
        double last = 0;
        for (double c = rate.baseC() + 0.01; c < rate.ceilingC(); c += 0.01) {
            double r = rate.perHour(c);
            assertThat(r).isPositive().isLessThanOrEqualTo(best * (1 + 1e-9));
            boolean rising = c <= rate.bestC();
            assertThat(rising ? r >= last : r <= last || c - rate.bestC() < 0.01).isTrue();
            last = r;
        }
    }

    @ParameterizedTest
    @MethodSource("forms")
    void leastAndMostBoundEveryTemperatureBetween(Rate rate) {
        for (double low = 5; low < 33; low += 1.7) {
            for (double high = low; high < 36; high += 2.3) {
                for (double c = low; c <= high; c += 0.1) {
                    assertThat(rate.perHour(c)).isBetween(rate.least(low, high) - 1e-9,
                            rate.most(low, high) + 1e-6);
                }
            }
        }
    }

    /** Rows A and B of science.md §2.2, as times for 80 %: 38 h at 20 °C against 25 h at 24 °C. */
    @ParameterizedTest
    @MethodSource("forms")
    void twentyDegreesTakeAboutAHalfLongerThanTwentyFour(Rate rate) {
        double published = 38.0 / 25;
        assertThat(rate.perHour(24) / rate.perHour(20)).isCloseTo(published, within(0.16 * published));
    }

    /** Without a published table, the derivative itself is the check: it vanishes at the optimum. */
    @ParameterizedTest(name = "m {2}")
    @CsvSource({"12, 33, 2", "12, 33, 3", "0, 30, 2", "9.07, 34, 2.5"})
    void theClosedFormOptimumIsWhereTheCurveIsFlat(double tmin, double tmax, double m) {
        Briere b = new Briere(tmin, tmax, m);
        double best = b.bestC();
        assertThat((b.perHour(best + 1e-4) - b.perHour(best - 1e-4)) / 2e-4).isCloseTo(0, within(1e-4));
    }

    @Test
    void withoutALowerZeroTheFirstFormPeaksAtFourFifthsOfTheUpper() {
        // T²·(Tmax − T)^(1/2): 2/T = 1/(2·(Tmax − T)).
        assertThat(new Briere(0, 30, 2).bestC()).isCloseTo(24, within(1e-12));
    }

    @Test
    void mostOfTheEnzymeIsActiveAtTheIntrinsicOptimum() {
        SharpeSchoolfield.Enzyme e = ENZYME.enzyme();
        double phi = e.intrinsicC();
        for (double c = 5; c < 34; c += 0.25) {
            assertThat(e.active(c)).isLessThanOrEqualTo(e.active(phi));
        }
        assertThat(e.active(e.coldHalfC())).isCloseTo(0.5, within(0.001));
        assertThat(e.active(e.heatHalfC())).isCloseTo(0.5, within(0.01));
        // At the reference the other factors are one (science.md §3.1).
        assertThat(e.speed(phi)).isCloseTo(e.active(phi), within(1e-12));
    }

    @Test
    void formsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> new Briere(25, 33, 2)).hasMessageContaining("25.0");
        assertThatThrownBy(() -> new Briere(12, 33, 0)).hasMessageContaining("m over 0");
        assertThatThrownBy(() -> new SharpeSchoolfield.Enzyme(13_000, 45_000, 450_000, 13, 32))
                .hasMessageContaining("no enzyme");
        assertThatThrownBy(() -> SharpeSchoolfield.of(ENZYME.enzyme(), 4, 20)).hasMessageContaining("20.0");
    }
}
