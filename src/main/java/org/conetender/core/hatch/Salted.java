package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * A rate in water of another salinity: thermal constants grow by {@value #PER_PPT} for each ppt over
 * {@value #USUAL_PPT}, from {@value #LEAST_PPT} to {@value #MOST_PPT} ppt (science.md §2.4). That is derived
 * from three salinities of one strain at one temperature, of which one was another salt: it is weak, and a
 * lot that is always hatched in the same water has taught it anyway. So nobody has it who does not ask for
 * it.
 *
 * @param plain at the usual salinity  @param ppt of the water, g of salt for each kg, not below 0
 */
public record Salted(Rate plain, double ppt) implements Rate {

    static final double PER_PPT = 0.009;
    static final double USUAL_PPT = 30;
    /** Beyond them nothing is said; the factor stays. */
    static final double LEAST_PPT = 10;
    static final double MOST_PPT = 45;

    /** @throws IllegalArgumentException if it is no salinity */
    public Salted {
        if (!(ppt >= 0 && ppt < 1_000)) {
            throw new IllegalArgumentException(Text.of("no water holds %s g of salt in a kilogram", ppt));
        }
    }

    /** Times the thermal constants. */
    double slower() {
        return 1 + PER_PPT * (Math.clamp(ppt, LEAST_PPT, MOST_PPT) - USUAL_PPT);
    }

    @Override
    public double perHour(double waterC) {
        return plain.perHour(waterC) / slower();
    }

    @Override
    public double baseC() {
        return plain.baseC();
    }

    @Override
    public double bestC() {
        return plain.bestC();
    }

    @Override
    public double ceilingC() {
        return plain.ceilingC();
    }

    @Override
    public double thresholdAtC(double perHour) {
        return plain.thresholdAtC(perHour * slower());
    }
}
