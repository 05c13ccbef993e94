package org.conetender.app.trial;

import org.conetender.core.hatch.Rate;
import org.conetender.core.hatch.Speed;
import org.conetender.sim.LoneBatch;
import org.conetender.sim.trial.TrialHatch;

/** A lot as it is known to somebody who watched it hatch, often, at one temperature. */
final class KnownLot {

    /** In the middle of the usual range, °C (science.md §1). */
    static final double USUAL_C = 26;
    /** Seen often: what is left is the scatter of batches. */
    private static final double LITTLE = 0.02;
    private static final int OFTEN = 9;
    /** Standard score of the 90 % point. */
    private static final double Z90 = 1.2816;

    private KnownLot() {}

    /** Its figures by the daemon's own form, right at that temperature only. @param waterC °C */
    static Speed at(TrialHatch h, double waterC) {
        LoneBatch watched = h.watchedAt(waterC);
        double half = watched.hoursTo(50);
        double sigma = Math.log(watched.hoursTo(90) / half) / Z90;
        return new Speed(half * Rate.USUAL.perHour(waterC), sigma, LITTLE, OFTEN);
    }
}
