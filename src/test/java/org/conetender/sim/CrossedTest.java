package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What crossed wires do in the simulated world, and what walls that touch do. */
class CrossedTest {

    private static World world(Bench bench) {
        World w = new World(Larkmoor.settings(), 3, bench);
        for (SimCone c : w.cones()) {
            c.fill(2, 24, 25);
            c.air().valve(true);
        }
        return w;
    }

    private static void hold(World w, String... outputs) {
        for (String o : outputs) {
            w.devices().switches().get(o).hold(true, 60_000);
        }
        w.step(1_000);
    }

    @ParameterizedTest
    @CsvSource({"PLUGS,a.heat a.cut-out,false,true", "PLUGS,b.heat b.cut-out,true,false",
        "PLUGS,a.heat b.cut-out,false,false", "SWITCHES,a.heat b.cut-out,false,true",
        "SWITCHES,a.heat a.cut-out,false,false", "SHORTED,a.heat a.cut-out b.cut-out,true,true",
        "SHORTED,a.heat a.cut-out,true,false", "SHORTED,b.heat b.cut-out,false,true"})
    void whichHeaterGetsPower(Fault.Wiring wiring, String outputs, boolean a, boolean b) {
        World w = world(Bench.byTheBook(20));
        w.apply(new Fault.Crossed("a", "b", wiring, new Fault.When(0, 60_000)));
        hold(w, outputs.split(" "));
        assertThat(w.cone("a").heaterOn()).isEqualTo(a);
        assertThat(w.cone("b").heaterOn()).isEqualTo(b);
        w.step(60_000);
        hold(w, "a.heat", "a.cut-out");
        assertThat(w.cone("a").heaterOn()).as("mended").isTrue();
        assertThat(w.cone("b").heaterOn()).isFalse();
    }

    @Test
    void conesThatTouchShareTheirHeatAndNoneIsLost() {
        World apart = world(Bench.byTheBook(24));
        World touching = world(Bench.byTheBook(24).withTouching(0.5));
        for (World w : new World[] {apart, touching}) {
            w.cone("a").drain();
            w.cone("a").fill(2, 30, 25);
            w.step(3_600_000);
        }
        double more = touching.cone("b").water().waterC() - apart.cone("b").water().waterC();
        double less = apart.cone("a").water().waterC() - touching.cone("a").water().waterC();
        assertThat(more).as("of 0.5 W/K over 6 K in an hour: at most 1.3 K in 2 L").isBetween(0.4, 1.3);
        assertThat(less).isBetween(more * 0.8, more * 1.4);
    }
}
