package org.conetender.sim.trial;

import java.util.Arrays;

/** Quantiles of what was measured; NaN counts as the worst. */
final class Quantiles {

    private final double[] sorted;

    Quantiles(double[] values) {
        this.sorted = values.clone();
        // NaN sorts behind every number.
        Arrays.sort(sorted);
    }

    /** The value that this share does not exceed; NaN without values. @param share 0..1 */
    double at(double share) {
        return sorted.length == 0 ? Double.NaN
                : sorted[Math.clamp((int) Math.ceil(share * sorted.length) - 1, 0, sorted.length - 1)];
    }

    int count() {
        return sorted.length;
    }
}
