package org.conetender.sim;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;

/** Settings and worlds for the tests of this package. */
final class Benches {

    private Benches() {}

    static Cone cone(String id, Cone.AirEntry entry, Cone.Geometry geometry) {
        var heat = new Cone.Heat(Cone.HeatKind.IMMERSED, 50, Cone.SwitchKind.RELAY, true);
        var air = new Cone.Air(entry, true, true, geometry);
        var fittings = new Cone.Fittings(new Cone.Probes(List.of(id + ".water"), true), heat, air,
                new Cone.Lights(true, true), true);
        return new Cone(id, fittings, new Cone.Limits(27, 31, 33, 38, 20),
                new Cone.Timing(2, 6, 6, 12, false), new Cone.Usual("L-0417", 2, 4, 25));
    }

    static final Cone.Geometry HIGH_PUMP = new Cone.Geometry(60, 40, false, Optional.empty());
    static final Cone.Geometry LOW_PUMP = new Cone.Geometry(10, 40, false, Optional.of("signed"));
    static final Cone.Geometry CHECKED = new Cone.Geometry(10, 40, true, Optional.empty());

    static Settings larkmoor(Cone.Geometry geometry) {
        var feeding = new Site.Feeding(ZoneId.of("UTC"),
                List.of(LocalTime.of(7, 30), LocalTime.of(12, 30), LocalTime.of(18, 0)), 30);
        var site = new Site("larkmoor", "Larkmoor Fry Room", feeding, new Site.Supply(150, false),
                Optional.of("room"), Optional.empty(), false);
        return new Settings(site, List.of(cone("a", Cone.AirEntry.BOTTOM, geometry),
                cone("b", Cone.AirEntry.BOTTOM, geometry), cone("c", Cone.AirEntry.DIP_TUBE, geometry)));
    }

    static World book(double roomC) {
        return new World(larkmoor(HIGH_PUMP), 1, Bench.byTheBook(roomC));
    }

    static World drawn(long seed) {
        return new World(larkmoor(HIGH_PUMP), seed, Bench.larkmoor());
    }

    static void hold(World world, String id, boolean on) {
        world.devices().switches().get(id).hold(on, 4_000);
    }

    /** Lets time pass, second by second, with these outputs held. */
    static void run(World world, long seconds, String... held) {
        for (long s = 0; s < seconds; s++) {
            for (String id : held) {
                hold(world, id, true);
            }
            world.step(1_000);
        }
    }
}
