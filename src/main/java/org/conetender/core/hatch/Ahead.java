package org.conetender.core.hatch;

/**
 * Degree-hours along a projection: walked once, then asked for many points. One array is allocated.
 */
final class Ahead {

    private static final int STEPS = (int) Math.round(Forecast.HORIZON_H / Projection.STEP_H);

    /** Published hatch times lie between these, °C (science.md §2.2, §2.3). */
    private static final double CALIBRATED_FROM_C = 20;
    private static final double CALIBRATED_TO_C = 30;

    /** Degree-hours done at the end of each step; index 0 is now. */
    private final double[] done;
    private final double rateNow;
    private final double headingC;
    private final double fallPerK;

    private Ahead(double[] done, double rateNow, double headingC, double fallPerK) {
        this.done = done;
        this.rateNow = rateNow;
        this.headingC = headingC;
        this.fallPerK = fallPerK;
    }

    /**
     * Integrates the rate along the projected water, by trapezoids of one step.
     *
     * @param doneNow degree-hours done  @param needed where the water's temperature is noted
     */
    static Ahead walk(double doneNow, double needed, Projection projection, Rate rate) {
        double[] done = new double[STEPS + 1];
        done[0] = doneNow;
        double water = projection.waterC();
        double heading = water;
        double rateNow = rate.perHour(water);
        double gain = rateNow;
        double kept = projection.plant().keptPerStep();
        for (int i = 0; i < STEPS; i++) {
            water = projection.nextC(water, i, projection.plan().aimC(done[i]), kept);
            double next = rate.perHour(water);
            done[i + 1] = done[i] + Projection.STEP_H * (gain + next) / 2;
            gain = next;
            heading = done[i] < needed ? water : heading;
        }
        // While the water stands outside the zone, the past is reckoned at the rate it was aimed for.
        return new Ahead(done, rateNow > 0 ? rateNow : rate.perHour(projection.plan().setpointC()), heading,
                fallPerK(rate, heading));
    }

    /** By how much ln of the rate falls with each kelvin more, over a probe's doubt; below 0 if it grows. */
    private static double fallPerK(Rate rate, double waterC) {
        double here = rate.perHour(waterC);
        return here <= 0 ? 0 : (rate.perHour(waterC - Spread.PROBE_SD_K)
                - rate.perHour(waterC + Spread.PROBE_SD_K)) / (2 * Spread.PROBE_SD_K * here);
    }

    /** Hours from now until so many degree-hours are done; negative if they are, infinite if never. */
    double hoursUntil(double degreeHours) {
        if (degreeHours <= done[0]) {
            return rateNow > 0 ? (degreeHours - done[0]) / rateNow : 0;
        }
        if (degreeHours > done[STEPS]) {
            return Double.POSITIVE_INFINITY;
        }
        int before = 0;
        int after = STEPS;
        while (after - before > 1) {
            int middle = (before + after) / 2;
            if (done[middle] < degreeHours) {
                before = middle;
            } else {
                after = middle;
            }
        }
        return (before + (degreeHours - done[before]) / (done[after] - done[before])) * Projection.STEP_H;
    }

    /** Degree-hours done by then. @param hours from now; not below 0, no more than the look-ahead */
    double doneAt(double hours) {
        double at = Math.clamp(hours / Projection.STEP_H, 0, STEPS);
        int before = Math.min((int) at, STEPS - 1);
        return done[before] + (at - before) * (done[before + 1] - done[before]);
    }

    /** Mean rate until so many degree-hours are done, or over the whole look-ahead; °C·h per hour. */
    double meanRate(double degreeHours) {
        double hours = hoursUntil(degreeHours);
        if (hours <= Projection.STEP_H) {
            return rateNow;
        }
        return hours < Double.POSITIVE_INFINITY ? (degreeHours - done[0]) / hours
                : (done[STEPS] - done[0]) / Forecast.HORIZON_H;
    }

    /** The lot in the water of the way to its harvest point. @param rate the one that was walked with */
    Speed there(Speed lot, Rate rate) {
        return lot.at(rate.thresholdAtC(meanRate(lot.k90())), rate.baseC());
    }

    /** Whether most of the way lies where hatch times have been published. */
    boolean calibrated(double degreeHours, Rate rate) {
        return meanRate(degreeHours) >= rate.perHour(CALIBRATED_FROM_C) && headingC <= CALIBRATED_TO_C;
    }

    /** By how much ln of the rate falls where the water is heading with each kelvin more, 1/K. */
    double fallPerK() {
        return fallPerK;
    }

    /** The water when those degree-hours are done, or at the end of the look-ahead, °C. */
    double headingC() {
        return headingC;
    }
}
