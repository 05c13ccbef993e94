package org.conetender.sim;

/**
 * Properties of salt water and of the air above it (science.md §7.2 and §9). Temperatures come in °C on
 * today's scale; where a formula wants the scale of 1968, the conversion is made here. Pure.
 */
final class Brine {

    /** Specific gas constant of water vapour, J/(kg·K), textbook value. */
    private static final double VAPOUR_J_PER_KG_K = 461.5;
    private static final double T68_PER_T90 = 1.00024;
    private static final double ZERO_K = 273.15;

    private Brine() {}

    /** Density in kg/m³ at one atmosphere, EOS-80 (science.md §9). @param ppt 0 to 42 */
    static double density(double degreesC, double ppt) {
        double t = degreesC * T68_PER_T90;
        double fresh = 999.842594 + t * (6.793952e-2 + t * (-9.095290e-3
                + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
        double linear = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
        double power = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
        return fresh + ppt * linear + ppt * Math.sqrt(ppt) * power + 4.8314e-4 * ppt * ppt;
    }

    /** Specific heat in J/(kg·K) at one atmosphere, UNESCO 1983 (science.md §9). @param ppt 0 to 40 */
    static double specificHeat(double degreesC, double ppt) {
        double t = degreesC * T68_PER_T90;
        double fresh = 4217.4 + t * (-3.720283 + t * (0.1412855 + t * (-2.654387e-3 + t * 2.093236e-5)));
        double linear = -7.64357 + t * (0.1072763 - t * 1.38385e-3);
        double power = 0.1770383 + t * (-4.07718e-3 + t * 5.148e-5);
        return fresh + ppt * linear + ppt * Math.sqrt(ppt) * power;
    }

    /** Heat capacity of this much brine in J/K. */
    static double joulesPerKelvin(double litres, double degreesC, double ppt) {
        return litres / 1_000 * density(degreesC, ppt) * specificHeat(degreesC, ppt);
    }

    /** Oxygen at saturation, mg/L, one atmosphere, moist air; Benson and Krause 1984 (science.md §7.2). */
    static double oxygenMgPerL(double degreesC, double ppt) {
        double k = 1 / (degreesC + ZERO_K);
        double fresh = -139.34411 + k * (157570.1 + k * (-66423080.0 + k * (1.2438e10 - k * 862194900000.0)));
        return Math.exp(fresh - ppt * (0.017674 + k * (-10.754 + k * 2140.7)));
    }

    /** Vapour in saturated air, kg/m³, over brine (science.md §9, formula of es and the salt factor). */
    static double vapourKgPerM3(double degreesC, double ppt) {
        double hPa = 6.112 * Math.exp(17.62 * degreesC / (243.12 + degreesC)) * (1 - 0.000537 * ppt);
        return hPa * 100 / (VAPOUR_J_PER_KG_K * (degreesC + ZERO_K));
    }

    /** Heat taken by evaporation, J/kg (science.md §9). */
    static double latentJPerKg(double degreesC) {
        return 1_000 * (2501 - 2.361 * degreesC);
    }
}
