package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Units;

/**
 * Danger: air that returns against a shut valve. Announced two minutes before; then the pump runs
 * first and the valve has a minute to be opened.
 */
public final class ShutValve implements Guard {

    /** Pump on first, then the valve: accepted for this long (design.md, dangers). */
    static final long OPEN_WITHIN_MS = Units.MINUTE_MS;

    @Override
    public String id() {
        return "shut-valve";
    }

    @Override
    public List<Finding> look(View v) {
        if (!v.batch().marks().valveShut() || !v.stage().develops()) {
            return List.of();
        }
        if (v.stage().airOff() != null) {
            return !v.airBack(View.NOTICE_MS) ? List.of()
                    : List.of(Finding.veto(id(),
                            "its air returns in 2 min but the air valve was reported shut")
                            .alarm(AlarmKind.AIR_DUE));
        }
        // Said as it was: what a contact shows later would else change the words, and so call again.
        return !tooLong(v) ? List.of()
                : List.of(Finding.veto(id(), v.judged().air().provenForMs() >= OPEN_WITHIN_MS
                        ? "its air valve was reported shut, though its air contact showed air after that "
                        + "(one before the valve does so anyway: look at the bubbles)"
                        : "the pump runs against an air valve that was reported shut; report "
                        + "'valve-open' when it is open").alarm(AlarmKind.AIR_SHUT_IN));
    }

    /** Before a separation the valve is shut under a running pump: the report's own minute counts too. */
    static boolean tooLong(View v) {
        return Math.min(v.judged().air().onForMs(), v.valveShutForMs()) >= OPEN_WITHIN_MS;
    }
}
