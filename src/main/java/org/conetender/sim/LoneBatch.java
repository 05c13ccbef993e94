package org.conetender.sim;

/**
 * The truth of one batch by itself, for trials: cysts that want for neither air nor light, in water whose
 * temperature somebody else decides.
 */
public final class LoneBatch {

    /** Oxygen that nothing waits for, mg/L. */
    private static final double PLENTY = 7;
    private static final double GRAMS = 1;
    private static final double SLICE_S = 10;
    private static final double HOUR_MS = 3_600_000;
    /** What has not hatched by then never does, h. */
    private static final int GIVEN_UP_H = 200;

    private final Cysts cysts;
    private final Cysts.Around around = new Cysts.Around();
    private double elapsedMs;

    /** @param lot of the cysts  @param speed factor of this batch on the lot's speed, near 1 */
    public LoneBatch(Lot lot, double speed) {
        this.cysts = new Cysts(lot, GRAMS, speed);
        around.oxygen = PLENTY;
        around.lit = true;
    }

    /** Time passes in water of that temperature, °C. */
    public void step(double waterC, double seconds) {
        elapsedMs += seconds * 1_000;
        around.waterC = waterC;
        cysts.step(around, Math.round(elapsedMs), seconds);
    }

    /** Hours from wetting until so many had hatched; NaN when they never had. @param percent 10, 50 or 90 */
    public double hoursTo(int percent) {
        long at = cysts.momentMs(percent);
        return at < 0 ? Double.NaN : at / HOUR_MS;
    }

    /** Share of what can hatch that has hatched, 0..1. */
    public double hatched() {
        return cysts.hatchedFraction();
    }

    /** One batch of the lot, as it is in the mean, held at one temperature until nine in ten have hatched. */
    public static LoneBatch held(Lot lot, double waterC) {
        LoneBatch b = new LoneBatch(lot, 1);
        while (Double.isNaN(b.hoursTo(90)) && b.elapsedMs < GIVEN_UP_H * HOUR_MS) {
            b.step(waterC, SLICE_S);
        }
        return b;
    }
}
