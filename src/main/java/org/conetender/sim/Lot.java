package org.conetender.sim;

import java.util.SplittableRandom;

/**
 * The truth of one tin of cysts. Speed follows an enzyme that is switched off by cold and by heat (the
 * Schoolfield form of science.md §3.1), smooth everywhere; individuals are spread by a chain of equal
 * stages (a distributed delay, science.md §3.4). The daemon's model has neither form.
 *
 * @param label of the tin
 * @param t50At26H median hours to hatching at 26 °C (science.md §2.3: about 19, log-sd 0.2 between lots)
 * @param stages of the chain; the spread is one over its square root
 * @param viable share of cysts that can hatch (science.md §4)
 * @param enzyme how speed depends on temperature
 */
public record Lot(String label, double t50At26H, int stages, double viable, Enzyme enzyme) {

    /**
     * Energies over the gas constant, K, and temperatures of half inactivation, K.
     *
     * @param activation about 13 kcal/mol; with the cold, doubles between 20 and 28 °C (science.md §2.3)
     * @param coldHalf half switched off by cold
     * @param heatHalf half switched off by heat, a little under the 33 °C of science.md §1
     * @param heatEnergy how sharply heat switches off
     */
    record Enzyme(double activation, double coldHalf, double heatHalf, double heatEnergy) {

        /** Speed in arbitrary measure. @param degreesC any */
        double speed(double degreesC) {
            double k = degreesC + ZERO_K;
            double toReference = 1 / REFERENCE_K - 1 / k;
            double up = k / REFERENCE_K * Math.exp(activation * toReference);
            double cold = Math.exp(COLD_ENERGY * (1 / coldHalf - 1 / k));
            double heat = Math.exp(heatEnergy * (1 / heatHalf - 1 / k));
            return up / (1 + cold + heat);
        }
    }

    private static final double ZERO_K = 273.15;
    private static final double REFERENCE_C = 26;
    private static final double REFERENCE_K = REFERENCE_C + ZERO_K;
    /** Gas constant, cal/(mol·K) (science.md §3.1). */
    private static final double GAS = 1.987;
    /** -45 kcal/mol (guess): brings the low-temperature hours near science.md §2.3. */
    private static final double COLD_ENERGY = -45_000 / GAS;
    private static final double MEDIAN_H = 19.2;
    private static final double LOG_SD = 0.2;

    /** The tin of that label in the world of that seed; always the same one. */
    public static Lot draw(long seed, String label) {
        SplittableRandom r = Seeds.of(seed, "lot/" + label);
        double t50 = MEDIAN_H * Seeds.logFactor(r, LOG_SD);
        // Spread 0.11 to 0.19 for ordinary lots (science.md §2.3: 0.13 to 0.18 for good ones).
        double spread = r.nextDouble(0.11, 0.19);
        int stages = (int) Math.round(1 / (spread * spread));
        Enzyme enzyme = new Enzyme(r.nextDouble(11_500, 14_000) / GAS, ZERO_K + r.nextDouble(12, 15),
                ZERO_K + r.nextDouble(31.5, 32.2), r.nextDouble(380_000, 520_000) / GAS);
        return new Lot(label, t50, stages, r.nextDouble(0.7, 0.95), enzyme);
    }

    /** The same tin, but spread as widely as any lot may be: sigma 0.10 to 0.28 (science.md §2.3). */
    public static Lot drawWide(long seed, String label) {
        Lot l = draw(seed, label);
        double spread = Seeds.of(seed, "spread/" + label).nextDouble(0.10, 0.28);
        return new Lot(label, l.t50At26H, (int) Math.round(1 / (spread * spread)), l.viable, l.enzyme);
    }

    /** Share of the mean development done per second at that temperature. */
    double perSecond(double degreesC) {
        // The median of such a chain is its mean times about 1 - 1/(3·stages).
        double meanS = 3_600 * t50At26H / (1 - 1 / (3.0 * stages));
        return enzyme.speed(degreesC) / enzyme.speed(REFERENCE_C) / meanS;
    }
}
