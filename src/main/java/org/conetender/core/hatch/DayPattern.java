package org.conetender.core.hatch;

import java.util.Arrays;

/** A day as a row of temperatures, NaN where nobody read one: of the water in a log, or of a room. */
final class DayPattern {

    /** A day with more of it unread is no pattern (*guess*). */
    private static final double MOST_UNREAD = 1.0 / 8;

    private DayPattern() {}

    /** Whether enough of it was read. */
    static boolean known(double[] c) {
        return known(Arrays.stream(c).filter(Double::isNaN).count(), c.length);
    }

    /** The same. @param unread figures that are NaN  @param of so many */
    static boolean known(long unread, int of) {
        return unread <= MOST_UNREAD * of;
    }

    /** Straight lines over what nobody read. @param c its first and last are known */
    static double[] bridged(double[] c) {
        double[] out = c.clone();
        int known = 0;
        for (int i = 1; i < out.length; i++) {
            if (!Double.isNaN(out[i])) {
                for (int k = known + 1; k < i; k++) {
                    out[k] = out[known] + (out[i] - out[known]) * (k - known) / (i - known);
                }
                known = i;
            }
        }
        return out;
    }
}
