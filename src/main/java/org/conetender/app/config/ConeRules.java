package org.conetender.app.config;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import org.conetender.core.settings.Cone;

/**
 * What the settings of one cone mean together: limits in order, times that leave room to draw, air
 * that cannot flood its pump. Figures that could not be read are {@code NaN}, which breaks no rule here.
 */
final class ConeRules {

    /** A settling under this is no separation (design.md). */
    private static final double LEAST_AUTOMATIC_MIN = 4;

    /** Time that must remain for drawing between the wait and the cap, minutes (design.md). */
    private static final double DRAWING_MIN = 2;


    /** A waterline moves this much by topping up and foam; *guess*. */
    private static final double CLEAR_CM = 5;

    private final Fields cone;
    private final Cone read;

    ConeRules(Fields cone, Cone read) {
        this.cone = cone;
        this.read = read;
    }

    void check() {
        limits(cone.sub("limits").at());
        geometry(cone.sub("geometry").at());
        new HeatRules(cone.sub("heat").at(), cone.sub("water").at(), read).check();
        timing(cone.sub("timing").at());
        usual(cone.sub("usual").at());
        air(cone.sub("air").at());
    }

    private void limits(Section at) {
        Cone.Limits l = read.limits();
        if (l.setpointC() > l.guardC() - Cone.Limits.MARGIN_C) {
            at.wrong(at.given("setpoint-c") ? "setpoint-c" : "guard-c", "set-point " + c(l.setpointC())
                    + " is too near the guard " + c(l.guardC()) + ", which would trip in good water; keep "
                    + "them 1 °C apart: lower the set-point or raise the guard");
        }
        ordered(at, "guard-c", l.guardC(), "arrest-c", l.arrestC());
        ordered(at, "arrest-c", l.arrestC(), "loss-c", l.lossC());
        if (l.floorC() > l.setpointC()) {
            at.wrong("floor-c", "above the set-point " + c(l.setpointC())
                    + "; a ready batch is let cool, not warmed: lower the floor");
        }
    }

    private static void ordered(Section at, String lower, double low, String upper, double high) {
        if (low >= high) {
            at.wrong(at.given(lower) ? lower : upper, lower + " (" + c(low) + ") must be below "
                    + upper + " (" + c(high) + "); the order is guard, arrest, loss, and loss at most 40 °C");
        }
    }

    private void geometry(Section at) {
        Cone.Geometry g = read.fittings().air().geometry();
        g.signed().ifPresent(s -> signature(at, s));
        if (at.raw("check-valve") != null && !(at.raw("check-valve") instanceof Boolean)) {
            return; // told already; which rule holds depends on it
        }
        if (g.canSiphon() && !at.given("siphon-risk-accepted")) {
            at.wrong("pump-outlet-cm", "not above the waterline (" + SettingDoc.figure(g.waterlineCm())
                    + " cm) and no check valve: when the air stops, water can siphon back through the "
                    + (read.fittings().air().entry() == Cone.AirEntry.BOTTOM ? "air nozzle" : "dip tube")
                    + " into the pump. Raise the pump above the waterline, or fit a check valve and set "
                    + "check-valve = true, or sign with siphon-risk-accepted = \"name, date\"");
        } else if (g.canSiphon()) {
            at.warn("siphon-risk-accepted", "signed: water can siphon back into the pump whenever air stops; "
                    + (read.fittings().air().entry() == Cone.AirEntry.BOTTOM
                    ? "the air valve must be shut by hand before each settling"
                    : "lift the dip tube out of the water before each settling"));
        } else if (at.given("siphon-risk-accepted")) {
            at.warn("siphon-risk-accepted", "nothing to sign: with these heights or the check valve water "
                    + "cannot siphon back; remove this line so that a later change is noticed");
        } else if (g.checkValve() && g.pumpOutletCm() <= g.waterlineCm()) {
            at.warn("check-valve", "the check valve alone keeps water out of the pump, and salt makes them "
                    + "stick; test it with each cleaning, or raise the pump above the waterline");
        } else if (!g.checkValve() && g.pumpOutletCm() < g.waterlineCm() + CLEAR_CM) {
            at.warn("pump-outlet-cm", "less than 5 cm above the waterline: foam or a top-up could reach it");
        }
    }

    /** The signature only has to be one; whether it lies in the past is not asked: no clock is read here. */
    private static void signature(Section at, String signed) {
        int comma = signed.lastIndexOf(',');
        try {
            if (comma > 0 && !signed.substring(0, comma).isBlank()) {
                LocalDate.parse(signed.substring(comma + 1).strip());
                return;
            }
            at.wrong("siphon-risk-accepted", "this signs for a risk; it must be \"name, date\", such as "
                    + "\"the keeper, 2026-03-14\"");
        } catch (DateTimeParseException e) {
            at.wrong("siphon-risk-accepted", "the date cannot be read; it must be \"name, date\" with "
                    + "the date as year-month-day, such as \"the keeper, 2026-03-14\"");
        }
    }

    private void timing(Section at) {
        Cone.Timing t = read.timing();
        if (t.settleMinutes() > t.airOffCapMinutes() - DRAWING_MIN) {
            at.wrong(at.given("settle-min") ? "settle-min" : "air-off-cap-min", "a wait of "
                    + SettingDoc.figure(t.settleMinutes()) + " min leaves no time to draw before air comes "
                    + "back at " + SettingDoc.figure(t.airOffCapMinutes()) + " min; settle-min must be at "
                    + "most air-off-cap-min less 2, and the cap at most 12");
        }
        if (read.fittings().lights().trigger() && t.triggerHours() <= t.hydrationHours()) {
            at.wrong("trigger-h", "the trigger light would never burn: it starts when hydration is over; "
                    + "trigger-h must be above hydration-h");
        }
        if (t.automaticSettling()) {
            automatic(at);
        }
    }

    /** A separation that nobody watches must be safe without anybody (design.md). */
    private void automatic(Section at) {
        if (read.timing().settleMinutes() < LEAST_AUTOMATIC_MIN) {
            at.wrong("automatic-settling", "a wait under 4 min does not separate nauplii from shells; raise "
                    + "settle-min to 4 or more, or leave the start to a person");
        }
        if (read.fittings().air().geometry().canSiphon()) {
            at.wrong("automatic-settling", "water can siphon back into the pump, and only a person can shut "
                    + "the air valve; raise the pump or fit a check valve first");
        }
        if (!read.fittings().air().proof()) {
            at.wrong("automatic-settling", "nothing would show that air came back for the animals; fit a "
                    + "contact that proves air (air.proof-line), or leave the start to a person");
        }
    }

    private void usual(Section at) {
        Cone.Usual u = read.usual();
        if (u.tooDense()) {
            at.wrong("cysts-g", "too dense: at most 5 g for each litre, here "
                    + SettingDoc.figure(u.litres() * Cone.Usual.MOST_CYSTS_G_PER_L)
                    + " g; more only injures them and leaves no time to draw");
        }
    }

    private void air(Section at) {
        if (!read.fittings().air().proof()) {
            at.warn("proof-line", "no contact proves air: a pump that fails is not noticed here. Run two "
                    + "independent pumps, or fit a pressure or flow contact");
        }
    }

    private static String c(double celsius) {
        return SettingDoc.figure(celsius) + " °C";
    }
}
