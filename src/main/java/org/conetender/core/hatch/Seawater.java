package org.conetender.core.hatch;

/** Density of salt water at the surface by EOS-80 (science.md §9, UNESCO 44 routines). */
public final class Seawater {

    /** IPTS-68 over ITS-90: the equation was fitted on the older scale. */
    private static final double T68_PER_T90 = 1.00024;

    private Seawater() {}

    /**
     * Density in kg/m³.
     *
     * @param ppt salinity, 0 to 42 g/kg
     * @param waterC -2 to 40 °C
     */
    public static double density(double ppt, double waterC) {
        return density68(ppt, waterC * T68_PER_T90);
    }

    /** The same at a temperature of the older scale, in which the check values are published. */
    static double density68(double s, double t) {
        double pure = 999.842594 + t * (6.793952e-2 + t * (-9.095290e-3 + t * (1.001685e-4
                + t * (-1.120083e-6 + t * 6.536332e-9))));
        double a = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
        double b = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
        return pure + a * s + b * s * Math.sqrt(s) + 4.8314e-4 * s * s;
    }
}
