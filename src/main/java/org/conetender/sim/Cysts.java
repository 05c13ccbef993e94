package org.conetender.sim;

import java.util.Arrays;

/**
 * What really becomes of the cysts of one batch: development, hatching, deaths and the energy that free
 * nauplii burn. Numbers of animals are plain counts as doubles. Advanced in slices of ten seconds.
 */
public final class Cysts {

    /** Dry cysts per gram (science.md §4: 252,678 counted, 275,000 from their mass). */
    static final double PER_GRAM = 265_000;

    private static final double SLICE_S = 10;
    /** Energy burnt per hour at 25 °C (science.md §6), and how it doubles with 10 K. */
    private static final double ENERGY_PER_H = 0.0131;
    private static final double Q10 = 2.4;
    /** A cyst or animal is in danger above this, °C (science.md §1). */
    private static final double LOSS_C = 38;
    /** Guess, none is published (science.md §0): nine in ten are gone after this time at 40 °C… */
    private static final double DECIMAL_AT_40_S = 3_600;
    /** …and ten times quicker for every so many degrees more (guess). */
    private static final double DECIMAL_STEP_K = 3;
    /** Development slows below this oxygen, mg/L, and stands still without any (science.md §1; guess). */
    private static final double ENOUGH_OXYGEN = 1;
    /** Share of the viable that wait for light and get none (science.md §5; guess). */
    private static final double LIGHTLESS_LOSS = 0.1;
    private static final double LIGHT_FROM_S = 3_600;
    private static final double LIGHT_UNTIL_S = 6 * 3_600;
    private static final double LIGHT_NEEDED_S = 600;
    /** Less than this of the mean development is none. */
    private static final double NOTHING = 1e-12;

    private final Lot lot;
    private final double speed;
    private final double[] chain;
    private final long[] momentMs = {-1, -1, -1};
    private double viable;
    private double hatched;
    private double alive;
    private double energy;
    private double died;
    private double drawn;
    private double waitingS;
    private double ageS;
    private double litS;
    private boolean lightJudged;

    /**
     * @param lot the tin
     * @param grams dry product
     * @param speed factor of this batch on the lot's speed, near 1
     */
    Cysts(Lot lot, double grams, double speed) {
        this.lot = lot;
        this.speed = speed;
        this.viable = grams * PER_GRAM * lot.viable();
        this.chain = new double[lot.stages()];
        chain[0] = 1;
    }

    /**
     * Time passes.
     *
     * @param around what surrounds them now
     * @param nowMs the world's time at the end of the step, for the moments of truth
     */
    void step(Around around, long nowMs, double seconds) {
        waitingS += seconds;
        if (around.lit && ageS >= LIGHT_FROM_S && ageS < LIGHT_UNTIL_S) {
            litS += seconds;
        }
        if (waitingS >= SLICE_S) {
            slice(around.waterC, around.oxygen, waitingS);
            for (int i = 0; i < momentMs.length; i++) {
                momentMs[i] = momentMs[i] < 0 && hatched >= 0.1 + 0.4 * i ? nowMs : momentMs[i];
            }
            waitingS = 0;
        }
    }

    /** What surrounds the cysts; one instance is reused, so that a step allocates nothing. */
    static final class Around {
        /** °C. */
        double waterC;
        /** mg/L where they are. */
        double oxygen;
        /** Whether the trigger light reaches them, or daylight where none is fitted. */
        boolean lit;
    }

    private void slice(double waterC, double oxygen, double seconds) {
        ageS += seconds;
        if (!lightJudged && ageS >= LIGHT_UNTIL_S) {
            lightJudged = true;
            viable *= litS >= LIGHT_NEEDED_S ? 1 : 1 - LIGHTLESS_LOSS;
        }
        double breath = Math.clamp(oxygen / ENOUGH_OXYGEN, 0, 1);
        double born = viable * develop(lot.perSecond(waterC) * speed * breath * seconds);
        alive += born;
        energy += born;
        energy *= 1 - seconds / 3_600 * ENERGY_PER_H * Math.pow(Q10, (waterC - 25) / 10);
        if (waterC > LOSS_C) {
            double decimals = seconds / DECIMAL_AT_40_S * Math.pow(10, (waterC - 40) / DECIMAL_STEP_K);
            double keep = Math.pow(10, -decimals);
            viable *= hatched + (1 - hatched) * keep;
            hatched = rescale(keep);
            die(1 - keep);
        }
    }

    /** Moves the chain on by a share of the mean development. @return share that hatched */
    private double develop(double done) {
        double move = Math.min(1, done * chain.length);
        if (move < NOTHING) {
            return 0;
        }
        double out = chain[chain.length - 1] * move;
        for (int i = chain.length - 1; i > 0; i--) {
            chain[i] += move * (chain[i - 1] - chain[i]);
        }
        chain[0] -= move * chain[0];
        hatched += out;
        return out;
    }

    /** Killed cysts leave the reckoning: the share hatched is of those that could and still can. */
    private double rescale(double keep) {
        double left = (1 - hatched) * keep;
        double all = hatched + left;
        for (int i = 0; i < chain.length; i++) {
            chain[i] *= keep / all;
        }
        return hatched / all;
    }

    /** That share of the free animals dies now. */
    void die(double share) {
        double gone = alive * share;
        died += gone;
        alive -= gone;
        energy -= energy * share;
    }

    /** Newly hatched nauplii of other cones are poured in. @param grams of the lot that they came from */
    void join(double grams) {
        double nauplii = grams * PER_GRAM * lot.viable();
        alive += nauplii;
        energy += nauplii;
    }

    /** A person draws off that share of the free animals. @return how many live ones */
    double draw(double share) {
        double out = alive * share;
        drawn += out;
        alive -= out;
        energy -= energy * share;
        return out;
    }

    /** World time at which 10, 50 or 90 % had hatched, ms; -1 when not yet. @param percent one of these */
    public long momentMs(int percent) {
        return momentMs[Arrays.asList(10, 50, 90).indexOf(percent)];
    }

    /** Share of all that can hatch which has hatched, 0 to 1. */
    public double hatchedFraction() {
        return hatched;
    }

    /** Free nauplii alive in the cone. */
    public double alive() {
        return alive;
    }

    /** Share of all that ever hatched which died in the cone, 0 to 1. */
    public double deadFraction() {
        double all = alive + died + drawn;
        return all > 0 ? died / all : 0;
    }

    /** Live nauplii drawn so far. */
    public double drawn() {
        return drawn;
    }

    /** Mean energy of a live nauplius, 1 when newly hatched. */
    public double energy() {
        return alive > 0 ? energy / alive : 1;
    }

    /** Cysts not yet hatched and alive, for their breathing. */
    double unhatched() {
        return viable * (1 - hatched);
    }

    public Lot lot() {
        return lot;
    }
}
