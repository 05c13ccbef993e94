package org.conetender.core.heat;

import org.conetender.core.judge.Estimate;

/**
 * How warm a heater that is always on makes its water in the room as it is now.
 *
 * @param likelyC most likely, °C  @param mostC the most that is credible, °C
 */
public record Reach(double likelyC, double mostC) {

    /** Twice what losses are doubted by in a cone that was not seen yet, relative ({@link Estimate}). */
    private static final double LOSS_DOUBT = 0.4;

    /**
     * What the water gains at full power now is seen well. The losses are not; they count only for the way
     * that is left, so this is the surer the nearer the water has come.
     *
     * @param roomC around the cone, °C  @param share of the time in which the heater may be on, 0..1
     */
    public static Reach of(Estimate e, double roomC, double share) {
        double waterC = e.readingC();
        double leftK = (share - e.holdingDuty(waterC, roomC)) * e.traits().riseKPerS()
                / e.traits().lossPerS();
        return new Reach(waterC + leftK,
                waterC + leftK / (leftK > 0 ? 1 - LOSS_DOUBT : 1 + LOSS_DOUBT));
    }
}
