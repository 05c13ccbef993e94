package org.conetender.sim;

import org.conetender.core.settings.Cone.HeatKind;

/**
 * A heater as a node of its own: it takes electrical power at once and hands it on with a lag, to the
 * water, to the room, or, when an immersed one is dry, to nothing but air.
 */
final class Element {

    /** How much warmer than the water it is at full power, K (guess; sets its heat capacity). */
    private static final double RISE_K = 20;
    /** How much warmer than the air it would get when dry, K (guess). */
    private static final double DRY_RISE_K = 150;
    /** A mat or bath gives this share to the room (guess). */
    private static final double OUTSIDE_SHARE = 0.2;

    private final boolean immersed;
    private final double watts;
    private final double lagS;
    private double elementC;

    /** @param watts rating; 0 for none  @param lagS time constant in water, s */
    Element(HeatKind kind, double watts, double lagS) {
        this.immersed = kind == HeatKind.IMMERSED;
        this.watts = watts;
        this.lagS = lagS;
        this.elementC = Double.NaN;
    }

    /**
     * One step.
     *
     * @param powerW electrical power now
     * @param waterC around an immersed one; NaN when no water covers it, or there is none to warm
     * @return heat into the water, W
     */
    double step(double powerW, double waterC, double roomC, double seconds) {
        if (watts <= 0) {
            return 0;
        }
        boolean dry = Double.isNaN(waterC);
        if (Double.isNaN(elementC)) {
            elementC = dry ? roomC : waterC;
        }
        double perK = watts / RISE_K;
        double outside = immersed ? 0 : OUTSIDE_SHARE;
        double toWater = dry ? 0 : perK * (1 - outside) * (elementC - waterC);
        double toRoom = (dry ? watts / DRY_RISE_K : perK * outside) * (elementC - roomC);
        elementC += seconds / (perK * lagS) * (powerW - toWater - toRoom);
        return toWater;
    }

    /** Its temperature, °C; the room's before its first step. */
    double degreesC(double roomC) {
        return Double.isNaN(elementC) ? roomC : elementC;
    }
}
