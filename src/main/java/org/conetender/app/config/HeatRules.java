package org.conetender.app.config;

import java.util.List;
import java.util.Locale;
import org.conetender.core.heat.Hold;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/** Whether a cone's heater is whole, fits the water it warms, and can be switched off twice. */
final class HeatRules {

    /** Half of what the warmest set-point stays below the guard; the rest is for a probe that is off. */
    private static final double MOST_SWING_K = Cone.Limits.MARGIN_C / 2;

    /** Fresh water at sea level, °C (the scale's own); a cone's brine boils less than 1 °C later. */
    private static final double BOILING_C = 100;

    private final Section at;
    private final Section water;
    private final Cone read;

    HeatRules(Section at, Section water, Cone read) {
        this.at = at;
        this.water = water;
        this.read = read;
    }

    void check() {
        if (!read.fittings().heat().fitted()) {
            noHeat();
        } else {
            whole();
            bath();
            // A rating that has to change says nothing of the cycles that the next one needs.
            boolean fits = power();
            contacts();
            if (fits) {
                swing();
            }
            warn();
        }
    }

    private void noHeat() {
        // An unreadable kind has been told; what stands beside it may well be right.
        if (at.given("kind") && !"none".equals(at.raw("kind"))) {
            return;
        }
        for (String name : List.of("watts", "bath-l", "switch", "cycles-per-day", "life-cycles", "line",
                "cut-out-line")) {
            if (at.raw(name) != null) {
                at.wrong(name, "there is no heater (kind is \"none\"); remove this line, or say which "
                        + "kind is fitted: kind = \"immersed\", \"mat\" or \"bath\"");
            }
        }
    }

    private void whole() {
        if (!at.given("watts")) {
            at.wrong("watts", "a heater needs its rating, for example watts = 25");
        }
        if (!at.given("line")) {
            at.wrong("line", "a heater needs the output that switches it, for example line = 17");
        }
    }

    private void bath() {
        boolean bath = read.fittings().heat().kind() == Cone.HeatKind.BATH;
        double litres = read.fittings().vessel().bathLitres();
        if (at.given("bath-l") != bath) {
            at.wrong("bath-l", bath
                    ? "a bath needs the water that its heater warms in all, for example bath-l = 12"
                    : "only a bath (kind = \"bath\") has this; remove the line or correct the kind");
        } else if (litres > 0 && litres < read.usual().litres()) {
            at.wrong("bath-l", "less water than the cone alone holds (" + rounded(read.usual().litres())
                    + " L); give the bath with the cones in it");
        }
    }

    /**
     * Too weak never gets warm, too strong outruns every check (science.md §9, stuck-on heater).
     *
     * @return whether nothing is wrong with the rating, as far as it could be read
     */
    private boolean power() {
        double litres = warmed();
        double perLitre = read.fittings().heat().watts() / litres;
        boolean strong = perLitre > ConeDocs.MOST_W_PER_L;
        boolean weak = perLitre < ConeDocs.LEAST_W_PER_L;
        if (strong || weak) {
            at.wrong("watts", rounded(perLitre) + " W for each of " + rounded(litres)
                    + " L; it must be 3 to 25 W/L, here " + rounded(litres * ConeDocs.LEAST_W_PER_L) + " to "
                    + rounded(litres * ConeDocs.MOST_W_PER_L) + " W: " + (strong
                    ? "fit a smaller heater, this one would cook the batch before a fault can be told"
                    : "fit a larger heater, this one cannot hold the water warm"));
        }
        return !strong && !weak;
    }

    /** A relay's figures belong to a relay. */
    private void contacts() {
        Cone.Heat heat = read.fittings().heat();
        for (String name : List.of("cycles-per-day", "life-cycles")) {
            if (heat.switchKind() != Cone.SwitchKind.RELAY && at.raw(name) != null) {
                at.wrong(name, "a solid-state switch has no contacts that wear; remove this line, or say "
                        + "what is fitted: switch = \"relay\"");
            }
        }
    }

    /** The water must not swing as far as the guard. */
    private void swing() {
        Cone.Heat heat = read.fittings().heat();
        double swing = Hold.swingK(heat, warmed());
        if (swing > MOST_SWING_K) {
            double cycles = heat.contacts().cyclesPerDay();
            at.wrong("cycles-per-day", "so few let the water swing by " + rounded(swing) + " °C to either "
                    + "side, and no more than half a degree is allowed; give at least "
                    + Math.round(Math.ceil(cycles * swing / MOST_SWING_K)) + " for this heater, or fit a "
                    + "weaker one");
        }
    }

    /** What is allowed but leaves one way less to switch heat off. */
    private void warn() {
        Cone.Heat heat = read.fittings().heat();
        if (!heat.cutOut()) {
            at.warn("cut-out-line", "no cut-out fitted: a welded switch could not be opened, and the water "
                    + "would " + firstHour(heat) + ". Fit a second switch in series; an independent thermal "
                    + "cut-out is needed either way");
        }
        if (heat.kind() == Cone.HeatKind.IMMERSED && !read.fittings().probes().level()) {
            water.warn("level-line", "an immersed heater without a level contact: after every start it must "
                    + "pass a low-power response test before it may heat");
        }
    }

    /** What an hour of heat from the set-point does to the water; what it loses meanwhile is left out. */
    private String firstHour(Cone.Heat heat) {
        double kelvin = heat.watts() * 3600 / (warmed() * Units.BRINE_J_PER_L_K);
        double setpoint = read.limits().setpointC();
        if (kelvin + (Double.isNaN(setpoint) ? Cone.Limits.LEAST_SETPOINT_C : setpoint) >= BOILING_C) {
            return "boil";
        }
        return "warm by " + (Double.isNaN(kelvin) ? "many" : Math.round(kelvin)) + " °C in the first hour";
    }

    /** Litres that the heater warms; NaN where they could not be read. */
    private double warmed() {
        boolean bath = read.fittings().heat().kind() == Cone.HeatKind.BATH;
        double bathLitres = read.fittings().vessel().bathLitres();
        return !bath ? read.usual().litres() : bathLitres > 0 ? bathLitres : Double.NaN;
    }

    private static String rounded(double figure) {
        return String.format(Locale.ROOT, "%.1f", figure).replaceFirst("\\.0$", "");
    }
}
