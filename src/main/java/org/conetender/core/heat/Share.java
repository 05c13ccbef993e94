package org.conetender.core.heat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Turns duties into on and off. Each cone has a credit of heater seconds it is owed: it grows by the
 * duty, shrinks while the heater is on. On when the credit is worth it, off when it is used up, which
 * gives windows of the wanted length; where power is short the one owed most comes first, so that
 * nobody starves and the windows stagger themselves.
 */
public final class Share {

    private Share() {}

    /**
     * @param creditMs heater milliseconds owed
     * @param wants whether it would be on now if there were power for all
     */
    public record Credit(double creditMs, boolean wants) {
        public static final Credit NONE = new Credit(0, false);
    }

    /**
     * One cone's credit after a tick.
     *
     * @param before its credit
     * @param duty wanted, 0..1
     * @param wasOn whether its heater really was on
     * @param window the tick and the switching window, ms
     */
    public static Credit after(Credit before, double duty, boolean wasOn, Window window) {
        if (duty <= 0) {
            return Credit.NONE;
        }
        double credit = before.creditMs() + (duty - (wasOn ? 1 : 0)) * window.dtMs();
        credit = Math.clamp(credit, -window.windowMs(), window.windowMs());
        double start = window.windowMs() * duty * (1 - duty);
        boolean wants = wasOn ? credit > 0 || duty >= 1 : credit >= start;
        return new Credit(credit, wants);
    }

    /** @param dtMs since the last tick  @param windowMs the switching window */
    public record Window(long dtMs, long windowMs) {}

    /** @param cone its id  @param credit what it is owed  @param wasOn whether it was on */
    public record Claim(String cone, Credit credit, boolean wasOn) {}

    /** A running heater is only displaced by one that is owed this much more (guess: spares relays). */
    private static final double STAY_MS = 30_000;

    /** The claims in the order in which they are served. */
    public static List<Claim> order(List<Claim> claims) {
        List<Claim> sorted = new ArrayList<>(claims);
        sorted.sort(Comparator.comparingDouble(
                (Claim c) -> -(c.credit().creditMs() + (c.wasOn() ? STAY_MS : 0)))
                .thenComparing(Claim::cone));
        return sorted;
    }
}
