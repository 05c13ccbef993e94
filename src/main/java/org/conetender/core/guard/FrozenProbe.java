package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.core.unit.Units;

/**
 * Danger: a probe that gives the same reading for ever. Heat that is steered by it may cook the batch, or
 * leave it cold, and nothing shows.
 */
public final class FrozenProbe implements Guard {

    static final String ID = "frozen";

    /** A reading that changed within this time lives (guess: a probe trembles between two steps sooner). */
    static final long LIVES_MS = 10 * Units.MINUTE_MS;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public List<Finding> look(View v) {
        if (v.latch(ID).isEmpty() && !Suspicion.falls(v, Suspect.FROZEN, ID)) {
            return List.of();
        }
        return List.of(Finding.trip(ID, "its probe's reading stood still although the water must have moved",
                Power.HEAT, Power.CUT_OUT).alarm(AlarmKind.PROBE_FROZEN));
    }

    /** A reading that moves again, or that of another probe. */
    @Override
    public boolean causeGone(View v) {
        return v.water().known() && v.judged().motion().within(LIVES_MS);
    }
}
