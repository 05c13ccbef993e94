package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Heat on its way, against the sums and the exact answer of two lags in series. */
class UnderwayTest {

    /** The reading after a step from nothing to full power, of two lags in series, 0..1. */
    private static double exact(double t, double lagS, double probeS) {
        return lagS == probeS ? 1 - (1 + t / lagS) * Math.exp(-t / lagS)
                : 1 - (lagS * Math.exp(-t / lagS) - probeS * Math.exp(-t / probeS)) / (lagS - probeS);
    }

    @ParameterizedTest
    @CsvSource({"5,1", "10,1", "20,1", "50,1", "90,1", "50,0.25", "50,4", "150,1"})
    void allThatWasSwitchedArrivesInTheReading(double lagS, double dtS) {
        Random random = new Random(1);
        Underway way = Underway.NONE;
        double switchedS = 0;
        double arrivedS = 0;
        for (int i = 0; i < 3_000; i++) {
            double heat = i % 40 < 20 ? random.nextDouble() : random.nextInt(2);
            way = way.after(heat, dtS, lagS);
            switchedS += heat * dtS;
            arrivedS += way.felt() * dtS;
            assertThat(arrivedS + way.storedS(lagS)).as("on the way, to half a step in each lag")
                    .isCloseTo(switchedS, within(dtS));
        }
        for (double t = 0; t < 60 * lagS; t += dtS) {
            way = way.after(0, dtS, lagS);
            arrivedS += way.felt() * dtS;
        }
        assertThat(arrivedS).isCloseTo(switchedS, within(1e-6));
        assertThat(way.storedS(lagS)).isCloseTo(0, within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(doubles = {5, Underway.PROBE_S, 20, 50, 90, 150})
    void theReadingFeelsAHeaterAsTwoLagsInSeriesDo(double lagS) {
        Underway way = Underway.NONE;
        for (int t = 1; t <= 900; t++) {
            way = way.after(1, 1, lagS);
            assertThat(way.element()).isCloseTo(1 - Math.exp(-t / lagS), within(0.002));
            // Half a step ahead, because the probe is given what the element ends the step with.
            assertThat(way.felt()).as("after %d s", t)
                    .isCloseTo(exact(t + 0.5, lagS, Underway.PROBE_S), within(0.005));
        }
        for (int t = 1; t <= 900; t++) {
            way = way.after(0, 1, lagS);
            assertThat(way.felt()).isBetween(0.0, 1.0)
                    .isCloseTo(1 - exact(t + 0.5, lagS, Underway.PROBE_S), within(0.01));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {20, 50, 90})
    void itKnowsWhatAnotherLagWouldHaveMade(double lagS) {
        Random random = new Random(2);
        Underway way = Underway.NONE;
        Underway shorter = Underway.NONE;
        Underway longer = Underway.NONE;
        double furthest = 0;
        double largest = 0;
        double heat = 1;
        for (int t = 0; t < 2_000; t++) {
            heat = random.nextInt(60) == 0 ? 1 - heat : heat;
            way = way.after(heat, 1, lagS);
            shorter = shorter.after(heat, 1, lagS - 0.01);
            longer = longer.after(heat, 1, lagS + 0.01);
            double byLag = (longer.felt() - shorter.felt()) / 0.02;
            largest = Math.max(largest, Math.abs(byLag));
            furthest = Math.max(furthest, Math.abs(way.feltByLag() - byLag));
        }
        assertThat(largest).as("lags matter").isGreaterThan(0.001);
        assertThat(furthest).isLessThan(0.04 * largest);
    }

    @Test
    void whatIsStoredAtASteadyDutyIsTheCoastOfTheTraits() {
        Traits traits = new Traits(0.006, 1.6e-4, 70);
        Underway way = Underway.NONE;
        for (int t = 0; t < 2_000; t++) {
            way = way.after(0.4, 1, traits.lagS());
        }
        assertThat(traits.riseKPerS() * way.storedS(traits.lagS()))
                .isCloseTo(traits.coastK(0.4), within(1e-9));
    }

    @Test
    void aStuckHeaterOfFiftyWattsWarmsTwoLitresByAThirdOfAKelvinAMinute() {
        Traits t = Traits.nominal(50, 1.2, 2 * Basin.J_PER_L_K);
        assertThat(60 * t.riseKPerS()).as("science.md §9").isCloseTo(0.37, within(0.01));
        assertThat(1 / t.lossPerS() / 3_600).as("time constant, h").isCloseTo(1.9, within(0.01));
        double netDuty = 1 - 1.2 * 7 / 50;
        assertThat(t.coastK(netDuty)).as("control.md §2.1: 0.31 by formula").isCloseTo(0.31, within(0.01));
    }
}
