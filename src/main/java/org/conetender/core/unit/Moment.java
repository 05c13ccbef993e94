package org.conetender.core.unit;

/**
 * One reading of the clock, taken once at the top of a tick.
 *
 * <p>All control compares {@code monoMs} within one boot. The wall clock only labels, and says
 * whether it can be believed.
 *
 * @param boot the kernel's boot id; monotonic times of different boots cannot be compared
 * @param monoMs milliseconds of the monotonic clock since that boot, never negative
 * @param wallMs milliseconds since 1970-01-01 UTC as the wall clock has it
 * @param wallTrusted whether the kernel says the wall clock is synchronised
 */
public record Moment(String boot, long monoMs, long wallMs, boolean wallTrusted) {

    /** Whether both moments share one monotonic clock. */
    public boolean sameBoot(Moment other) {
        return boot.equals(other.boot);
    }

    /**
     * How long ago {@code earlier} was, in milliseconds, as an interval.
     *
     * <p>Exact within one boot. Across boots it is the wall clocks' difference, to what they may be off, when
     * both were trusted and agree with the time since this boot began; otherwise at least that time, and no
     * upper bound is known: one of the two clocks was set back.
     */
    public Span since(Moment earlier) {
        if (sameBoot(earlier)) {
            return Span.exactly(Math.max(0, monoMs - earlier.monoMs));
        }
        if (wallTrusted && earlier.wallTrusted && wallMs - earlier.wallMs >= monoMs) {
            long ms = wallMs - earlier.wallMs;
            return new Span(Math.max(monoMs, ms - 2 * Boots.SKEW_MS), ms + 2 * Boots.SKEW_MS);
        }
        return new Span(monoMs, Long.MAX_VALUE);
    }

    /** This moment moved by {@code ms} on both clocks; for tests, timers and projections. */
    public Moment plusMs(long ms) {
        return new Moment(boot, monoMs + ms, wallMs + ms, wallTrusted);
    }
}
