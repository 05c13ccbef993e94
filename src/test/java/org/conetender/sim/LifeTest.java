package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The cysts and the oxygen by themselves, at temperatures that are simply given. */
class LifeTest {

    private static final double SLICE_S = 10;

    private static final class Culture {
        final Cysts cysts;
        final Cysts.Around around = new Cysts.Around();
        long ms;

        Culture(Lot lot) {
            cysts = new Cysts(lot, 4, 1);
            around.oxygen = 6;
            around.lit = true;
        }

        Culture at(double degreesC, double hours) {
            around.waterC = degreesC;
            long end = ms + Math.round(hours * 3_600_000);
            while (ms < end) {
                ms += 10_000;
                cysts.step(around, ms, SLICE_S);
            }
            return this;
        }

        double hours(int percent) {
            return cysts.momentMs(percent) / 3_600_000.0;
        }
    }

    private static Lot lot(int i) {
        return Lot.draw(3, "L-" + i);
    }

    @Test
    void lotsLieAroundNineteenHoursWithTheirSpread() {
        double[] logs = IntStream.range(0, 2_000).mapToDouble(i -> Math.log(lot(i).t50At26H())).toArray();
        double mean = Arrays.stream(logs).average().orElseThrow();
        double var = Arrays.stream(logs).map(x -> (x - mean) * (x - mean)).sum() / (logs.length - 1);
        assertThat(Math.exp(mean)).isCloseTo(19.2, within(0.4));
        assertThat(Math.sqrt(var)).isCloseTo(0.2, within(0.015));
        assertThat(Lot.draw(3, "L-0417")).isEqualTo(Lot.draw(3, "L-0417"));
    }

    @Test
    void halfHasHatchedAtTheHourTheLotSays() {
        for (int i = 0; i < 5; i++) {
            Culture c = new Culture(lot(i)).at(26, 40);
            assertThat(c.hours(50)).isCloseTo(lot(i).t50At26H(), within(0.15));
        }
    }

    @ParameterizedTest(name = "at {0} °C it takes about {1} times as long as at 26 °C")
    @CsvSource({"20, 1.75, 0.17", "22, 1.40, 0.10", "24, 1.165, 0.05", "28, 0.876, 0.04", "30, 0.78, 0.06"})
    void slownessFollowsThePublishedHours(double degreesC, double times, double within) {
        double sum = 0;
        for (int i = 0; i < 200; i++) {
            sum += lot(i).perSecond(26) / lot(i).perSecond(degreesC) / 200;
        }
        assertThat(sum).isCloseTo(times, within(within));
    }

    @Test
    void synchronyOfOrdinaryLotsIsWithinThePublishedHours() {
        for (int i = 0; i < 30; i++) {
            Culture c = new Culture(lot(i)).at(26, 50);
            double sigma = Math.log(c.hours(90) / c.hours(10)) / 2.563;
            assertThat(sigma).isBetween(0.10, 0.20);
        }
    }

    @Test
    void aboveTheCeilingDevelopmentStandsStillAndGoesOnAfterwards() {
        for (int i = 0; i < 50; i++) {
            assertThat(lot(i).perSecond(34) / lot(i).perSecond(28)).isLessThan(0.04);
            assertThat(lot(i).perSecond(33) / lot(i).perSecond(28)).isLessThan(0.25);
        }
        Culture steady = new Culture(lot(1)).at(26, 40);
        Culture arrested = new Culture(lot(1)).at(26, 8).at(35, 5).at(26, 32);
        assertThat(arrested.hours(50) - steady.hours(50)).isCloseTo(5, within(0.3));
        double whole = steady.cysts.alive();
        assertThat(arrested.cysts.alive()).isCloseTo(whole, within(0.2 * whole));
    }

    @Test
    void heatAboveTheLossLimitKillsAndLessDoesNot() {
        Culture warm = new Culture(lot(1)).at(26, 5).at(37, 3).at(26, 50);
        Culture hot = new Culture(lot(1)).at(26, 5).at(41, 3).at(26, 50);
        assertThat(hot.cysts.alive()).isLessThan(0.01 * warm.cysts.alive());
        assertThat(hot.cysts.hatchedFraction()).isBetween(0.9, 1.0);
    }

    @Test
    void withoutOxygenCystsWaitAndDoNotDie() {
        Culture steady = new Culture(lot(1)).at(26, 40);
        Culture c = new Culture(lot(1)).at(26, 8);
        c.around.oxygen = 0;
        c.at(26, 6);
        c.around.oxygen = 6;
        c.at(26, 30);
        assertThat(c.hours(50) - steady.hours(50)).isCloseTo(6, within(0.1));
    }

    @Test
    void withoutLightSomeNeverHatch() {
        Culture lit = new Culture(lot(1)).at(26, 50);
        Culture dark = new Culture(lot(1));
        dark.around.lit = false;
        dark.at(26, 50);
        assertThat(dark.cysts.alive() / lit.cysts.alive()).isCloseTo(0.9, within(0.01));
    }

    @Test
    void aDayOfWaitingCostsAQuarterToAThirdOfTheEnergy() {
        Culture c = new Culture(lot(1)).at(26, 45);
        double before = c.cysts.energy();
        c.at(25, 24);
        assertThat(1 - c.cysts.energy() / before).isBetween(0.22, 0.37);
    }

    private static double minutesToTwo(double perMl, double share, boolean gathers) {
        Room room = new Room(Room.Climate.steady(28), Seeds.of(1, "r"));
        room.step(0, 0);
        Plant water = new Plant(new Plant.Build(org.conetender.core.settings.Cone.HeatKind.NONE, 0, 2,
                Plant.Quirks.BOOK), room);
        water.pour(2, 28, 30);
        Lot lot = lot(1);
        // All hatched: the free animals are the viable cysts of the charge.
        Culture c = new Culture(lot);
        Cysts all = new Cysts(lot, perMl * 2_000 / Cysts.PER_GRAM / lot.viable(), 1);
        for (long ms = 0; ms < 80 * 3_600_000L; ms += 10_000) {
            c.around.waterC = 26;
            all.step(c.around, ms, SLICE_S);
        }
        Oxygen o = new Oxygen(new Oxygen.Build(2, 900, gathers ? 180 : 1e12));
        o.refill(28, 30);
        // Start at the table's share of saturation: let them breathe it down to there.
        double start = share * Brine.oxygenMgPerL(28, 30);
        int s = 0;
        int from = -1;
        while (o.here() > 2 && s < 36_000) {
            o.step(water, 0, all, 1);
            from = from < 0 && o.here() <= start ? s : from;
            s++;
        }
        return (s - from) / 60.0;
    }

    @ParameterizedTest(name = "{0} per mL from {1} of saturation: about {2} min")
    @CsvSource({"200, 0.9, 32", "400, 0.9, 16", "400, 0.7, 11", "1000, 0.9, 6.5", "1000, 0.7, 4.3",
        "4000, 0.9, 1.6"})
    void mixedWaterRunsShortOfOxygenInTheMinutesOfTheTable(double perMl, double share, double minutes) {
        assertThat(minutesToTwo(perMl, share, false)).isCloseTo(minutes, within(0.12 * minutes + 0.1));
    }

    @Test
    void aSettledLayerRunsShortMuchSooner() {
        assertThat(minutesToTwo(400, 0.9, true)).isBetween(1.5, 7.0);
    }
}
