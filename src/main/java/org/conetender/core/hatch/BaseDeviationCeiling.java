package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * Base / deviation / ceiling form, in degree-hours instead of a fraction (science.md §3.2): zero up to
 * the base, one degree-hour per hour and kelvin above it, bending down from the deviation temperature
 * to an exact zero at the ceiling.
 *
 * @param tbC base, °C
 * @param tdC deviation, °C, above the base
 * @param tcC ceiling, °C, above the deviation
 */
public record BaseDeviationCeiling(double tbC, double tdC, double tcC) implements Rate {

    /** @throws IllegalArgumentException unless base < deviation < ceiling */
    public BaseDeviationCeiling {
        if (!(tbC < tdC && tdC < tcC && Double.isFinite(tbC) && Double.isFinite(tcC))) {
            throw new IllegalArgumentException(Text.of(
                    "base < deviation < ceiling is needed, got %s, %s, %s °C",
                    tbC, tdC, tcC));
        }
    }

    @Override
    public double perHour(double waterC) {
        if (waterC <= tbC || waterC >= tcC) {
            return 0;
        }
        double linear = waterC - tbC;
        return waterC <= tdC ? linear : linear * (1 - (waterC - tdC) / (tcC - tdC));
    }

    @Override
    public double baseC() {
        return tbC;
    }

    @Override
    public double thresholdAtC(double perHour) {
        return tbC + Math.max(1, perHour);
    }

    /** Beyond the deviation the form is a parabola about the middle of base and ceiling. */
    @Override
    public double bestC() {
        return Math.max(tdC, (tbC + tcC) / 2);
    }

    @Override
    public double ceilingC() {
        return tcC;
    }
}
