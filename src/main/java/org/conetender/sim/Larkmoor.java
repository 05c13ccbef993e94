package org.conetender.sim;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;

/**
 * Larkmoor Fry Room as the trials have it: cone {@code a} with every contact and two probes, {@code b} with a
 * pump that stands too low, {@code c} as bare as is allowed.
 */
public final class Larkmoor {

    private static final Cone.Limits LIMITS = new Cone.Limits(27, 31, 33, 38, 20);
    private static final Cone.Timing TIMING = new Cone.Timing(2, 6, 6, 10, false);
    private static final Cone.Usual USUAL = new Cone.Usual("L-0417", 2, 2, 25);
    private static final Cone.Vessel LID = new Cone.Vessel(true, false, 0);

    private Larkmoor() {}

    public static Settings settings() {
        Site.Feeding feeding = new Site.Feeding(ZoneId.of("Europe/London"),
                List.of(LocalTime.of(7, 30), LocalTime.of(12, 30), LocalTime.of(18, 0)), 30);
        Site site = new Site("larkmoor", "Larkmoor Fry Room", feeding, new Site.Supply(60, true),
                Optional.of("28-00000a0000ff"));
        return new Settings(site, List.of(
                cone("a", true, true, new Cone.Geometry(60, 45, false, Optional.empty())),
                cone("b", false, true, new Cone.Geometry(20, 45, false, Optional.of("signed in the trial"))),
                cone("c", false, false, new Cone.Geometry(20, 45, true, Optional.empty()))));
    }

    private static Cone cone(String id, boolean level, boolean proof, Cone.Geometry geometry) {
        Cone.Heat heat = new Cone.Heat(Cone.HeatKind.IMMERSED, 25, Cone.SwitchKind.RELAY, true);
        Cone.Air air = new Cone.Air(Cone.AirEntry.BOTTOM, proof, true, geometry);
        String first = "28-00000a00000" + (id.charAt(0) - 'a' + 1);
        Cone.Probes probes = new Cone.Probes(id.equals("a") ? List.of(first, "28-00000a00000a")
                : List.of(first), level);
        return new Cone(id, new Cone.Fittings(probes, heat, air, new Cone.Lights(true, true), true, LID),
                LIMITS,
                TIMING, USUAL);
    }
}
