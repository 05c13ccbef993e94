package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.settings.Cone.HeatKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhysicsTest {

    private static final double T68 = 1.00024;

    private static Room room(double meanC) {
        Room room = new Room(Room.Climate.steady(meanC), Seeds.of(1, "room"));
        room.step(0, 0);
        return room;
    }

    private static Plant plant(double litres, double watts, double roomC, Plant.Quirks quirks) {
        return new Plant(new Plant.Build(HeatKind.IMMERSED, watts, litres, quirks), room(roomC));
    }

    @Test
    void densityAndSpecificHeatGiveThePublishedCheckValues() {
        assertThat(Brine.density(30 / T68, 0)).isCloseTo(995.6511, within(1e-3));
        assertThat(Brine.density(30 / T68, 35)).isCloseTo(1021.7286, within(1e-3));
        assertThat(Brine.specificHeat(20 / T68, 35)).isCloseTo(3993.854, within(1e-2));
    }

    @ParameterizedTest
    @CsvSource({"15, 4.129", "25, 4.109", "30, 4.099", "35, 4.089"})
    void aCubicMetreOfBrineStoresWhatTheTableSays(double ppt, double mjPerM3K) {
        assertThat(Brine.joulesPerKelvin(1_000, 28, ppt) / 1e6).isCloseTo(mjPerM3K, within(0.0015));
    }

    @ParameterizedTest
    @CsvSource({"4, 0, 13.11", "28, 30, 6.62", "25, 35, 6.77", "33, 15, 6.63"})
    void oxygenDissolvesAsTabled(double degreesC, double ppt, double mgPerL) {
        assertThat(Brine.oxygenMgPerL(degreesC, ppt)).isCloseTo(mgPerL, within(0.01));
    }

    @ParameterizedTest
    @CsvSource({"2, 0.070, 0.027", "10, 0.205, 0.079", "20, 0.326, 0.125"})
    void surfacesOfTheWorkedConesAgree(double litres, double wall, double top) {
        Vessel v = Vessel.holding(litres);
        assertThat(v.wallM2()).isCloseTo(wall, within(0.001));
        assertThat(v.topM2()).isCloseTo(top, within(0.001));
    }

    @ParameterizedTest(name = "{0} L, lid {1}: holding +8 K takes about {2} W")
    @CsvSource({"2, true, 7.5", "2, false, 10.7", "10, true, 22", "10, false, 31", "20, true, 35"})
    void holdingEightKelvinTakesTheWattsOfTheWorkedCones(double litres, boolean lid, double watts) {
        Plant p = plant(litres, 100, 20, Plant.Quirks.BOOK);
        p.pour(litres, 28, 30);
        p.lid(lid);
        double used = 0;
        double over = 0;
        for (int s = 0; s < 20_000; s++) {
            // A gentle law holds 28 °C; a trace of air keeps it one node without stripping heat.
            double power = Math.clamp(watts + 400 * (28 - p.waterC()) + over, 0, 100);
            over += 0.5 * (28 - p.waterC());
            p.step(power, 0, 0.06, 1);
            used += s >= 10_000 ? power / 10_000 : 0;
        }
        assertThat(p.waterC()).isCloseTo(28, within(0.1));
        assertThat(used).isCloseTo(watts, within(0.08 * watts));
    }

    @ParameterizedTest
    @CsvSource({"true, 2.4", "false, 1.7"})
    void twoLitresCoolWithTheirTimeConstant(boolean lid, double hours) {
        Plant p = plant(2, 50, 20, Plant.Quirks.BOOK);
        p.pour(2, 28, 30);
        p.lid(lid);
        for (int s = 0; s < hours * 3_600; s++) {
            p.step(0, 0, 0.06, 1);
        }
        assertThat((p.waterC() - 20) / 8).isCloseTo(Math.exp(-1), within(0.035));
    }

    @Test
    void fiftyWattsWarmTwoLitresByPointThreeSevenKelvinAMinute() {
        Plant p = plant(2, 50, 28, new Plant.Quirks(20, 0, 0));
        p.pour(2, 28, 30);
        for (int s = 0; s < 120; s++) {
            p.step(50, 0, 0.06, 1);
        }
        double before = p.waterC();
        for (int s = 0; s < 60; s++) {
            p.step(50, 0, 0.06, 1);
        }
        assertThat(p.waterC() - before).isCloseTo(0.37, within(0.02));
    }

    @Test
    void eachLitreOfAirAMinuteCostsAboutPointNineWatts() {
        double joules = Brine.joulesPerKelvin(2, 28, 30);
        double[] fell = new double[2];
        for (int lpm = 0; lpm < 2; lpm++) {
            Plant p = plant(2, 50, 20, new Plant.Quirks(45, 0, 0));
            p.pour(2, 28, 30);
            for (int s = 0; s < 600; s++) {
                p.step(0, 0, 0.06 + lpm, 1);
            }
            fell[lpm] = 28 - p.waterC();
        }
        assertThat((fell[1] - fell[0]) * joules / 600).isCloseTo(0.9, within(0.06));
    }

    @Test
    void aDayOfAirTakesAboutTwentySixGramsOfWaterAndLeavesTheSalt() {
        Plant p = plant(2, 50, 20, new Plant.Quirks(45, 1, 0));
        p.pour(2, 28, 30);
        for (int s = 0; s < 86_400; s++) {
            p.step(Math.clamp(8 + 400 * (28 - p.waterC()), 0, 50), 0, 1, 1);
        }
        assertThat(2 - p.litres()).isCloseTo(0.026, within(0.003));
        assertThat(p.ppt() - 30).isCloseTo(0.4, within(0.05));
    }

    @Test
    void withoutAirTheHeaterWarmsOnlyTheTop() {
        Plant p = plant(2, 50, 20, Plant.Quirks.BOOK);
        p.pour(2, 25, 30);
        for (int s = 0; s < 600; s++) {
            p.step(50, 0, 0, 1);
        }
        assertThat(p.waterC(1) - p.waterC(0)).isGreaterThan(3);
        for (int s = 0; s < 120; s++) {
            p.step(0, 0, 1, 1);
        }
        assertThat(p.waterC(1) - p.waterC(0)).isLessThan(0.05);
    }

    @Test
    void aDryHeaterGetsHotAndWarmsNoWater() {
        Plant p = plant(2, 50, 20, Plant.Quirks.BOOK);
        p.pour(0.5, 20, 30);
        for (int s = 0; s < 1_800; s++) {
            p.step(50, 0, 1, 1);
        }
        assertThat(p.heaterCovered()).isFalse();
        assertThat(p.elementC()).isGreaterThan(100);
        assertThat(p.waterC()).isLessThan(20.1);
    }

    @Test
    void coldWaterPouredInCoolsByItsShare() {
        Plant p = plant(2, 50, 20, Plant.Quirks.BOOK);
        p.pour(1.5, 28, 30);
        p.pour(0.5, 12, 0);
        assertThat(p.waterC()).isCloseTo(24, within(0.01));
        assertThat(p.ppt()).isCloseTo(22.5, within(0.01));
    }
}
