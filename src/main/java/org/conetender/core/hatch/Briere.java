package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * The second form of Briere (1999), {@code a·T·(T − Tmin)·(Tmax − T)^(1/m)} (science.md §3.1): smooth
 * between two true zeros. Scaled so that an hour at {@value Rate#ANCHOR_C} °C gives what it gives in
 * {@link Rate#USUAL}; a lot's degree-hours then mean about the same in either.
 *
 * @param tminC lower zero, °C, not below 0
 * @param tmaxC upper zero, °C
 * @param m shapes the fall toward the upper zero; 2 gives Briere's first form
 */
public record Briere(double tminC, double tmaxC, double m) implements Rate {

    /** @throws IllegalArgumentException unless the anchor lies between the zeros and m is above 0 */
    public Briere {
        if (!(tminC >= 0 && tminC < ANCHOR_C && tmaxC > ANCHOR_C && tmaxC < 60 && m > 0)) {
            throw new IllegalArgumentException(Text.of(
                    "0 to %s °C below, %s to 60 °C above and m over 0 are needed, got %s, %s °C and %s",
                    ANCHOR_C, ANCHOR_C, tminC, tmaxC, m));
        }
    }

    @Override
    public double perHour(double waterC) {
        return waterC <= tminC || waterC >= tmaxC ? 0
                : USUAL.perHour(ANCHOR_C) * shape(waterC) / shape(ANCHOR_C);
    }

    private double shape(double c) {
        return c * (c - tminC) * Math.pow(tmaxC - c, 1 / m);
    }

    @Override
    public double baseC() {
        return tminC;
    }

    /** In closed form (science.md §3.1). */
    @Override
    public double bestC() {
        double root = Math.sqrt(4 * m * m * tmaxC * tmaxC + (m + 1) * (m + 1) * tminC * tminC
                - 4 * m * m * tminC * tmaxC);
        return (2 * m * tmaxC + (m + 1) * tminC + root) / (4 * m + 2);
    }

    @Override
    public double ceilingC() {
        return tmaxC;
    }
}
