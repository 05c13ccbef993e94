package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published check values and the tables of science.md §7 and §9. */
class OxygenTest {

    @Test
    void densityMeetsThePublishedCheckValues() {
        assertThat(Seawater.density68(0, 30)).isCloseTo(995.6511, within(5e-5));
        assertThat(Seawater.density68(35, 30)).isCloseTo(1021.7286, within(5e-5));
    }

    @ParameterizedTest(name = "{0} ppt")
    @CsvSource({"5, 1000.81", "15, 1008.30", "25, 1015.80", "30, 1019.57", "35, 1023.34", "40, 1027.13"})
    void densityAt25DegreesIsThatOfTheSaltTable(double ppt, double density) {
        assertThat(Seawater.density(ppt, 25)).isCloseTo(density, within(0.006));
    }

    @Test
    void garciaAndGordonMeetTheirCheckValue() {
        assertThat(Oxygen.micromolPerKg(35, 10)).isCloseTo(274.610, within(5e-4));
    }

    /** The printed tables of fresh water, which were made by this equation: to one in the last digit. */
    @ParameterizedTest(name = "{0} °C")
    @CsvSource({"0, 14.621", "5, 12.770", "10, 11.288", "15, 10.084", "20, 9.092", "25, 8.263", "30, 7.559",
        "35, 6.949", "40, 6.412"})
    void bensonAndKrauseMeetThePrintedTable(double waterC, double mgPerL) {
        assertThat(Oxygen.mgPerL(0, waterC)).isCloseTo(mgPerL, within(1.1e-3));
    }

    @ParameterizedTest(name = "{0} ppt")
    @CsvSource({
        "0, 13.11, 11.29, 9.09, 8.26, 7.83, 7.56, 7.18", "15, 11.85, 10.26, 8.32, 7.59, 7.20, 6.96, 6.63",
        "25, 11.08, 9.62, 7.85, 7.17, 6.81, 6.59, 6.28", "30, 10.71, 9.32, 7.62, 6.97, 6.62, 6.41, 6.11",
        "35, 10.35, 9.02, 7.40, 6.77, 6.44, 6.24, 5.95", "40, 10.01, 8.74, 7.18, 6.58, 6.26, 6.07, 5.79"})
    void saturationIsThatOfTheTable(double ppt, double at4, double at10, double at20, double at25,
                                    double at28, double at30, double at33) {
        double[] temperatures = {4, 10, 20, 25, 28, 30, 33};
        double[] table = {at4, at10, at20, at25, at28, at30, at33};
        for (int i = 0; i < table.length; i++) {
            assertThat(Oxygen.mgPerL(ppt, temperatures[i])).isCloseTo(table[i], within(0.0051));
        }
    }

    @Test
    void bothMethodsAgreeWithinAHundredthOfAMilligram() {
        for (double ppt = 0; ppt <= 40; ppt += 5) {
            for (double c = 2; c <= 35; c++) {
                double other = Oxygen.micromolPerKg(ppt, c) * Seawater.density(ppt, c) * 31.9988e-6;
                assertThat(Oxygen.mgPerL(ppt, c)).isCloseTo(other, within(0.011));
            }
        }
    }

    @ParameterizedTest(name = "{0} °C")
    @CsvSource({"4, 3.5", "10, 5.3", "20, 10.6", "25, 14.9", "28, 18.4", "30, 21.1"})
    void uptakeIsThatOfTheTable(double waterC, double ugPerMg) {
        assertThat(Oxygen.uptakePerMg(waterC)).isCloseTo(ugPerMg, within(0.051));
    }

    @ParameterizedTest(name = "{0} per mL")
    @CsvSource({"100, 65, 43", "200, 32, 22", "400, 16, 11", "1000, 6.5, 4.3", "4000, 1.6, 1.1",
        "10000, 0.65, 0.43"})
    void minutesToHypoxiaAreThoseOfTheTable(double perMl, double from90, double from70) {
        double full = Oxygen.mgPerL(30, 28);
        assertThat(Oxygen.wholeVolumeMinutes(perMl, 0.9 * full, 28)).isCloseTo(from90, within(0.02 * from90));
        assertThat(Oxygen.wholeVolumeMinutes(perMl, 0.7 * full, 28))
                .isCloseTo(from70, within(0.025 * from70));
    }

    @Test
    void twoGramsPerLitreLeaveAboutTenMinutes() {
        Oxygen.Charge charge = new Oxygen.Charge(4, 2, 30, 250_000, 0.8);
        assertThat(charge.perMl()).isCloseTo(400, within(1e-9));
        assertThat(Oxygen.airOffMinutes(charge, 28)).isCloseTo(0.6 * 16.1, within(0.1));
    }

    @Test
    void denserWarmerAndSaltierAllShortenTheTimeWithoutAir() {
        double usual = Oxygen.airOffMinutes(new Oxygen.Charge(4, 2, 25, 250_000, 1), 26);
        assertThat(Oxygen.airOffMinutes(new Oxygen.Charge(8, 2, 25, 250_000, 1), 26)).isEqualTo(usual / 2);
        assertThat(Oxygen.airOffMinutes(new Oxygen.Charge(4, 2, 35, 250_000, 1), 26)).isLessThan(usual);
        assertThat(Oxygen.airOffMinutes(new Oxygen.Charge(4, 2, 25, 250_000, 1), 29)).isLessThan(usual);
    }

    @Test
    void whereNothingBreathesTheAirMayStayOff() {
        assertThat(Oxygen.airOffMinutes(new Oxygen.Charge(4, 2, 25, 250_000, 0), 26)).isInfinite();
        assertThat(Oxygen.wholeVolumeMinutes(100, 1.5, 26)).isZero();
    }

    @Test
    void impossibleChargesAreRefused() {
        assertThatThrownBy(() -> new Oxygen.Charge(4, 0, 25, 250_000, 1)).hasMessageContaining("0.0 L");
        assertThatThrownBy(() -> new Oxygen.Charge(4, 2, 25, Double.NaN, 1)).hasMessageContaining("NaN/g");
    }
}
