package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * Oxygen in the cone: how much the water holds, how fast the animals use it, and so how long the air
 * may be off. Pure functions; any thread.
 */
public final class Oxygen {

    /** Hatched nauplii per gram when the tin does not say: 200,000 to 300,000 are usual (science.md §4). */
    public static final double USUAL_NAUPLII_PER_G = 250_000;

    /** Air keeps the water at about this share of saturation until it goes off (science.md §7.3). */
    private static final double SATURATION_AT_START = 0.9;

    /** Below it nauplii are at risk, mg/L (science.md §5 and §7.3). */
    private static final double CRITICAL_MG_PER_L = 2;

    /** The settled layer is far denser than the mean: this share of the whole-volume time (§7.3). */
    public static final double SHARE_OF_WHOLE_VOLUME_TIME = 0.6;

    /** How fast air makes good what is missing, 1/h: 4 to 5 with a mere 0.1 vvm (science.md §7.3). */
    private static final double KLA_PER_H = 4.5;

    /** Highest uptake seen, µg O₂ per mg dry weight and hour at 30 °C: 0.66 µmol (science.md §7.1). */
    private static final double UPTAKE_AT_30C = 0.66 * 31.9988;

    /** Fall below 30 °C; 2 is cautious there, the crude figure over 0 to 30 °C is 2.8 (science.md §7.1). */
    private static final double Q10 = 2;

    /** Dry weight of one instar I nauplius in mg: 2.0 µg (science.md §7.3, among 1.6 to 2.5 of §4). */
    private static final double NAUPLIUS_MG = 2.0e-3;

    private static final double ZERO_K = 273.15;

    private Oxygen() {}

    /**
     * What is in the cone.
     *
     * @param cystsG dry cyst product, g
     * @param litres water, L
     * @param ppt salinity, g/kg
     * @param naupliiPerGram animals a gram gives in the end; {@link #USUAL_NAUPLII_PER_G} as a guess
     * @param hatchedShare how many of them breathe, 0..1: the high end of the forecast, 1 at stocking
     */
    public record Charge(double cystsG, double litres, double ppt, double naupliiPerGram,
                         double hatchedShare) {

        /** @throws IllegalArgumentException if a figure is not one that a cone can hold */
        public Charge {
            boolean possible = cystsG >= 0 && litres > 0 && ppt >= 0 && naupliiPerGram >= 0
                    && hatchedShare >= 0 && hatchedShare <= 1;
            if (!possible) {
                throw new IllegalArgumentException(
                        Text.of("no cone holds %s g of cysts at %s/g, %s hatched, in %s L of %s ppt",
                        cystsG, naupliiPerGram, hatchedShare, litres, ppt));
            }
        }

        /** Animals in a millilitre, mixed. */
        public double perMl() {
            return cystsG * naupliiPerGram * hatchedShare / (litres * 1000);
        }
    }

    /**
     * Minutes the air may be off for this charge: 0.6 of the time in which the mixed volume falls
     * from 90 % of saturation to 2 mg/L (science.md §7.3). Infinite without animals, 0 when the water
     * holds less than that to begin with. The caller takes the least of it, the configured cap and 12.
     */
    public static double airOffMinutes(Charge charge, double waterC) {
        return SHARE_OF_WHOLE_VOLUME_TIME * wholeVolumeMinutes(charge, waterC);
    }

    /** Minutes in which this charge brings the mixed volume from 90 % of saturation to 2 mg/L. */
    public static double wholeVolumeMinutes(Charge charge, double waterC) {
        double start = SATURATION_AT_START * mgPerL(charge.ppt(), waterC);
        return wholeVolumeMinutes(charge.perMl(), start, waterC);
    }

    /** What is still missing of {@code missing} after so many minutes of air, in the same unit. */
    public static double missingAfterAir(double missing, double minutes) {
        return missing * Math.exp(-KLA_PER_H * minutes / 60);
    }

    /** Minutes of air until only {@code to} is missing of {@code from}; both above 0, in the same unit. */
    public static double minutesOfAir(double from, double to) {
        return Math.max(0, Math.log(from / to) / KLA_PER_H * 60);
    }

    /** Minutes until a mixed volume reaches 2 mg/L. @param startMgPerL oxygen when the air goes off */
    static double wholeVolumeMinutes(double animalsPerMl, double startMgPerL, double waterC) {
        double store = Math.max(0, startMgPerL - CRITICAL_MG_PER_L);
        // µg O₂ per nauplius and hour times animals per mL is mg per L and hour.
        double use = animalsPerMl * uptakeUg(waterC);
        return use > 0 ? store / use * 60 : Double.POSITIVE_INFINITY;
    }

    /** Oxygen one nauplius uses, µg per hour (science.md §7.1). */
    public static double uptakeUg(double waterC) {
        return NAUPLIUS_MG * uptakePerMg(waterC);
    }

    /** µg O₂ per mg dry weight and hour. */
    static double uptakePerMg(double waterC) {
        return UPTAKE_AT_30C * Math.pow(Q10, (waterC - 30) / 10);
    }

    /** Saturation in mg/L by Benson and Krause 1984, moist air of one atmosphere (science.md §7.2). */
    public static double mgPerL(double ppt, double waterC) {
        double t = waterC + ZERO_K;
        double fresh = -139.34411 + 157570.1 / t - 66423080 / (t * t) + 1.2438e10 / (t * t * t)
                - 862194900000.0 / (t * t * t * t);
        return Math.exp(fresh - ppt * (0.017674 - 10.754 / t + 2140.7 / (t * t)));
    }

    /** Saturation in µmol/kg by Garcia and Gordon 1992, Benson and Krause fit (science.md §7.2). */
    public static double micromolPerKg(double ppt, double waterC) {
        double x = Math.log((298.15 - waterC) / (ZERO_K + waterC));
        double fresh = 5.80871 + x * (3.20291 + x * (4.17887 + x * (5.10006
                + x * (-0.0986643 + x * 3.80369))));
        double salt = -7.01577e-3 + x * (-7.70028e-3 + x * (-1.13864e-2 - x * 9.51519e-3));
        return Math.exp(fresh + ppt * salt - 2.75915e-7 * ppt * ppt);
    }
}
