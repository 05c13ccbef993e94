package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.alarm.AlarmKind;

/**
 * Danger: any other output that cannot be set. What pauses the air must not be asked to: a pump that was
 * stopped so might not come back. {@link StuckHeater} looks at heater and cut-out.
 */
public final class StuckOutput implements Guard {

    private static final String AIR = ".air-pause";

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
        List<Finding> found = new ArrayList<>();
        // An alarm of its own: whoever knows of a lamp has to hear of the air.
        if (stuck.remove(v.cone().id() + AIR)) {
            found.add(Finding.veto(id(), words(v.cone().id() + AIR), Power.AIR_OFF)
                    .alarm(AlarmKind.AIR_STUCK));
        }
        if (!stuck.isEmpty()) {
            found.add(Finding.veto(id(), words(String.join(" and ", stuck))).alarm(AlarmKind.OUTPUT_STUCK));
        }
        return found;
    }

    private static String words(String outputs) {
        return outputs + " cannot be set and may be on or off";
    }

    /** Whether its air may run on whatever is asked: nothing would settle. */
    static boolean airStuck(View v) {
        return v.scene().image().pipes().unset(v.cone().id(), AIR);
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
