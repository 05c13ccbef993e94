package org.conetender.core.judge;

/**
 * How the warming of one cone's water goes with another's heater: least squares through all steps, so that
 * what warms steadily, a room or a lid, counts for nothing, nor does what its own heater may give while its
 * cut-out conducts and not while it is open.
 *
 * @param seconds of all steps
 * @param other what would be felt of the other's heater
 * @param own what could be felt of its own, were its switch welded
 * @param both sum of the product of these two, s
 * @param gainK sum of the warming that nothing else explains, K
 */
record Fit(double seconds, Sum other, Sum own, double both, double gainK) {

    /**
     * Of a share of full power, 0..1.
     *
     * @param once sum of it, s  @param twice of its square, s  @param withGainK of its product with the
     *     warming, K
     */
    record Sum(double once, double twice, double withGainK) {
        static final Sum NONE = new Sum(0, 0, 0);

        private Sum and(double dtS, double share, double takenK) {
            return new Sum(once + share * dtS, twice + share * share * dtS, withGainK + share * takenK);
        }

        private Sum times(double keep) {
            return new Sum(once * keep, twice * keep, withGainK * keep);
        }

        private double spread(double seconds) {
            return Math.max(0, twice - once * once / seconds);
        }

        private double goesK(double gainK, double seconds) {
            return withGainK - once * gainK / seconds;
        }
    }

    static final Fit NONE = new Fit(0, Sum.NONE, Sum.NONE, 0, 0);

    /** What its switching must have been worth for an answer, K: four steps of the probe (guess). */
    static final double SURE_K = 0.25;
    /** Water that went with a heater by more than half of what that would bring is warmed by it. */
    private static final double FOLLOWS = 0.5;
    /** One that was worth this much, and by less than that share, is not (guess: four standard errors). */
    private static final double PLAIN_K = 2 * SURE_K;
    private static final double LEAVES = 0.25;
    /** What was long ago counts less (guess: two or three cycles of a relay), s. */
    private static final double FORGOTTEN_S = 1_800;
    /** Its own cut-out has been switched if that varied by more, s (a rounding error is far less). */
    private static final double SWITCHED_S = 1e-6;

    /** A step more. @param dtS its length, s  @param f what would be felt, 0..1  @param takenK the warming */
    Fit and(double dtS, double f, double takenK) {
        return and(dtS, f, 1, takenK);
    }

    /** The same. @param o what could be felt of its own, 0..1 */
    Fit and(double dtS, double f, double o, double takenK) {
        return new Fit(seconds + dtS, other.and(dtS, f, takenK), own.and(dtS, o, takenK), both + f * o * dtS,
                gainK + takenK);
    }

    /** The same, so much later. */
    Fit fading(double dtS) {
        double keep = Math.max(0, 1 - dtS / FORGOTTEN_S);
        return new Fit(seconds * keep, other.times(keep), own.times(keep), both * keep, gainK * keep);
    }

    /** The same steps for another heater, which was off in them. */
    Fit ofAnother() {
        return new Fit(seconds, Sum.NONE, own, 0, gainK);
    }

    /** By how much the two went together, as a share of what its own was switched. */
    private double shared() {
        double o = own.spread(seconds);
        return o < SWITCHED_S ? 0 : (both - other.once * own.once / seconds) / o;
    }

    private double spread() {
        if (seconds <= 0) {
            return 0;
        }
        double s = shared();
        return Math.max(0, other.spread(seconds) - s * s * own.spread(seconds));
    }

    /** What its switching would have brought, K. @param fullKPerS rise at full power */
    double toldK(double fullKPerS) {
        return fullKPerS * Math.sqrt(spread() * Math.max(0, seconds));
    }

    /** Of its full power, the share with which this water went with it; NaN where it was never switched. */
    private double share(double fullKPerS) {
        return (other.goesK(gainK, seconds) - shared() * own.goesK(gainK, seconds)) / spread() / fullKPerS;
    }

    /** Whether this water went with it, for what that is worth. */
    boolean follows(double fullKPerS) {
        return share(fullKPerS) > FOLLOWS;
    }

    /** Whether it surely did. */
    boolean surelyFollows(double fullKPerS) {
        return toldK(fullKPerS) >= PLAIN_K && follows(fullKPerS);
    }

    /** Whether it surely did not. */
    boolean surelyLeaves(double fullKPerS) {
        return toldK(fullKPerS) >= PLAIN_K && share(fullKPerS) < LEAVES;
    }
}
