package org.conetender.sim.trial;

import java.util.SplittableRandom;
import org.conetender.core.judge.Traits;
import org.conetender.sim.LoneBatch;
import org.conetender.sim.Lot;
import org.conetender.sim.Seeds;

/**
 * One batch of a trial as it was drawn: a cone as in {@link TrialCone}, a lot of cysts, and when somebody
 * asks for an hour.
 *
 * @param cone that it hatches in
 * @param lot of its cysts
 * @param scatter factor of this batch on the lot's speed, where batches are let differ
 * @param askedAtH hours after wetting at which the hour is asked for
 * @param wish where the hour lies: 0 the earliest that can truly be kept, 1 the latest
 * @param beyondH hours before the earliest (below 0) or after the latest at which it lies instead; mostly 0
 */
public record TrialHatch(TrialCone cone, Lot lot, double scatter, double askedAtH, double wish,
                         double beyondH) {

    /** Batches of one lot differ by this log-sd (science.md §3.5 leaves 0.03 to 0.05). */
    private static final double BATCH_LOG_SD = 0.03;
    /** Somebody asks within so long after the wetting, h (guess). */
    private static final double ASKED_WITHIN_H = 4;
    /** One in so many asks for what cannot be kept. */
    private static final int OUTSIDE_IN = 5;
    /** By so many hours, from one on. */
    private static final double OUTSIDE_H = 6;

    static TrialHatch draw(long seed) {
        SplittableRandom random = Seeds.of(seed, "trial hatch");
        double beyond = random.nextDouble(1, OUTSIDE_H) * (random.nextBoolean() ? 1 : -1);
        return new TrialHatch(TrialCone.draw(seed), Lot.draw(seed, "L-0417"),
                Math.exp(BATCH_LOG_SD * random.nextGaussian()), random.nextDouble(0, ASKED_WITHIN_H),
                random.nextDouble(), random.nextInt(OUTSIDE_IN) > 0 ? 0 : beyond);
    }

    /** What the configuration says of the cone. */
    public Traits nominal() {
        return cone.known().nominal();
    }

    /** Whether a probe measures its room. */
    public boolean roomMeasured() {
        return cone.known().roomProbe();
    }

    /** Whether a lid lies on it. */
    public boolean lid() {
        return cone.lid();
    }

    /** Water in it, L. */
    public double litres() {
        return cone.build().litres();
    }

    /** Its set-point while no hour is asked for, °C. */
    public double usualC() {
        return cone.known().setpointC();
    }

    /** What a person who watched the lot hatch at that temperature has written down. @param waterC °C */
    public LoneBatch watchedAt(double waterC) {
        return LoneBatch.held(lot, waterC);
    }
}
