package org.conetender.sim;

import java.util.SplittableRandom;

/**
 * Dissolved oxygen, mg/L, in the water at large and in the layer where nauplii gather once the air is off;
 * and how long the animals have been short of it (science.md §7). Truth only: the daemon has no such meter.
 */
public final class Oxygen {

    /**
     * @param criticalMgPerL below it animals suffer, 1 to 2 mg/L (science.md §5, §7.3)
     * @param toleranceS how long they bear it before they begin to die (guess 14 to 22 min: science.md §7.3
     *     says that short hypoxia is survived and that 15 min is the most)
     * @param settleS time constant of gathering below once the air is off (science.md §7: 5 to 10 min)
     */
    record Build(double criticalMgPerL, double toleranceS, double settleS) {
        static Build draw(SplittableRandom random) {
            return new Build(random.nextDouble(1.2, 2), random.nextDouble(14 * 60, 22 * 60),
                    random.nextDouble(120, 240));
        }
    }

    /** Oxygen taken by one nauplius of 2 µg at 30 °C, µg/h (science.md §7.1: 21.1 µg/mg/h). */
    static final double NAUPLIUS_UG_PER_H = 0.0422;
    /** A cyst breathes this share of what a nauplius does (guess). */
    private static final double CYST_SHARE = 0.15;
    /** Uptake holds down to low oxygen, then falls (science.md §7.1); mg/L (guess). */
    private static final double REGULATES_TO = 0.6;
    /** Settled layer: share of the volume (science.md §7.3, about 10:1) and most animals in it (guess). */
    private static final double LAYER = 0.1;
    private static final double GATHER_MOST = 0.85;
    /** Exchange between layer and water at large, s: quiet, and while bubbles stir (guess; §9). */
    private static final double QUIET_S = 900;
    private static final double STIRRED_S = 12;
    /** Through a still surface, 1/s (guess: 0.2 per hour). */
    private static final double SURFACE_PER_S = 0.2 / 3_600;
    /** kLa = 0.32·u^0.7 with u in m/s (science.md §7.3). */
    private static final double KLA = 0.32;
    private static final double KLA_POWER = 0.7;
    /** One in e is left after so long beyond tolerance (guess). */
    private static final double DYING_S = 600;
    private static final double RECOVERY = 3;
    /** Being without oxygen in the whole water, with nowhere to go, is worse by this much (guess). */
    private static final double NOWHERE = 1.5;
    private static final double GATHERED = 0.3;
    private static final double RENEW_S = 20;

    private final Build build;
    private double bulk;
    private double layer;
    private double gathered;
    private double shortS;
    private boolean dying;
    private double saturation = 6.6;
    private double uptakeFactor = 1;
    private double knownFlow = -1;
    private double supplyPerS;
    private double sinceS = RENEW_S;

    Oxygen(Build build) {
        this.build = build;
    }

    /**
     * Minutes without air that nauplii bear at least, by science.md §7.3: 0.6 of the time in which they bring
     * the mixed water from 90 % of saturation to 2 mg/L.
     */
    static double bornMinutes(double animalsPerMl, double waterC, double ppt) {
        double store = Math.max(0, 0.9 * Brine.oxygenMgPerL(waterC, ppt) - 2);
        return 0.6 * 60 * store / (animalsPerMl * uptakeUgPerH(waterC));
    }

    /** What one nauplius takes; Q10 = 2 from 30 °C (science.md §7.1). */
    private static double uptakeUgPerH(double waterC) {
        return NAUPLIUS_UG_PER_H * Math.pow(2, (waterC - 30) / 10);
    }

    /** Fresh water, as it comes from a tap and pail: nearly saturated. */
    void refill(double waterC, double ppt) {
        saturation = Brine.oxygenMgPerL(waterC, ppt);
        bulk = 0.9 * saturation;
        layer = bulk;
        gathered = 0;
        shortS = 0;
        dying = false;
    }

    /**
     * One step.
     *
     * @param water temperature, salt and volume
     * @param flowLpm air that really bubbles through, L/min
     * @param cysts who breathes
     * @return share of the free animals that dies in this step
     */
    double step(Plant water, double flowLpm, Cysts cysts, double seconds) {
        renew(water, flowLpm, seconds);
        double ml = water.litres() * 1_000;
        double animals = cysts.alive() / ml;
        boolean stirred = flowLpm > 0;
        double target = stirred ? 0 : GATHER_MOST;
        gathered += (target - gathered) * seconds / (seconds + (stirred ? STIRRED_S : build.settleS));
        double cystPerS = cysts.unhatched() / ml * CYST_SHARE * uptakeFactor;
        double perS = animals * uptakeFactor;
        double below = perS * (1 + gathered * (1 / LAYER - 1));
        double above = perS * (1 - gathered);
        double mix = seconds / (seconds + (stirred ? STIRRED_S : QUIET_S));
        double mean = bulk * (1 - LAYER) + layer * LAYER;
        bulk = breathe(bulk, above + cystPerS, seconds) + mix * (mean - bulk)
                + (saturation - bulk) * supplyPerS * seconds;
        layer = breathe(layer, below + cystPerS, seconds) + mix * (mean - layer);
        return suffer(seconds);
    }

    private static double breathe(double mgPerL, double perS, double seconds) {
        double takes = perS * seconds * Math.min(1, mgPerL / REGULATES_TO);
        return Math.max(0, mgPerL - takes);
    }

    private double suffer(double seconds) {
        boolean belowShort = here() < build.criticalMgPerL;
        double more = belowShort ? 1 : -RECOVERY;
        if (bulk < build.criticalMgPerL) {
            more += NOWHERE;
        }
        shortS = Math.max(0, shortS + more * seconds);
        dying = shortS > build.toleranceS && belowShort;
        return dying ? 1 - Math.exp(-seconds / DYING_S) : 0;
    }

    private void renew(Plant water, double flowLpm, double seconds) {
        sinceS += seconds;
        if (sinceS < RENEW_S && flowLpm == knownFlow) {
            return;
        }
        sinceS = 0;
        knownFlow = flowLpm;
        double waterC = water.waterC();
        saturation = Brine.oxygenMgPerL(waterC, water.ppt());
        // µg per animal and hour into mg per litre and second.
        uptakeFactor = uptakeUgPerH(waterC) / 3_600;
        // Half the surface is a fair mean section of a cone.
        double section = Vessel.holding(water.litres()).topM2() / 2;
        double velocity = flowLpm / 60_000 / section;
        supplyPerS = SURFACE_PER_S + (velocity > 0 ? KLA * Math.pow(velocity, KLA_POWER) : 0);
    }

    /** Where most of the animals are, mg/L. */
    public double here() {
        return gathered > GATHERED ? layer : bulk;
    }

    /** Share of the animals that has gathered below, 0 to 0.85. */
    double gathered() {
        return gathered;
    }

    /** In the water at large, mg/L. */
    public double bulk() {
        return bulk;
    }

    /** Where nauplii gather when the air is off, mg/L. */
    public double layer() {
        return layer;
    }

    /** Whether animals die for want of it. */
    public boolean dying() {
        return dying;
    }

    /** For how long the animals have been short of oxygen, weighted, s. */
    public double shortS() {
        return shortS;
    }
}
