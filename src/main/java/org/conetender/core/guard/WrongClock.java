package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Units;

/** Danger: a wrong clock. Control never uses it; after an hour a person is told that labels may be wrong. */
public final class WrongClock implements Guard {

    @Override
    public String id() {
        return "clock";
    }

    @Override
    public List<Finding> look(View v) {
        return v.scene().site().wallUntrustedForMs() < Units.HOUR_MS ? List.of()
                : List.of(Finding.veto(id(), "the clock has not been set by the network for over an hour")
                        .alarm(AlarmKind.CLOCK));
    }
}
