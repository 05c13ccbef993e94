package org.conetender.sim.trial;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.conetender.sim.Bench;
import org.conetender.sim.Seeds;

/**
 * Two cones beside each other as they were drawn, each as in {@link TrialCone}, in the room of the first.
 *
 * @param seed that drew them
 * @param settings of a daemon that looks after both
 * @param bench they stand on
 */
record Pair(long seed, Settings settings, Bench bench) {

    private static final String ROOM = "28-0000000000ff";
    private static final Cone.Geometry HIGH = new Cone.Geometry(60, 45, false, Optional.empty());
    /** Walls that touch pass so much, W/K: 20 cm² of plastic to 100 cm², with a film of water (guess). */
    private static final double LEAST_W_PER_K = 0.02;
    private static final double MOST_W_PER_K = 0.5;

    /** Whether the cones touch, and whether the settings say so. */
    enum Standing { APART, TOUCHING, TOUCHING_AND_TOLD }

    static Pair draw(long seed, Standing standing) {
        SplittableRandom r = Seeds.of(seed, "pair");
        TrialCone one = TrialCone.draw(2 * seed);
        TrialCone two = TrialCone.draw(2 * seed + 1);
        boolean told = standing == Standing.TOUCHING_AND_TOLD;
        List<Cone> cones = List.of(cone("a", one, r, told), cone("b", two, r, false));
        double most = Math.max(one.build().watts(), two.build().watts());
        double sum = one.build().watts() + two.build().watts();
        Site site = new Site("larkmoor", "Larkmoor Fry Room",
                new Site.Feeding(ZoneId.of("Europe/London"), List.of(LocalTime.of(7, 30)), 30),
                new Site.Supply(r.nextBoolean() ? most : sum, false),
                r.nextBoolean() ? Optional.of(ROOM) : Optional.empty(), Optional.empty(), false);
        double touching = standing == Standing.APART ? 0
                : LEAST_W_PER_K * Math.pow(MOST_W_PER_K / LEAST_W_PER_K, r.nextDouble());
        return new Pair(seed, new Settings(site, cones),
                Bench.larkmoor().withClimate(one.climate()).withTouching(touching));
    }

    private static Cone cone(String id, TrialCone drawn, SplittableRandom r, boolean touches) {
        double litres = drawn.build().litres();
        Cone.Heat heat = new Cone.Heat(Cone.HeatKind.IMMERSED, drawn.build().watts(),
                r.nextBoolean() ? Cone.SwitchKind.RELAY : Cone.SwitchKind.SOLID_STATE, true);
        Cone.Fittings fittings = new Cone.Fittings(
                new Cone.Probes(List.of("28-00000000000" + id), r.nextBoolean()), heat,
                new Cone.Air(Cone.AirEntry.BOTTOM, true, true, HIGH), new Cone.Lights(false, false), false,
                new Cone.Vessel(drawn.lid(), false, 0, touches ? Set.of("b") : Set.of()));
        double setpointC = Math.clamp(drawn.known().setpointC(), Cone.Limits.LEAST_SETPOINT_C, 27);
        return new Cone(id, fittings, new Cone.Limits(setpointC, 31, 33, 38, Math.min(20, setpointC)),
                new Cone.Timing(2, 6, 6, 10, false), new Cone.Usual("L-0417", litres, litres, 25));
    }
}
