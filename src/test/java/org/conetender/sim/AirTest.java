package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.settings.Cone.Geometry;
import org.junit.jupiter.api.Test;

/** Air, what runs back without it, and what it means for the animals. */
class AirTest {

    private static World world(Geometry geometry) {
        World w = new World(Benches.larkmoor(geometry), 5, Bench.byTheBook(22));
        for (SimCone c : w.cones()) {
            c.fill(2, 26, 25);
            c.air().valve(true);
        }
        w.step(10_000);
        return w;
    }

    private static Air.Flood after(World w, int seconds, String... held) {
        Benches.run(w, seconds, held);
        return w.cone("a").air().flood();
    }

    @Test
    void waterRunsIntoALowPumpThatIsPausedWithTheValveOpen() {
        World w = world(Benches.LOW_PUMP);
        assertThat(after(w, 60, "a.air-pause")).isEqualTo(Air.Flood.COMMANDED);
        assertThat(w.cone("b").air().flood()).isEqualTo(Air.Flood.NOT);
        assertThat(w.cone("a").water().litres()).isLessThan(2);
        w.step(60_000);
        assertThat(w.cone("a").air().flowLpm()).isZero();
        w.cone("a").repair();
        w.step(1_000);
        assertThat(w.cone("a").air().flowLpm()).isPositive();
        assertThat(w.cone("a").air().flood()).isEqualTo(Air.Flood.COMMANDED);
    }

    @Test
    void nothingRunsBackWhenTheValveIsShutOrThePumpIsHighOrChecked() {
        assertThat(after(world(Benches.HIGH_PUMP), 60, "a.air-pause")).isEqualTo(Air.Flood.NOT);
        assertThat(after(world(Benches.CHECKED), 60, "a.air-pause")).isEqualTo(Air.Flood.NOT);
        World shut = world(Benches.LOW_PUMP);
        shut.cone("a").air().valve(false);
        assertThat(after(shut, 60, "a.air-pause")).isEqualTo(Air.Flood.NOT);
        World empty = world(Benches.LOW_PUMP);
        empty.cone("a").drain();
        assertThat(after(empty, 60, "a.air-pause")).isEqualTo(Air.Flood.NOT);
        assertThat(after(world(Benches.LOW_PUMP), 60)).isEqualTo(Air.Flood.NOT);
    }

    @Test
    void aPowerCutOrADeadPumpFloodsTooAndSaysSo() {
        World cut = world(Benches.LOW_PUMP);
        cut.power(false);
        assertThat(after(cut, 60)).isEqualTo(Air.Flood.POWER_LOST);
        World dead = world(Benches.LOW_PUMP);
        dead.apply(new Fault.OfAir("a", Air.Fault.PUMP_STOPPED, new Fault.When(0, 600_000)));
        assertThat(after(dead, 60)).isEqualTo(Air.Flood.PUMP_FAILED);
    }

    @Test
    void aPauseOfAMomentIsBlownClearAgain() {
        World w = world(Benches.LOW_PUMP);
        for (int i = 0; i < 10; i++) {
            assertThat(after(w, 2, "a.air-pause")).isEqualTo(Air.Flood.NOT);
            w.step(20_000);
        }
        assertThat(w.cone("a").air().flood()).isEqualTo(Air.Flood.NOT);
    }

    @Test
    void aSharedPumpIsNeverStoppedByTheSolenoidOfOneCone() {
        World w = new World(Benches.larkmoor(Benches.LOW_PUMP), 5, Bench.byTheBook(22).withSharedPump(true));
        w.cone("a").fill(2, 26, 25);
        w.cone("a").air().valve(true);
        assertThat(after(w, 60, "a.air-pause")).isEqualTo(Air.Flood.NOT);
        assertThat(w.cone("a").air().flowLpm()).isZero();
        w.power(false);
        assertThat(after(w, 60)).isEqualTo(Air.Flood.POWER_LOST);
    }

    @Test
    void aTornDiaphragmOrALooseHoseLeavesLittleOrNoAir() {
        World w = world(Benches.HIGH_PUMP);
        w.apply(new Fault.OfAir("a", Air.Fault.TORN_DIAPHRAGM, new Fault.When(0, 600_000)));
        w.apply(new Fault.OfAir("b", Air.Fault.HOSE_OFF, new Fault.When(0, 600_000)));
        w.step(60_000);
        assertThat(w.cone("a").air().flowLpm()).isBetween(0.01, 0.2 * w.cone("a").air().healthyLpm());
        assertThat(w.cone("a").air().offTrueMs()).isGreaterThan(50_000);
        assertThat(w.cone("b").air().flowLpm()).isZero();
        assertThat(w.cone("c").air().offTrueMs()).isZero();
    }

    private static SimCone hatched(double grams, int minutesWithoutAir) {
        World w = world(Benches.HIGH_PUMP);
        SimCone c = w.cone("a");
        c.stock("L-0417", grams);
        for (int m = 0; m < 60 * 60; m++) {
            w.devices().switches().get("a.heat").hold(c.water().waterC() < 26.5, 60_000);
            w.devices().switches().get("a.cut-out").hold(true, 60_000);
            w.step(60_000);
        }
        assertThat(c.cysts().orElseThrow().hatchedFraction()).isGreaterThan(0.95);
        Benches.run(w, minutesWithoutAir * 60, "a.air-pause");
        return c;
    }

    @Test
    void animalsBearTwelveMinutesAtTheUsualChargeButNotHalfAnHour() {
        assertThat(hatched(4, 12).cysts().orElseThrow().deadFraction()).isLessThan(0.005);
        assertThat(hatched(4, 40).cysts().orElseThrow().deadFraction()).isGreaterThan(0.3);
    }

    @Test
    void aDenseHatchDiesSooner() {
        assertThat(hatched(12, 14).cysts().orElseThrow().deadFraction())
                .isGreaterThan(hatched(4, 14).cysts().orElseThrow().deadFraction() + 0.05);
    }
}
