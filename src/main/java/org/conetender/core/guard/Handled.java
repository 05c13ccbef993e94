package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.unit.Units;

/** Danger: hands in the water. Heater and lamps off, air on; it returns by itself. */
public final class Handled implements Guard {

    /** Probe alarms are held, and heat stays off, this long after {@code hands-in} (design.md). */
    public static final long HANDS_MS = 15 * Units.MINUTE_MS;

    @Override
    public String id() {
        return "hands-in";
    }

    @Override
    public List<Finding> look(View v) {
        if (v.handsIn()) {
            return List.of(Finding.veto(id(), "hands are in the water",
                    Power.HEAT, Power.CUT_OUT, Power.LAMPS, Power.AIR_OFF));
        }
        // While jumps of the probe are let pass, nothing shows that it still hangs in the water.
        return !v.handled() ? List.of() : List.of(Finding.veto(id(), "the water was topped up just now",
                Power.HEAT, Power.CUT_OUT));
    }
}
