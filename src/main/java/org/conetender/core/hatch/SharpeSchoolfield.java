package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * Development as the work of an enzyme that cold and heat switch off, in Ikemoto's form with the intrinsic
 * optimum for reference (science.md §3.1). It never comes to zero by itself, so it is cut off where cysts are
 * known to rest; scaled so that an hour at {@value Rate#ANCHOR_C} °C gives what it gives in
 * {@link Rate#USUAL}.
 *
 * @param enzyme what makes the curve
 * @param baseC at or below it nothing is gained, °C
 * @param ceilingC at or above it development is arrested, °C
 * @param bestC where the curve is highest between the two, °C
 */
public record SharpeSchoolfield(Enzyme enzyme, double baseC, double ceilingC, double bestC) implements Rate {

    /** Gas constant, cal/(mol·K) (science.md §3.1). */
    private static final double GAS = 1.987;
    private static final double ZERO_K = 273.15;
    /** Golden section, and how often it is applied: 33 K are narrowed to less than a millikelvin. */
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final int TIMES = 24;

    /**
     * @param active enthalpy of activation HA, cal/mol
     * @param cold enthalpy of the switch by cold HL, cal/mol, below 0
     * @param heat enthalpy of the switch by heat HH, cal/mol, above 0
     * @param coldHalfC half is switched off by cold, °C
     * @param heatHalfC half is switched off by heat, °C, above the other
     */
    public record Enzyme(double active, double cold, double heat, double coldHalfC, double heatHalfC) {

        /** @throws IllegalArgumentException if no enzyme is like that */
        public Enzyme {
            if (!(active > 0 && cold < 0 && heat > 0 && coldHalfC < heatHalfC && coldHalfC > -50
                    && heatHalfC < 100)) {
                throw new IllegalArgumentException(Text.of("no enzyme has HA %s, HL %s, HH %s cal/mol and "
                        + "halves at %s and %s °C", active, cold, heat, coldHalfC, heatHalfC));
            }
        }

        /** The share of the enzyme that is neither switched off by cold nor by heat, 0..1. */
        double active(double waterC) {
            double k = waterC + ZERO_K;
            return 1 / (1 + Math.exp(cold / GAS * (1 / (coldHalfC + ZERO_K) - 1 / k))
                    + Math.exp(heat / GAS * (1 / (heatHalfC + ZERO_K) - 1 / k)));
        }

        /** Intrinsic optimum: where most of the enzyme is active, °C (science.md §3.1, T_phi). */
        public double intrinsicC() {
            return (cold - heat) / (GAS * Math.log(-cold / heat) + cold / (coldHalfC + ZERO_K)
                    - heat / (heatHalfC + ZERO_K)) - ZERO_K;
        }

        /** Relative to the rate that an all-active enzyme has at the intrinsic optimum. */
        double speed(double waterC) {
            double k = waterC + ZERO_K;
            double phi = intrinsicC() + ZERO_K;
            return k / phi * Math.exp(active / GAS * (1 / phi - 1 / k)) * active(waterC);
        }
    }

    /** @throws IllegalArgumentException unless base < anchor < ceiling, the best within */
    public SharpeSchoolfield {
        if (!(baseC < ANCHOR_C && ANCHOR_C < ceilingC && bestC >= baseC && bestC <= ceilingC)) {
            throw new IllegalArgumentException(Text.of("base < %s < ceiling is needed, got %s, %s °C",
                    ANCHOR_C, baseC, ceilingC));
        }
    }

    /** That enzyme between those two temperatures, °C; its best is searched for, once. */
    public static SharpeSchoolfield of(Enzyme enzyme, double baseC, double ceilingC) {
        double low = baseC;
        double high = ceilingC;
        for (int i = 0; i < TIMES; i++) {
            double left = high - GOLDEN * (high - low);
            double right = low + GOLDEN * (high - low);
            if (enzyme.speed(left) < enzyme.speed(right)) {
                low = left;
            } else {
                high = right;
            }
        }
        return new SharpeSchoolfield(enzyme, baseC, ceilingC, (low + high) / 2);
    }

    @Override
    public double perHour(double waterC) {
        return waterC <= baseC || waterC >= ceilingC ? 0
                : USUAL.perHour(ANCHOR_C) * enzyme.speed(waterC) / enzyme.speed(ANCHOR_C);
    }
}
