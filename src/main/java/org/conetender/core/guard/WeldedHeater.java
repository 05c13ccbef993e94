package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Units;

/** Danger: a welded switch. Water that warms while heat is off opens the second switch and calls a person. */
public final class WeldedHeater implements Guard {

    /** Rise that nothing else explains, K: five probe steps (guess; 50 W in 2 L gives it in a minute). */
    static final double RISE_K = 0.3;

    /** Water that rises no more for so long is not heated (guess; 25 W in 2 L would give 1.8 K). */
    static final long STILL_MS = 10 * Units.MINUTE_MS;

    @Override
    public String id() {
        return "welded";
    }

    @Override
    public List<Finding> look(View v) {
        boolean rising = v.stage().hasWater() && v.judged().heat().riseWhileOffK(v.water()) >= RISE_K;
        if (v.latch(id()).isEmpty() && !rising) {
            return List.of();
        }
        String what = v.cone().fittings().heat().cutOut()
                ? "the water warms although the heater is switched off; the cut-out is open now"
                : "the water warms although the heater is switched off, and no cut-out is fitted";
        return List.of(Finding.trip(id(), what, Power.HEAT, Power.CUT_OUT).alarm(AlarmKind.WELDED));
    }

    /**
     * Water that was watched and rose no more is not heated any more; an empty cone shows nothing, so there
     * a person's word counts. Behind an open cut-out a welded switch looks mended: should it heat on when
     * the person was mistaken, this guard finds it again.
     */
    @Override
    public boolean causeGone(View v) {
        return !v.stage().hasWater() || v.judged().heat().noRiseForMs() >= STILL_MS;
    }
}
