package org.conetender.core.judge;

/**
 * How the warming of one cone's water goes with another's heater: a straight line through all steps, so that
 * what warms steadily, a room or a lid, counts for nothing.
 *
 * @param seconds of all steps
 * @param felt sum of what would be felt of that heater, s
 * @param feltTwice sum of its square, s
 * @param gainK sum of the warming that nothing else explains, K
 * @param together sum of the product of both, K
 */
record Fit(double seconds, double felt, double feltTwice, double gainK, double together) {

    static final Fit NONE = new Fit(0, 0, 0, 0, 0);

    /** What its switching must have been worth for an answer, K: four steps of the probe (guess). */
    static final double SURE_K = 0.25;
    /** Water that went with a heater by more than half of what that would bring is warmed by it. */
    private static final double FOLLOWS = 0.5;
    /** By less than this it did not go with it (guess: of 2 L beside 0.5 L a probe still tells so much). */
    private static final double HINTS = 0.2;
    /** One that was worth this much, and by less than that share, is not (guess: four standard errors). */
    private static final double PLAIN_K = 2 * SURE_K;
    private static final double LEAVES = 0.25;
    /** What was long ago counts less (guess: two or three cycles of a relay), s. */
    private static final double FORGOTTEN_S = 1_800;

    /** A step more. @param dtS its length, s  @param f what would be felt, 0..1  @param takenK the warming */
    Fit and(double dtS, double f, double takenK) {
        return new Fit(seconds + dtS, felt + f * dtS, feltTwice + f * f * dtS, gainK + takenK,
                together + f * takenK);
    }

    /** The same, so much later. */
    Fit fading(double dtS) {
        double keep = Math.max(0, 1 - dtS / FORGOTTEN_S);
        return new Fit(seconds * keep, felt * keep, feltTwice * keep, gainK * keep, together * keep);
    }

    /** The same steps for another heater, which was off in them. */
    Fit ofAnother() {
        return new Fit(seconds, 0, 0, gainK, 0);
    }

    private double spread() {
        return seconds <= 0 ? 0 : Math.max(0, feltTwice - felt * felt / seconds);
    }

    /** What its switching would have brought, K. @param fullKPerS rise at full power */
    double toldK(double fullKPerS) {
        return fullKPerS * Math.sqrt(spread() * Math.max(0, seconds));
    }

    /** Of its full power, the share with which this water went with it; NaN where it was never switched. */
    private double share(double fullKPerS) {
        return (together - felt * gainK / seconds) / spread() / fullKPerS;
    }

    /** Whether this water went with it, for what that is worth. */
    boolean follows(double fullKPerS) {
        return share(fullKPerS) > FOLLOWS;
    }

    /** Whether it did at all, if too weakly to be named for it, and that is worth an answer. */
    boolean hints(double fullKPerS) {
        return toldK(fullKPerS) >= SURE_K && share(fullKPerS) > HINTS;
    }

    /** Whether it did, and that is worth an answer. */
    boolean toldToFollow(double fullKPerS) {
        return toldK(fullKPerS) >= SURE_K && follows(fullKPerS);
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
