package org.conetender.core.hatch;

/**
 * What makes a forecast uncertain, as standard deviations of the logarithm of degree-hours, which
 * add as squares: they are independent, and small enough for the sum to stay close to normal.
 *
 * @param speed the lot, with the scatter of its batches and of its sigma
 * @param rest development so far, probe and projection, and the lower threshold
 */
record Spread(Speed speed, double rest) {

    /** A probe calibrated in place, and where the control will really hold the water, K (*guess*). */
    private static final double PROBE_SD_K = 0.2;

    /** The other published lower threshold, °C (science.md §1 and §2.3: A. sinica, 9.07). */
    private static final double OTHER_BASE_C = 9.07;

    /** Both thresholds are anchored at the same hatch time here, °C (science.md §2.3, T80 at 24 °C). */
    private static final double ANCHOR_C = 24;

    /** The thresholds' disagreement is never taken for more than this (*guess*). */
    private static final double THRESHOLD_MOST = 0.3;

    static Spread of(Development done, Speed speed, Ahead ahead, Rate rate) {
        double way = Math.max(1, ahead.meanRate(speed.k90()));
        double past = (done.mostDegreeHours() - done.leastDegreeHours()) / Math.sqrt(12) / speed.k90();
        double probe = PROBE_SD_K / way;
        double threshold = thresholdLogSd(rate.baseC() + way, rate.baseC());
        return new Spread(speed, Math.sqrt(past * past + probe * probe + threshold * threshold));
    }

    /** Log-sd of the degree-hours of this batch at a share whose standard score is {@code z}. */
    double logSdAt(double z) {
        double lot = speed.logSdAt(z);
        return Math.sqrt(lot * lot + rest * rest);
    }

    /** Half of what the two published thresholds disagree by at that temperature. */
    static double thresholdLogSd(double waterC, double baseC) {
        double ours = (ANCHOR_C - baseC) / (waterC - baseC);
        double theirs = (ANCHOR_C - OTHER_BASE_C) / (waterC - OTHER_BASE_C);
        return Math.min(THRESHOLD_MOST, Math.abs(Math.log(ours / theirs)) / 2);
    }
}
