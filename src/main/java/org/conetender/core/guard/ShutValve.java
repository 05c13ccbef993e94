package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Units;

/**
 * Danger: air that returns against a shut valve. Announced two minutes before; then the pump runs
 * first and the valve has a minute to be opened.
 */
public final class ShutValve implements Guard {

    /** The alarm precedes the cap by this much (design.md, dangers). */
    static final long NOTICE_MS = 2 * Units.MINUTE_MS;
    /** Pump on first, then the valve: accepted for this long (design.md, dangers). */
    static final long OPEN_WITHIN_MS = Units.MINUTE_MS;

    @Override
    public String id() {
        return "shut-valve";
    }

    @Override
    public List<Finding> look(View v) {
        if (!v.batch().marks().valveShut() || !v.stage().hasAnimals()) {
            return List.of();
        }
        if (v.stage().airOff() != null) {
            long cap = v.scene().caps().settledMs();
            return v.airOffForMs() < cap - NOTICE_MS - 2 * Units.SECOND_MS ? List.of()
                    : List.of(Finding.veto(id(),
                    "its air returns in 2 min but the air valve was reported shut")
                            .alarm(AlarmKind.AIR_DUE));
        }
        return v.judged().air().onForMs() < OPEN_WITHIN_MS ? List.of()
                : List.of(Finding.veto(id(),
                "the pump runs against an air valve that was reported shut; report "
                        + "'valve-open' when it is open").alarm(AlarmKind.AIR_SHUT_IN));
    }
}
