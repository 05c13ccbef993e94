package org.conetender.core.judge;

import java.util.Optional;

/**
 * Whether water that seems to be heated by a welded switch stops warming once the second switch in series is
 * open. A warm room goes on warming it as before; a heater does not. One step is one
 * tick. Immutable.
 *
 * @param beforeKPerS how fast it warmed before the second switch opened, K/s; NaN where that did not conduct
 *     then, or nobody knows: opening it would tell nothing
 * @param openMs how long it has been open for this suspicion, ms
 * @param fromC the water once the heat on its way had arrived, °C; NaN before that
 * @param answer what came of it; empty while nobody can tell
 */
public record CutShort(double beforeKPerS, long openMs, double fromC, Optional<Answer> answer) {

    /** What the water did. */
    public enum Answer {
        /** It stopped: the switch is welded. */
        STOPPED,
        /** It went on: something else warms it. */
        WENT_ON
    }

    /** Nothing is suspected, or opening tells nothing. */
    public static final CutShort NONE = new CutShort(Double.NaN, 0, Double.NaN, Optional.empty());

    /** What is suspected for its speed warms by half to all of full power ({@link Cause}). */
    private static final double SUSPECTED = 0.75;
    /**
     * Less than before by more than half of full power has stopped (guess: half way). It is looked at for as
     * long as that half takes for so much, K: three steps of the probe (guess).
     */
    private static final double STOPPED = 0.5;
    private static final double TOLD_K = 3 * 0.0625;

    /**
     * What is seen in a step.
     *
     * @param left whether the water was left alone and stirred: a hand or a top-up ends a rise too
     * @param open whether the second switch is fitted and open
     * @param water as it is believed
     * @param offKPerS how fast it warmed with the heat off, K/s, NaN while nobody knows; empty where the
     *     speed itself was the reason
     * @param fullKPerS how fast the heater would at full power, K/s, above 0
     */
    record Seen(long dtMs, boolean left, boolean open, Belief water, Optional<Double> offKPerS,
                double fullKPerS) {

        private double warmedKPerS() {
            return offKPerS.orElse(SUSPECTED * fullKPerS);
        }
    }

    /** A step later, while the water is suspected to be heated by a welded switch. */
    CutShort after(Seen s) {
        if (!s.left() || s.water() instanceof Belief.Untrusted) {
            return answer.isPresent() ? this : NONE;
        }
        if (!s.open()) {
            return new CutShort(s.warmedKPerS(), 0, Double.NaN, Optional.empty());
        }
        if (Double.isNaN(beforeKPerS) || answer.isPresent()) {
            return this;
        }
        long ms = openMs + s.dtMs();
        // A late reading is waited for.
        if (ms < HeatTrack.COOLED_MS || !(s.water() instanceof Belief.Trusted(double c))) {
            return new CutShort(beforeKPerS, ms, fromC, answer);
        }
        if (Double.isNaN(fromC)) {
            return new CutShort(beforeKPerS, HeatTrack.COOLED_MS, c, answer);
        }
        double seconds = (ms - HeatTrack.COOLED_MS) / 1000.0;
        double lessK = STOPPED * s.fullKPerS() * seconds;
        return new CutShort(beforeKPerS, ms, fromC, lessK < TOLD_K ? Optional.empty()
                : Optional.of(c - fromC < beforeKPerS * seconds - lessK ? Answer.STOPPED : Answer.WENT_ON));
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
