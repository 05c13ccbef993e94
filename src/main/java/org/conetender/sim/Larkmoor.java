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
    private static final Cone.Timing BY_ITSELF = new Cone.Timing(2, 6, 6, 10, true);
    private static final Cone.Usual USUAL = new Cone.Usual("L-0417", 2, 2, 25);
    /** 3.5 g/L: a separation is already too hurried to be begun by itself. */
    private static final Cone.Usual DENSE = new Cone.Usual("L-0417", 2, 7, 25);
    private static final Cone.Geometry HIGH = new Cone.Geometry(60, 45, false, Optional.empty());
    private static final Cone.Vessel LID = new Cone.Vessel(true, false, 0);

    /** A relay whose life is over within a day. */
    private static final Cone.Contacts NEARLY_WORN = new Cone.Contacts(150, 100);

    private Larkmoor() {}

    public static Settings settings() {
        return room(List.of(
                cone("a", true, true, HIGH),
                cone("b", false, true, new Cone.Geometry(20, 45, false, Optional.of("signed in the trial"))),
                cone("c", false, false, new Cone.Geometry(20, 45, true, Optional.empty()))));
    }

    /**
     * The same room fitted otherwise, with air that rests in an empty cone: {@code a} under a mat on a
     * solid-state switch without a cut-out, with a dip-tube, every contact, and leave to separate by itself;
     * {@code b} with a dip-tube and a pump that stands too low; {@code c} bare and densely stocked.
     */
    public static Settings mixed() {
        Cone.Heat mat = new Cone.Heat(Cone.HeatKind.MAT, 25, Cone.SwitchKind.SOLID_STATE, false);
        Cone.Heat quick = new Cone.Heat(Cone.HeatKind.IMMERSED, 25, Cone.SwitchKind.SOLID_STATE, true);
        Cone.Heat relay = new Cone.Heat(Cone.HeatKind.IMMERSED, 25, Cone.SwitchKind.RELAY, true,
                NEARLY_WORN);
        Cone.Geometry low = new Cone.Geometry(20, 45, false, Optional.of("signed in the trial"));
        Cone.Air tube = new Cone.Air(Cone.AirEntry.DIP_TUBE, true, false, HIGH);
        Cone.Air lowTube = new Cone.Air(Cone.AirEntry.DIP_TUBE, true, false, low);
        Cone.Air nozzle = new Cone.Air(Cone.AirEntry.BOTTOM, false, false, HIGH);
        return room(List.of(
                new Cone("a", fittings("a", true, mat, tube), LIMITS, BY_ITSELF, USUAL),
                new Cone("b", fittings("b", false, quick, lowTube), LIMITS, TIMING, USUAL),
                new Cone("c", fittings("c", false, relay, nozzle), LIMITS, TIMING, DENSE)));
    }

    private static Settings room(List<Cone> cones) {
        Site.Feeding feeding = new Site.Feeding(ZoneId.of("Europe/London"),
                List.of(LocalTime.of(7, 30), LocalTime.of(12, 30), LocalTime.of(18, 0)), 30);
        Site site = new Site("larkmoor", "Larkmoor Fry Room", feeding, new Site.Supply(60, true),
                Optional.of("28-00000a0000ff"), Optional.of("the neighbour"), false);
        return new Settings(site, cones);
    }

    private static Cone cone(String id, boolean level, boolean proof, Cone.Geometry geometry) {
        Cone.Heat heat = new Cone.Heat(Cone.HeatKind.IMMERSED, 25, Cone.SwitchKind.RELAY, true);
        Cone.Air air = new Cone.Air(Cone.AirEntry.BOTTOM, proof, true, geometry);
        return new Cone(id, fittings(id, level, heat, air), LIMITS, TIMING, USUAL);
    }

    private static Cone.Fittings fittings(String id, boolean level, Cone.Heat heat, Cone.Air air) {
        String first = "28-00000a00000" + (id.charAt(0) - 'a' + 1);
        Cone.Probes probes = new Cone.Probes(id.equals("a") ? List.of(first, "28-00000a00000a")
                : List.of(first), level);
        return new Cone.Fittings(probes, heat, air, new Cone.Lights(true, true), true, LID);
    }
}
