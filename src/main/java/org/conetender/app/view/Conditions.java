package org.conetender.app.view;

import java.util.OptionalDouble;
import org.conetender.core.unit.Text;

/** A cone's water, heat, air and lamp as one line: what is, what is aimed at, and why not. */
final class Conditions {

    private Conditions() {}

    static String of(ConeView c) {
        return water(c.water()) + aim(c) + " · " + heat(c) + air(c.out())
                + c.out().lamp().map(on -> " · lamp " + onOff(on)).orElse("");
    }

    private static String water(ConeView.Water w) {
        String figure = w.degreesC().isPresent() ? Text.of("%.1f °C", w.degreesC().getAsDouble())
                : "not known";
        return switch (w.trust()) {
            case "trusted" -> figure + w.why().map(y -> " (" + y + ")").orElse("");
            case "projected" -> figure + " a moment ago (its probe is silent)";
            case "untrusted" -> figure + w.why().map(y -> " (" + y + ")").orElse("");
            default -> figure + " (" + w.trust() + ")";
        };
    }

    /** Where something else than the set-point is held, what and until when. */
    private static String aim(ConeView c) {
        OptionalDouble held = c.water().aim().held();
        OptionalDouble setpoint = c.water().aim().setpoint();
        if (held.isEmpty()) {
            return "";
        }
        return setpoint.isPresent() && held.getAsDouble() < setpoint.getAsDouble()
                ? Text.of(", kept above %.1f °C until the harvest", held.getAsDouble())
                : Text.of(", set-point %.1f °C", held.getAsDouble());
    }

    /** Nothing where no heater is fitted. */
    private static String heat(ConeView c) {
        return c.out().heat().duty().isEmpty() ? "" : heated(c) + " · ";
    }

    private static String heated(ConeView c) {
        ConeView.Heat h = c.out().heat();
        double duty = h.duty().orElse(0);
        if (h.on()) {
            return Text.of("heat on (%.0f %% of the time", Math.max(1, duty)) + limit(h);
        }
        return duty > 0 ? h.vetoed().map(v -> "heat off (withheld: " + v + ")")
                .orElse(Text.of("heat off in between (on %.0f %% of the time", duty) + limit(h))
                : warm(c) ? "heat off (warm enough)" : "heat off";
    }

    private static String limit(ConeView.Heat h) {
        return h.limited().map(l -> "; " + l).orElse("") + ")";
    }

    private static boolean warm(ConeView c) {
        OptionalDouble held = c.water().aim().held();
        return held.isPresent() && c.water().degreesC().isPresent()
                && c.water().degreesC().getAsDouble() >= held.getAsDouble() - 0.5;
    }

    /** While it is meant to be off no contact has anything to prove. */
    private static String air(ConeView.Out o) {
        return "air " + onOff(o.air()) + switch (o.air() ? o.proven() : "proven") {
            case "proven" -> "";
            case "unverified" -> " (not verified)";
            default -> " (" + o.proven() + ")";
        };
    }

    private static String onOff(boolean on) {
        return on ? "on" : "off";
    }
}
