package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.core.settings.Cone.HeatKind;
import org.conetender.core.unit.Units;

/**
 * Danger: a probe that gives the same reading for ever. Heat that is steered by it may cook the batch, or
 * leave it cold, and nothing shows.
 */
public final class FrozenProbe implements Guard {

    static final String ID = "frozen";

    /** A reading that changed within this time lives (guess: a probe trembles between two steps sooner). */
    static final long LIVES_MS = 10 * Units.MINUTE_MS;

    /**
     * Where a mat or a bath heats, whose lags nobody watches, one that did not change for so long is frozen,
     * at whatever figure (guess: heat that comes and goes moves a live one within minutes, control.md §2.3;
     * 25 W warm 2 L by some degrees in it).
     */
    static final long STOOD_MS = 90 * Units.MINUTE_MS;
    /** While heat is given: water at the warmth of its room may well stand (guess: one window of a relay). */
    private static final long HEATED_WITHIN_MS = 20 * Units.MINUTE_MS;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public List<Finding> look(View v) {
        if (v.latch(ID).isEmpty() && !stood(v) && !Suspicion.falls(v, Suspect.FROZEN, ID)) {
            return List.of();
        }
        return List.of(Finding.trip(ID, "its probe's reading stood still although the water must have moved",
                Power.HEAT, Power.CUT_OUT).alarm(AlarmKind.PROBE_FROZEN));
    }

    private static boolean stood(View v) {
        HeatKind kind = v.cone().fittings().heat().kind();
        return (kind == HeatKind.MAT || kind == HeatKind.BATH) && v.stage().hasWater() && v.water().known()
                && v.judged().heat().offForMs() < HEATED_WITHIN_MS
                && v.judged().motion().stillForMs() >= STOOD_MS;
    }

    /** A reading that moves again, or that of another probe. */
    @Override
    public boolean causeGone(View v) {
        return v.water().known() && v.judged().motion().within(LIVES_MS);
    }
}
