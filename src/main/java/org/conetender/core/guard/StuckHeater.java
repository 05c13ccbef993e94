package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.image.Image;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/**
 * Danger: a heater whose output cannot be set. It may be on whatever we ask, so the other switch in
 * series opens, a person is called, and the heartbeat stops: a relay outside that watches it is then
 * the only thing that can still act. Not latched: an output that obeys again is ours again.
 */
public final class StuckHeater implements Guard {

    @Override
    public String id() {
        return "heater-stuck";
    }

    @Override
    public List<Finding> look(View v) {
        boolean heat = unset(v, ".heat");
        boolean cutOut = unset(v, ".cut-out");
        if (!heat && !cutOut) {
            return List.of();
        }
        String what = heat && cutOut ? "neither the heater's output nor its cut-out's can be set"
                : cutOut ? "the cut-out's output cannot be set; the heater is switched off"
                : v.cone().fittings().heat().cutOut()
                ? "the heater's output cannot be set, so it may be on; the cut-out is open now"
                : "the heater's output cannot be set, so it may be on, and no cut-out is fitted";
        return List.of(Finding.veto(id(), what, Power.HEAT, Power.CUT_OUT, Power.HEARTBEAT)
                .alarm(AlarmKind.HEATER_STUCK));
    }

    private static boolean unset(View v, String output) {
        return v.scene().image().pipes().unset().contains(v.cone().id() + output);
    }

    /** Watts of heaters that may be on against our will, W: no other heater may have them meanwhile. */
    public static double wattsAtLarge(Settings settings, Image image) {
        return settings.cones().stream().filter(c -> image.pipes().unset().contains(c.id() + ".heat"))
                .map(Cone::fittings).mapToDouble(f -> f.heat().watts()).sum();
    }
}
