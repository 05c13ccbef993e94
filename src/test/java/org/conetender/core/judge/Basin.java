package org.conetender.core.judge;

import java.util.Random;

/**
 * A cone in these tests' own words, not the daemon's model of it: joules in an element, in water and in a
 * probe's sleeve, tenth by tenth of a second, with the losses straight to the room. It knows the truth;
 * what it shows is noisy and comes in steps.
 */
public final class Basin {

    /** What the heater does with what it is told. */
    public enum Power { OBEYS, WELDED, DEAD }

    /** Where the probe is. */
    public enum Probe { IN_WATER, IN_AIR, FROZEN }

    /** Heat capacity of brine, J/L/K, good to 1 % (science.md §9). */
    public static final double J_PER_L_K = 4_100;
    private static final double STEP_C = 0.0625;
    private static final double NOISE_C = 0.02;
    private static final int TENTHS = 10;
    /** A probe in air takes one to three minutes (science.md §9). */
    private static final double IN_AIR_S = 100;

    /** @param elementS lag of the heater, s  @param probeS of the probe in water, s */
    public record Build(double watts, double litres, double lossWPerK, double elementS, double probeS) {

        /** Two litres with 25 W under a lid, as at Larkmoor. */
        public static final Build USUAL = new Build(25, 2, 1.34, 45, 15);
        /** Much power on little water, behind a slow element: what overshoots most. */
        public static final Build FIERCE = new Build(100, 4, 2, 90, 20);

        public double riseKPerS() {
            return watts / (litres * J_PER_L_K);
        }

        public double lossPerS() {
            return lossWPerK / (litres * J_PER_L_K);
        }

        /** What a configuration says that has the losses wrong by this factor. */
        public Traits configured(double lossFactor) {
            return Traits.nominal(watts, lossWPerK * lossFactor, litres * J_PER_L_K);
        }
    }

    public final Build build;
    public double waterC;
    public double roomC = 20;
    public double lossFactor = 1;
    /** Share of the water that has gone, 0..1. */
    public double gone;
    public Power power = Power.OBEYS;
    public Probe probe = Probe.IN_WATER;
    private final Random noise;
    private double elementW;
    private double sleeveC;
    private double shownC;

    public Basin(Build build, double waterC, long seed) {
        this.build = build;
        this.waterC = waterC;
        this.sleeveC = waterC;
        this.shownC = waterC;
        this.noise = new Random(seed);
    }

    /** One second. @return what the probe shows at its end, °C */
    public double second(boolean on) {
        double watts = power == Power.WELDED || on && power == Power.OBEYS ? build.watts() : 0;
        boolean air = probe == Probe.IN_AIR;
        for (int i = 0; i < TENTHS; i++) {
            double dt = 1.0 / TENTHS;
            elementW += (watts - elementW) * dt / build.elementS();
            double lossW = build.lossWPerK() * lossFactor * (waterC - roomC);
            waterC += (elementW - lossW) * dt / ((1 - gone) * build.litres() * J_PER_L_K);
            sleeveC += ((air ? roomC : waterC) - sleeveC) * dt / (air ? IN_AIR_S : build.probeS());
        }
        double now = Math.rint((sleeveC + NOISE_C * noise.nextGaussian()) / STEP_C) * STEP_C;
        shownC = probe == Probe.FROZEN ? shownC : now;
        return shownC;
    }

    /** Where the probe's sleeve really is, °C. */
    public double sleeveC() {
        return sleeveC;
    }

    /** Drains a share of the water and pours as much of that temperature. */
    public void topUp(double share, double coldC) {
        waterC += share * (coldC - waterC);
    }
}
