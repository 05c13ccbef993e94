package org.conetender.core.hatch;

import org.hipparchus.special.Erf;

/** The standard normal distribution, by Hipparchus' error function. */
final class Normal {

    /** Standard score of the 90 % point: 1.2816. */
    static final double Z90 = quantile(0.9);

    /** Standard score of the 10 % point. */
    static final double Z10 = quantile(0.1);

    /** Standard score of the later quartile: 0.6745. */
    static final double Z75 = quantile(0.75);

    private Normal() {}

    /** The share below {@code z}, 0..1. */
    static double share(double z) {
        return 0.5 * Erf.erfc(-z / Math.sqrt(2));
    }

    /** The score below which that share lies. @param share inside 0..1, ends give infinities */
    static double quantile(double share) {
        return Math.sqrt(2) * Erf.erfInv(2 * share - 1);
    }
}
