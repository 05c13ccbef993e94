package org.conetender.core.guard;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.alarm.AlarmKind;

/**
 * Danger: any other output that cannot be set. What pauses the air must not be asked to: a pump that was
 * stopped so might not come back. {@link StuckHeater} looks at heater and cut-out.
 */
public final class StuckOutput implements Guard {

    @Override
    public String id() {
        return "output-stuck";
    }

    @Override
    public List<Finding> look(View v) {
        Set<String> stuck = new TreeSet<>();
        for (String output : v.scene().image().pipes().unset()) {
            if (concerns(v, output)) {
                stuck.add(output);
            }
        }
        if (stuck.isEmpty()) {
            return List.of();
        }
        String what = String.join(" and ", stuck) + " cannot be set and may be on or off";
        Power[] denied = stuck.contains(v.cone().id() + ".air-pause") ? new Power[] {Power.AIR_OFF}
                : new Power[0];
        return List.of(Finding.veto(id(), what, denied).alarm(AlarmKind.OUTPUT_STUCK));
    }

    /** What belongs to no cone, the heartbeat, is told once, with the first. */
    private static boolean concerns(View v, String output) {
        String cone = v.cone().id();
        if (output.startsWith(cone + ".")) {
            return !output.equals(cone + ".heat") && !output.equals(cone + ".cut-out");
        }
        return output.startsWith("site.") && v.settings().cones().getFirst().equals(v.cone());
    }
}
