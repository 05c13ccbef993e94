package org.conetender.core.judge;

/**
 * Whether a cone's reading moves. A live probe trembles between two steps or follows its water; one that
 * gives the same figure for ever is told from it only by a change.
 *
 * @param readingC the last reading that was believed, °C; NaN before the first
 * @param stillForMs how long it has been the same, of the time in which it was believed
 * @param seen whether it was seen to change in this life of the process
 */
public record Motion(double readingC, long stillForMs, boolean seen) {

    /** Nothing heard yet. */
    public static final Motion NONE = new Motion(Double.NaN, 0, false);

    /** The motion after a tick of {@code dtMs}. What is not read, or not believed, says nothing of it. */
    public Motion after(Belief water, long dtMs) {
        return !(water instanceof Belief.Trusted(double c)) ? this
                : c == readingC ? new Motion(readingC, stillForMs + dtMs, seen)
                : new Motion(c, 0, !Double.isNaN(readingC));
    }

    /** Whether it changed within so many ms before now. */
    public boolean within(long ms) {
        return seen && stillForMs < ms;
    }
}
