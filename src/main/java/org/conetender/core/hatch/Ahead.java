package org.conetender.core.hatch;

/**
 * Degree-hours along a projection: walked once, then asked for many points. One array is allocated.
 */
final class Ahead {

    private static final int STEPS = (int) Math.round(Forecast.HORIZON_H / Projection.STEP_H);

    /** Published hatch times lie between these, °C (science.md §2.2, §2.3). */
    private static final double CALIBRATED_FROM_C = 20;
    private static final double CALIBRATED_TO_C = 30;

    /** Where nothing is gained a way has no end; so it is taken to be no slower, °C·h an hour (*guess*). */
    private static final double SLOWEST = 0.1;

    /** Degree-hours done at the end of each step; index 0 is now. */
    private final double[] done;
    private final double rateNow;
    /** Mean rate of what is done, as far as that is known. */
    private final double rateBehind;
    private final double headingC;
    private final double fallPerK;
    private final Projection projection;
    private final Rate rate;

    private Ahead(double[] done, double headingC, Projection projection, Rate rate) {
        this.done = done;
        this.headingC = headingC;
        this.projection = projection;
        this.rate = rate;
        double now = rate.perHour(projection.waterC());
        // While the water stands outside the zone, the past is reckoned at the rate it was aimed for.
        this.rateNow = now > 0 ? now : rate.perHour(projection.plan().setpointC());
        // Nobody waits for cysts in water so cold that their hours were never published.
        this.rateBehind = projection.behind().known() ? projection.behind().perHour(done[0])
                : Math.max(rateNow, rate.perHour(CALIBRATED_FROM_C));
        this.fallPerK = fallPerK(rate, headingC);
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
        double gain = rate.perHour(water);
        double kept = projection.plant().keptPerStep();
        for (int i = 0; i < STEPS; i++) {
            water = projection.nextC(water, i, projection.plan().aimC(done[i]), kept);
            double next = rate.perHour(water);
            done[i + 1] = done[i] + Projection.STEP_H * (gain + next) / 2;
            gain = next;
            heading = done[i] < needed ? water : heading;
        }
        return new Ahead(done, heading, projection, rate);
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

    /** The same in a cone that loses more, which is walked no further than that. @param hours likewise */
    double doneLossier(double hours) {
        Projection lossier = projection.lossier();
        double at = Math.clamp(hours / Projection.STEP_H, 0, STEPS);
        int last = Math.min((int) at, STEPS - 1);
        double water = lossier.waterC();
        double gain = rate.perHour(water);
        double kept = lossier.plant().keptPerStep();
        double before = done[0];
        double after = before;
        for (int i = 0; i <= last; i++) {
            water = lossier.nextC(water, i, lossier.plan().aimC(after), kept);
            double next = rate.perHour(water);
            before = after;
            after += Projection.STEP_H * (gain + next) / 2;
            gain = next;
        }
        return before + (at - last) * (after - before);
    }

    /** Mean rate from now until so many degree-hours, or over the whole look-ahead; °C·h per hour. */
    double rateAhead(double degreeHours) {
        double hours = hoursUntil(degreeHours);
        if (hours <= Projection.STEP_H) {
            return rateNow;
        }
        return hours < Double.POSITIVE_INFINITY ? (degreeHours - done[0]) / hours
                : (done[STEPS] - done[0]) / Forecast.HORIZON_H;
    }

    /**
     * The same of the whole way, what is done with it: its degree-hours over its hours. So the water ahead
     * counts for what is still to be done only, and no more for a batch that is there.
     */
    double meanRate(double degreeHours) {
        double left = left(degreeHours);
        return left == 1 ? rateAhead(degreeHours)
                : 1 / (left / Math.max(SLOWEST, rateAhead(degreeHours)) + (1 - left) / rateBehind);
    }

    /** Share of the way that is still to be gone, 0..1. */
    private double left(double degreeHours) {
        return rateBehind <= 0 ? 1 : degreeHours <= done[0] ? 0 : 1 - done[0] / degreeHours;
    }

    /** The lot in the water of its way to the harvest point. */
    Speed there(Speed lot) {
        return lot.at(rate.thresholdAtC(meanRate(lot.k90())), rate.baseC());
    }

    /** Whether most of the way that is left lies where hatch times have been published. */
    boolean calibrated(double degreeHours) {
        return rateAhead(degreeHours) >= rate.perHour(CALIBRATED_FROM_C) && headingC <= CALIBRATED_TO_C;
    }

    /**
     * By how much ln of the rate falls where the water is heading with each kelvin more, 1/K, as far as that
     * way is still to be gone.
     */
    double fallPerK(double degreeHours) {
        double left = left(degreeHours);
        return left * fallPerK + (left < 1 ? (1 - left) / rateBehind : 0);
    }

    /** The water when those degree-hours are done, or at the end of the look-ahead, °C. */
    double headingC() {
        return headingC;
    }
}
