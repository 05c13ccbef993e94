package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rows of science.md §2.2 and the table derived from them in §2.3. */
class PublishedTimesTest {

    private static final long SECOND = 1_000;

    /** T0 of rows A and B in degree-hours above 12 °C: 25·8 and 17·12; T80: 38·8 and 25·12. */
    private static final double T0 = Math.sqrt(25 * 8 * 17 * 12);
    private static final double T80 = Math.sqrt(38 * 8 * 25 * 12);

    /** The lot of rows A and B, T0 read as the first percentile (science.md §2.3). */
    private static final Speed COASTAL = coastal();

    private static Speed coastal() {
        double sigma = Math.log(T80 / T0) / (Normal.quantile(0.80) - Normal.quantile(0.01));
        return new Speed(T80 / Math.exp(sigma * Normal.quantile(0.80)), sigma, 0.2, 0);
    }

    @Test
    void theTwoRowsGiveTheThermalConstantsOfTheText() {
        assertThat(COASTAL.sigma()).isCloseTo(0.127, within(0.0005));
        assertThat(COASTAL.k10()).isCloseTo(231, within(0.5));
        assertThat(COASTAL.k50DegreeHours()).isCloseTo(271, within(0.5));
        assertThat(COASTAL.k90()).isCloseTo(319, within(0.5));
    }

    @ParameterizedTest(name = "row {0} at {1} °C")
    @CsvSource({"A, 20, 25, 38", "B, 24, 17, 25"})
    void firstNaupliiAndEightyPercentComeWhenTheRowsSay(String row, double waterC, double t0, double t80) {
        assertThat(hoursAt(waterC, COASTAL.k0())).isCloseTo(t0, within(0.5));
        assertThat(hoursAt(waterC, COASTAL.degreeHoursAt(0.80))).isCloseTo(t80, within(0.5));
    }

    @ParameterizedTest(name = "{0} °C")
    @CsvSource({
        "18, 33.7, 38.4, 45.2, 53.2", "20, 25.2, 28.8, 33.9, 39.9", "22, 20.2, 23.1, 27.1, 31.9",
        "24, 16.8, 19.2, 22.6, 26.6", "25, 15.5, 17.7, 20.9, 24.6", "26, 14.4, 16.5, 19.4, 22.8",
        "28, 12.6, 14.4, 17.0, 20.0", "30, 11.2, 12.8, 15.1, 17.7"})
    void theTableOfConstantTemperaturesIsReproducedToItsLastDigit(double waterC, double t0, double t10,
                                                                  double t50, double t90) {
        assertThat(hoursAt(waterC, COASTAL.k0())).isCloseTo(t0, within(0.051));
        assertThat(hoursAt(waterC, COASTAL.k10())).isCloseTo(t10, within(0.051));
        assertThat(hoursAt(waterC, COASTAL.k50DegreeHours())).isCloseTo(t50, within(0.051));
        assertThat(hoursAt(waterC, COASTAL.k90())).isCloseTo(t90, within(0.051));
    }

    @ParameterizedTest(name = "{0} °C")
    @CsvSource({"18, 38.4, 53.2", "24, 19.2, 26.6", "28, 14.4, 20.0", "30, 12.8, 17.7"})
    void theForecastAtStockingSaysTheSameAsTheTable(double waterC, double t10, double t90) {
        Forecast f = Forecast.of(Development.NONE, COASTAL, Projection.steady(waterC), Rate.USUAL);
        assertThat(f.t10Hours()).isCloseTo(t10, within(0.051));
        assertThat(f.ready().median()).isCloseTo(t90, within(0.051));
    }

    @Test
    void theHatchedShareTurnsBackIntoTheDegreeHoursItCameFrom() {
        for (double share = 0.01; share < 1; share += 0.01) {
            assertThat(COASTAL.hatchedShare(COASTAL.degreeHoursAt(share))).isCloseTo(share, within(1e-9));
        }
        assertThat(COASTAL.hatchedShare(0)).isZero();
    }

    /** Hours of ticks at a constant temperature until so many degree-hours are done. */
    private static double hoursAt(double waterC, double degreeHours) {
        Development d = Development.NONE;
        long ms = 0;
        while (d.degreeHours() < degreeHours) {
            d = d.advance(10 * SECOND, waterC, waterC, Zones.USUAL);
            ms += 10 * SECOND;
        }
        return ms / 3_600_000.0;
    }
}
