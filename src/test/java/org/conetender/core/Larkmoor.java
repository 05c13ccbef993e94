package org.conetender.core;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;

/**
 * Settings of Larkmoor Fry Room: cones a, b and c of 2 L, each with a 25 W immersed heater on a relay,
 * a cut-out, both lamps and a pump that stands above the water. A story names what else is different.
 */
public final class Larkmoor {

    /** What a story may fit, or leave out, at all three cones. */
    public enum Fitting {
        LEVEL, AIR_PROOF, SIPHONING, BUTTON, AUTOMATIC, TWO_PROBES, NO_CUT_OUT, ROOM_PROBE, SOLID_STATE, MAT,
                DIP_TUBE,
        IDLE_AIR, HEARTBEAT, NO_HEAT, NO_LAMPS, SALT_SLOWS
    }

    public static final ZoneId ZONE = ZoneId.of("UTC");

    private final Set<Fitting> fitted = EnumSet.noneOf(Fitting.class);
    private double limitWatts = 75;
    private double watts = 25;
    private Cone.Timing timing = new Cone.Timing(2, 4, 6, 10, false);
    private Cone.Limits limits = new Cone.Limits(27, 31, 33, 38, 20);

    private Larkmoor() {}

    /** The room with these differences. */
    public static Settings with(Fitting... more) {
        return room(more).build();
    }

    /** The same, to be changed further. */
    public static Larkmoor room(Fitting... more) {
        Larkmoor l = new Larkmoor();
        l.fitted.addAll(List.of(more));
        return l;
    }

    /** Heaters on together take no more than this. */
    public Larkmoor limit(double watts) {
        limitWatts = watts;
        return this;
    }

    /** Heaters of so much power. */
    public Larkmoor watts(double each) {
        watts = each;
        return this;
    }

    /** Settling lasts this long, and air returns after that, in minutes. */
    public Larkmoor airOff(double settleMinutes, double capMinutes) {
        timing = new Cone.Timing(2, 4, settleMinutes, capMinutes, timing.automaticSettling());
        return this;
    }

    /** Another set-point, °C. */
    public Larkmoor setpoint(double degreesC) {
        limits = new Cone.Limits(degreesC, 31, 33, 38, 20);
        return this;
    }

    public Settings build() {
        List<LocalTime> feeds = List.of(LocalTime.of(7, 30), LocalTime.of(12, 30), LocalTime.of(18, 0));
        Site site = new Site("larkmoor", "Larkmoor Fry Room", new Site.Feeding(ZONE, feeds, 45),
                new Site.Supply(limitWatts, has(Fitting.HEARTBEAT)),
                has(Fitting.ROOM_PROBE) ? Optional.of("room") : Optional.empty(),
                Optional.of("the neighbour"), has(Fitting.SALT_SLOWS));
        return new Settings(site, List.of(cone("a"), cone("b"), cone("c")));
    }

    private boolean has(Fitting f) {
        return fitted.contains(f);
    }

    private Cone cone(String id) {
        List<String> probes = new ArrayList<>(List.of(id + "-water"));
        if (has(Fitting.TWO_PROBES)) {
            probes.add(id + "-second");
        }
        Cone.HeatKind kind = has(Fitting.NO_HEAT) ? Cone.HeatKind.NONE
                : has(Fitting.MAT) ? Cone.HeatKind.MAT : Cone.HeatKind.IMMERSED;
        Cone.Heat heat = new Cone.Heat(kind, has(Fitting.NO_HEAT) ? 0 : watts,
                has(Fitting.SOLID_STATE) ? Cone.SwitchKind.SOLID_STATE : Cone.SwitchKind.RELAY,
                !has(Fitting.NO_CUT_OUT));
        Cone.Geometry geometry = new Cone.Geometry(has(Fitting.SIPHONING) ? 10 : 60, 40, false,
                has(Fitting.SIPHONING) ? Optional.of("neighbour, 2026-02-01") : Optional.empty());
        Cone.Air air = new Cone.Air(has(Fitting.DIP_TUBE) ? Cone.AirEntry.DIP_TUBE : Cone.AirEntry.BOTTOM,
                has(Fitting.AIR_PROOF), has(Fitting.IDLE_AIR), geometry);
        Cone.Fittings fittings = new Cone.Fittings(new Cone.Probes(probes, has(Fitting.LEVEL)), heat, air,
                new Cone.Lights(!has(Fitting.NO_LAMPS), !has(Fitting.NO_LAMPS)), has(Fitting.BUTTON));
        Cone.Timing t = new Cone.Timing(timing.hydrationHours(), timing.triggerHours(),
                timing.settleMinutes(),
                timing.airOffCapMinutes(), has(Fitting.AUTOMATIC));
        return new Cone(id, fittings, limits, t, new Cone.Usual("L-0417", 2, 2, 25));
    }
}
