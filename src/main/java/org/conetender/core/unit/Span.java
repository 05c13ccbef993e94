package org.conetender.core.unit;

/**
 * A length of time that may be known only between two bounds, in milliseconds.
 *
 * @param leastMs it took at least this long
 * @param mostMs it took at most this long; {@link Long#MAX_VALUE} when nothing bounds it
 */
public record Span(long leastMs, long mostMs) {

    /** A span whose length is known. */
    public static Span exactly(long ms) {
        return new Span(ms, ms);
    }

    /** Whether both bounds are the same. */
    public boolean exact() {
        return leastMs == mostMs;
    }

    /** Whether it is known to a minute: no other evidence is better. */
    public boolean known() {
        return mostMs - leastMs <= Units.MINUTE_MS;
    }

    /** Whether an upper bound is known. */
    public boolean bounded() {
        return mostMs != Long.MAX_VALUE;
    }
}
