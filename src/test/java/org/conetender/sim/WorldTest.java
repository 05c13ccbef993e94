package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Reading;
import org.junit.jupiter.api.Test;

class WorldTest {

    private static World filled(World w) {
        for (SimCone c : w.cones()) {
            c.fill(2, 22, 25);
            c.air().valve(true);
            c.stock("L-0417", 4);
        }
        return w;
    }

    private static long trace(long seed) {
        World w = filled(Benches.drawn(seed));
        long h = 0;
        for (int m = 0; m < 300; m++) {
            if (m % 3 != 0) {
                Benches.hold(w, "a.heat", true);
                Benches.hold(w, "a.cut-out", true);
            }
            w.step(60_000);
            h = h * 31 + Trace.of(w);
        }
        return h;
    }

    @Test
    void theSameSeedGivesTheSameWorldAndAnotherSeedAnother() {
        assertThat(trace(7)).isEqualTo(trace(7)).isNotEqualTo(trace(8));
    }

    @Test
    void heatNeedsBothTheHeaterSwitchAndTheCutOut() {
        World w = filled(Benches.book(20));
        Benches.run(w, 2, "a.heat");
        assertThat(w.cone("a").heaterOn()).isFalse();
        Benches.run(w, 2, "a.heat", "a.cut-out");
        assertThat(w.cone("a").heaterOn()).isTrue();
        assertThat(w.cone("b").heaterOn()).isFalse();
    }

    @Test
    void aLeaseThatIsNotRenewedEndsByItself() {
        World w = filled(Benches.book(20));
        Benches.run(w, 1, "a.heat", "a.cut-out");
        w.step(2_000);
        assertThat(w.cone("a").heaterOn()).isTrue();
        w.step(2_000);
        assertThat(w.cone("a").heaterOn()).isFalse();
        assertThat(w.devices().switches().get("a.heat").cycles()).isEqualTo(1);
    }

    @Test
    void aPowerCutStopsHeatAndPumpsAndItsEndDoesNotStartTheHeater() {
        World w = filled(Benches.book(20));
        Benches.run(w, 3, "a.heat", "a.cut-out");
        w.power(false);
        w.step(1_000);
        assertThat(w.cone("a").heaterOn()).isFalse();
        assertThat(w.cone("a").air().flowLpm()).isZero();
        w.power(true);
        w.step(1_000);
        assertThat(w.cone("a").heaterOn()).isFalse();
        assertThat(w.cone("a").air().flowLpm()).isPositive();
    }

    /** A clock that stopped with the power is trusted once a network has set it, whatever else ends. */
    @Test
    void aClockWithoutABatteryIsTrustedOnlyOnceItIsRight() {
        for (long untrustedS : new long[] {40, 80}) {
            World w = filled(Benches.book(20));
            w.apply(new Fault.OfSite(Fault.Trouble.NO_BATTERY, new Fault.When(0, 60_000)));
            w.apply(new Fault.OfSite(Fault.Trouble.CLOCK_UNTRUSTED, new Fault.When(0, untrustedS * 1_000)));
            w.step(1_000);
            w.clock().rebootFrom(0);
            for (int s = 0; s < 100; s++) {
                w.step(1_000);
                assertThat(w.clock().now().wallTrusted()).as(s + " of " + untrustedS).isEqualTo(
                        w.clock().elapsedMs() >= Math.max(60, untrustedS) * 1_000);
                assertThat(!w.clock().now().wallTrusted()
                        || w.clock().now().wallMs() == w.clock().trueWallMs()).isTrue();
            }
        }
    }

    @Test
    void aPumpOnItsOwnSupplyRunsThroughAPowerCut() {
        World w = filled(new World(Benches.larkmoor(Benches.HIGH_PUMP), 1,
                Bench.byTheBook(20).withAirOwnSupply(true)));
        w.power(false);
        w.step(5_000);
        assertThat(w.cone("a").air().flowLpm()).isPositive();
    }

    @Test
    void aWeldedHeaterHeatsWhateverIsCommandedUntilTheCutOutOpens() {
        World w = filled(Benches.book(20));
        w.apply(new Fault.OfSwitch("a", "heat", SimSwitch.Fault.WELDED, new Fault.When(0, 60_000)));
        Benches.run(w, 2, "a.cut-out");
        assertThat(w.devices().switches().get("a.heat").commanded()).isFalse();
        assertThat(w.cone("a").heaterOn()).isTrue();
        w.step(10_000);
        assertThat(w.cone("a").heaterOn()).isFalse();
        Benches.run(w, 60, "a.cut-out");
        assertThat(w.cone("a").heaterOn()).isFalse();
        assertThat(w.wrong()).isEmpty();
    }

    @Test
    void levelContactFollowsTheWaterAndAirProofTheAir() {
        World w = Benches.book(20);
        w.cone("a").air().valve(true);
        w.step(10_000);
        assertThat(w.devices().contacts().get("a.level").read()).isEqualTo(Level.OPEN);
        w.cone("a").fill(2, 20, 25);
        w.step(1_000);
        assertThat(w.devices().contacts().get("a.level").read()).isEqualTo(Level.CLOSED);
        assertThat(w.devices().contacts().get("a.air-proof").read()).isEqualTo(Level.CLOSED);
        Benches.run(w, 10, "a.air-pause");
        assertThat(w.devices().contacts().get("a.air-proof").read()).isEqualTo(Level.OPEN);
        assertThat(w.cone("a").air().offTrueMs()).isBetween(8_000L, 11_000L);
        assertThat(w.cone("a").air().pausedMs()).isBetween(9_000L, 11_000L);
    }

    @Test
    void swappedProbesReadEachOthersConeAndComeBack() {
        World w = Benches.book(20);
        w.cone("a").fill(2, 30, 25);
        w.cone("b").fill(2, 15, 25);
        w.apply(new Fault.Swapped("a", "b", new Fault.When(0, 600_000)));
        w.step(300_000);
        assertThat(w.devices().probes().get("a.water").shownC()).isLessThan(20);
        assertThat(w.devices().probes().get("b.water").shownC()).isGreaterThan(25);
        w.step(600_000);
        assertThat(w.devices().probes().get("a.water").shownC()).isGreaterThan(25);
    }

    @Test
    void aHeatWaveWarmsTheRoomAndPasses() {
        World w = Benches.book(20);
        w.apply(new Fault.OfSite(Fault.Trouble.ROOM_HOT, new Fault.When(0, 3 * 3_600_000)));
        w.step(3 * 3_600_000 - 1_000);
        assertThat(w.room().airC()).isCloseTo(34, within(0.1));
        w.step(3 * 3_600_000);
        assertThat(w.room().airC()).isCloseTo(20, within(0.1));
    }

    @Test
    void aSlowBusMakesEveryProbeLateAtOnceAndPasses() {
        World w = Benches.book(20);
        w.step(5_000);
        w.apply(new Fault.OfBus(SimProbe.Fault.SLOW, new Fault.When(w.clock().elapsedMs(), 600_000)));
        w.step(30_000);
        assertThat(w.devices().probes().values()).hasSizeGreaterThan(2)
                .allMatch(p -> p.latest(w.clock().now().monoMs()).ageMs() > 15_000);
        w.step(600_000);
        assertThat(w.devices().probes().values())
                .allMatch(p -> p.latest(w.clock().now().monoMs()).ageMs() <= 1_000);
    }

    @Test
    void aProbeThatFailedByItselfIsNoBetterOnceTheBusIsBack() {
        World w = Benches.book(20);
        w.apply(new Fault.OfProbe("a", 0, SimProbe.Fault.ABSENT, new Fault.When(0, 3_600_000)));
        w.apply(new Fault.OfBus(SimProbe.Fault.SLOW, new Fault.When(10_000, 60_000)));
        w.step(120_000);
        assertThat(w.cone("a").fixtures.probes.getFirst().latest(w.clock().now().monoMs()).reading())
                .isInstanceOf(Reading.Absent.class);
    }

    @Test
    void aProbeThatIsWellAgainIsLateWithItsBus() {
        World w = Benches.book(20);
        w.apply(new Fault.OfBus(SimProbe.Fault.SLOW, new Fault.When(0, 3_600_000)));
        w.apply(new Fault.OfProbe("a", 0, SimProbe.Fault.ABSENT, new Fault.When(10_000, 60_000)));
        w.step(120_000);
        long oldest = 0;
        for (int s = 0; s < 40; s++) {
            w.step(1_000);
            oldest = Math.max(oldest, w.cone("a").fixtures.probes.getFirst()
                    .latest(w.clock().now().monoMs()).ageMs());
        }
        assertThat(oldest).isGreaterThan(30_000);
    }

    @Test
    void anUnknownConeIsAClearError() {
        assertThatThrownBy(() -> Benches.book(20).cone("q"))
                .hasMessageContaining("there is no cone q").hasMessageContaining("a, b, c");
    }
}
