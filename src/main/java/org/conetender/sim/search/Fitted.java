package org.conetender.sim.search;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;

/** The one cone of the search, fitted in two ways that between them have everything guards look at. */
public enum Fitted {
    /** A pump that stands too low, both contacts, an immersed heater behind a cut-out. */
    SIPHONING,
    /** Under a mat without a cut-out, no contact, a pump above the water that rests in an empty cone. */
    BARE;

    static final String CONE = "a";
    static final String PROBE = "a-water";

    /** Air comes back after this, minutes. */
    static final double CAP_MINUTES = 8;
    /** The wait, minutes. */
    private static final double SETTLE_MINUTES = 4;

    /** Larkmoor Fry Room with this cone alone. */
    public Settings settings() {
        boolean siphons = this == SIPHONING;
        Cone.Heat heat = siphons ? new Cone.Heat(Cone.HeatKind.IMMERSED, 25, Cone.SwitchKind.RELAY, true)
                : new Cone.Heat(Cone.HeatKind.MAT, 25, Cone.SwitchKind.SOLID_STATE, false);
        Cone.Geometry geometry = siphons
                ? new Cone.Geometry(20, 45, false, Optional.of("signed for the search"))
                : new Cone.Geometry(60, 45, false, Optional.empty());
        Cone.Fittings fittings = new Cone.Fittings(new Cone.Probes(List.of(PROBE), siphons), heat,
                new Cone.Air(Cone.AirEntry.BOTTOM, siphons, false, geometry), new Cone.Lights(true, true),
                        false);
        Cone cone = new Cone(CONE, fittings, new Cone.Limits(27, 31, 33, 38, 20),
                new Cone.Timing(2, 4, SETTLE_MINUTES, CAP_MINUTES, false),
                        new Cone.Usual("L-0417", 2, 2, 25));
        Site.Feeding feeding = new Site.Feeding(ZoneId.of("UTC"),
                List.of(LocalTime.of(7, 30), LocalTime.of(18, 0)), 30);
        return new Settings(new Site("larkmoor", "Larkmoor Fry Room", feeding, new Site.Supply(60, siphons),
                Optional.empty(), Optional.empty(), false), List.of(cone));
    }

    /** As it is named on the command line and in reports. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
