package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.judge.CutShort;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.Watch.Suspect;

/**
 * Danger: a welded switch. Water that warms while heat is off opens the second switch and calls a person.
 *
 * <p>Where the room is measured and cooler than the water, the watch over the learned cone names it, mostly
 * within two minutes. Another room may warm the water too: there the suspicion opens the cut-out as well, and
 * whether that ends the rise decides ({@link org.conetender.core.judge.CutShort}). Without a cut-out
 * {@link org.conetender.core.judge.HeatTrack} decides, which allows for such a room.
 */
public final class WeldedHeater implements Guard {

    /** Rise that nothing else explains, K: five probe steps (guess; 50 W in 2 L gives it in a minute). */
    static final double RISE_K = 0.3;

    public static final String ID = "welded";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public List<Finding> look(View v) {
        boolean above = Suspicion.falls(v, Suspect.ABOVE, ID);
        boolean suspect = Suspicion.falls(v, Suspect.WELDED, ID);
        CutShort cut = v.judged().tried().cutShort();
        boolean rising = v.stage().hasWater() && v.judged().heat().riseWhileOffK(v.water()) >= RISE_K
                && !WrongCone.warms(v)
                || suspect && v.judged().coldRoom() && !cut.wentOn() || (suspect || above) && cut.stopped();
        boolean cutOut = v.cone().fittings().heat().cutOut();
        if (v.latch(id()).isEmpty() && !rising) {
            return !suspect && !above ? List.of() : List.of(doubt(above
                    ? "it is above its set-point and still warms with the heater off"
                    : "it warms more than its heater and a usual room explain", cutOut, cut.wentOn()));
        }
        String what = cutOut && cut.stopped()
                ? "the water warmed with the heater switched off, and stopped when the cut-out opened"
                : cutOut
                ? "the water warms although the heater is switched off; the cut-out is open now"
                : "the water warms although the heater is switched off, and no cut-out is fitted";
        return List.of(Finding.trip(id(), what, Power.HEAT, Power.CUT_OUT).alarm(AlarmKind.WELDED));
    }

    private static Finding doubt(String what, boolean cutOut, boolean wentOn) {
        return !cutOut ? Finding.veto(ID, what, Power.HEAT) : Finding.veto(ID, what + (wentOn
                ? "; opening its cut-out did not end that, so heat waits until it warms no more"
                : "; its cut-out is open, to see whether that ends it"), Power.HEAT, Power.CUT_OUT);
    }

    /**
     * Water that was watched and rose no more is not heated any more; an empty cone shows nothing, so there
     * a person's word counts. Behind an open cut-out a welded switch looks mended: should it heat on when
     * the person was mistaken, this guard finds it again.
     */
    @Override
    public boolean causeGone(View v) {
        return !v.stage().hasWater() || v.judged().heat().noRiseForMs() >= HeatTrack.STILL_MS;
    }
}
