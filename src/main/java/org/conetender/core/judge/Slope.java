package org.conetender.core.judge;

/**
 * How fast a reading goes, by least squares in which what is older counts less. The highest and the lowest
 * reading of some minutes are three steps of a probe apart by its noise alone (0.027 K, control.md §2.3): no
 * speed can be had from those. Immutable.
 *
 * @param weightS of all that counts, s
 * @param ageS sum of the ages, each with its weight, s²
 * @param ages2 of their squares, s³
 * @param overKs of the readings over the first one, K·s
 * @param together of the products of reading and age, K·s²
 * @param firstC the first reading, °C; NaN before it
 */
record Slope(double weightS, double ageS, double ages2, double overKs, double together, double firstC) {

    static final Slope NONE = new Slope(0, 0, 0, 0, 0, Double.NaN);

    /** What is so old counts by one in e, s (guess: a weld of 25 W/L rises by half a degree in it). */
    private static final double FORGOTTEN_S = 90;

    /** A step more. @param c the reading that stands, °C  @param dtS its length, s, not negative */
    Slope after(double c, double dtS) {
        double keep = Math.exp(-dtS / FORGOTTEN_S);
        double first = Double.isNaN(firstC) ? c : firstC;
        return new Slope(keep * weightS + dtS, keep * (ageS + weightS * dtS),
                keep * (ages2 + 2 * ageS * dtS + weightS * dtS * dtS), keep * overKs + (c - first) * dtS,
                keep * (together + overKs * dtS), first);
    }

    /** K/s; NaN where everything was at one time. */
    double kPerS() {
        double spread = ages2 - ageS * ageS / weightS;
        return spread > 0 ? -(together - ageS * overKs / weightS) / spread : Double.NaN;
    }
}
