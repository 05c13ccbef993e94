package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** Danger: failing silently. A loop that is late stops the heartbeat, so that something outside can act. */
public final class SilentFailure implements Guard {

    /** A tick this late is a fault; leases end at 4 s (style.md, leases). */
    static final long LATE_MS = 2 * Units.SECOND_MS;

    @Override
    public String id() {
        return "late";
    }

    @Override
    public List<Finding> look(View v) {
        long late = v.scene().image().pipes().lateMs();
        return late < LATE_MS ? List.of()
                : List.of(Finding.veto(id(), Text.of("the control loop runs %.1f s late", late / 1000.0),
                        Power.HEARTBEAT).alarm(AlarmKind.LATE));
    }
}
