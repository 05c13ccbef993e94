package org.conetender.core.hatch;

/**
 * What makes a forecast uncertain, as standard deviations of the logarithm of degree-hours, which
 * add as squares: they are independent, and small enough for the sum to stay close to normal.
 *
 * @param speed the lot in this water, with the scatter of its batches, of its sigma and of its threshold
 * @param rest development so far, probe and projection
 */
record Spread(Speed speed, double rest) {

    /** A probe calibrated in place, and where the control will really hold the water, K (*guess*). */
    static final double PROBE_SD_K = 0.2;

    /** @param lossier what lies ahead of a cone that loses more */
    static Spread of(Development done, Speed speed, Ahead ahead, Ahead lossier) {
        double way = Math.max(1, ahead.meanRate(speed.k90()));
        double past = (done.mostDegreeHours() - done.leastDegreeHours()) / Math.sqrt(12) / speed.k90();
        // A batch that was looked at was seen through its own probe.
        double probe = speed.doubt().batch() > 0 ? PROBE_SD_K / way : 0;
        // Where the heater holds the set-point either way it makes no difference.
        double hours = ahead.hoursUntil(speed.k90());
        double projected = hours > 0 && hours < Double.POSITIVE_INFINITY
                ? Math.log(speed.k90() / lossier.doneAt(hours)) : 0;
        return new Spread(speed, Math.sqrt(past * past + probe * probe + projected * projected));
    }

    /** Log-sd of the degree-hours of this batch at a share whose standard score is {@code z}. */
    double logSdAt(double z) {
        double lot = speed.logSdAt(z);
        return Math.sqrt(lot * lot + rest * rest);
    }
}
