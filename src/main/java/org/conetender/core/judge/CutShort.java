package org.conetender.core.judge;

import java.util.Optional;

/**
 * Whether water that seems to be heated by a welded switch stops warming once the second switch in series is
 * open. A warm room that nobody measures goes on warming it; a heater does not. One step is one tick.
 * Immutable.
 *
 * @param armed whether the second switch conducted when this was suspected: only then does opening it tell
 * @param openMs how long it has been open for this suspicion, ms
 * @param fromC the water once the heat on its way had arrived, °C; NaN before that
 * @param answer what came of it; empty while nobody can tell
 */
public record CutShort(boolean armed, long openMs, double fromC, Optional<Answer> answer) {

    /** What the water did. */
    public enum Answer {
        /** It stopped: the switch is welded. */
        STOPPED,
        /** It went on: something else warms it. */
        WENT_ON
    }

    /** Nothing is suspected, or opening tells nothing. */
    public static final CutShort NONE = new CutShort(false, 0, Double.NaN, Optional.empty());
    private static final CutShort ARMED = new CutShort(true, 0, Double.NaN, Optional.empty());

    /**
     * What was suspected warms by half of full power at least ({@link Cause}); it is looked at for as long as
     * that takes for so much, K: three steps of the probe (guess).
     */
    private static final double TOLD_K = 3 * 0.0625;
    private static final double SUSPECTED = 0.5;
    /** Less than this share of it has stopped (guess: half way). */
    private static final double STOPPED = 0.5;

    /**
     * What is seen in a step.
     *
     * @param left whether the water was left alone and stirred: a hand or a top-up ends a rise too
     * @param open whether the second switch is fitted and open
     * @param water as it is believed
     * @param riseKPerS of the heater at full power, K/s, above 0
     */
    record Seen(long dtMs, boolean left, boolean open, Belief water, double riseKPerS) {}

    /** A step later, while the water is suspected to be heated by a welded switch. */
    CutShort after(Seen s) {
        if (!s.left() || s.water() instanceof Belief.Untrusted) {
            return answer.isPresent() ? this : NONE;
        }
        if (!s.open()) {
            return ARMED;
        }
        if (!armed || answer.isPresent()) {
            return this;
        }
        long ms = openMs + s.dtMs();
        // A late reading is waited for.
        if (ms < HeatTrack.COOLED_MS || !(s.water() instanceof Belief.Trusted(double c))) {
            return new CutShort(true, ms, fromC, answer);
        }
        if (Double.isNaN(fromC)) {
            return new CutShort(true, HeatTrack.COOLED_MS, c, answer);
        }
        double dueK = SUSPECTED * s.riseKPerS() * (ms - HeatTrack.COOLED_MS) / 1000.0;
        return new CutShort(true, ms, fromC, dueK < TOLD_K ? Optional.empty()
                : Optional.of(c - fromC < STOPPED * dueK ? Answer.STOPPED : Answer.WENT_ON));
    }

    /** Whether it speaks for a welded switch, or may yet: the cut-out is open for it. */
    public boolean tells() {
        return openMs > 0 && !wentOn();
    }

    /** Whether it stopped. */
    public boolean stopped() {
        return answer.filter(a -> a == Answer.STOPPED).isPresent();
    }

    /** Whether it went on. */
    public boolean wentOn() {
        return answer.filter(a -> a == Answer.WENT_ON).isPresent();
    }
}
