package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * Danger: suffocation. Air is never off with animals beyond the cap: the least of the configured one,
 * 12 min, and what density and oxygen allow (science.md §7.3). After a restart it is on at once.
 */
public final class Suffocation implements Guard {

    /** The house's longest time without air, counted from the moment it went off (design.md, dangers). */
    public static final double LONGEST_MINUTES = 12;

    @Override
    public String id() {
        return "suffocation";
    }

    @Override
    public List<Finding> look(View v) {
        List<Finding> found = new ArrayList<>();
        Moment off = v.stage().airOff();
        if (off == null) {
            if (v.stage().hasAnimals() || v.stage().develops()) {
                found.add(Finding.veto(id(), "animals or cysts need air", Power.AIR_OFF));
            }
            return found;
        }
        if (v.restartedSince(off)) {
            found.add(Finding.veto(id(), "the daemon restarted while its air was off; the air is back on",
                    Power.AIR_OFF).alarm(AlarmKind.AIR_BACK));
        } else if (v.airBack(0)) {
            found.add(Finding.veto(id(),
                    Text.of("its air was off for %.0f min, as long as the nauplii stand it; it is back on",
                            Units.minutes(v.airOffCapMs())), Power.AIR_OFF).alarm(AlarmKind.AIR_BACK));
        }
        return found;
    }
}
