package org.conetender.core.hatch;

import org.conetender.core.settings.Cone;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * A hatch that is wanted at an hour: the one set-point from now on that brings its announced harvest point
 * there. Up to the temperature of fastest development warmer water is never later, and the hours to go are
 * nearly the reciprocal of the set-point's height above the base, so a bracket closes in a few steps. Pure;
 * a forecast for each step, well below a millisecond in all.
 *
 * @param done what the cysts have done so far
 * @param speed the lot
 * @param water now and from now on, its plan's set-point apart
 * @param rate the same that {@code done} was gained with
 */
public record ByHour(Development done, Speed speed, Projection water, Rate rate) {

    /**
     * Where the set-point may be put, °C.
     *
     * @param leastC not below it  @param mostC not above it
     */
    public record Band(double leastC, double mostC) {

        /** Below it the published thresholds disagree too much for hours (science.md §2.3, 22 to 28 °C). */
        static final double LEAST_C = 22;

        /** What a set-point may be in that cone, as far as hatch times are known. */
        public static Band of(Cone.Limits limits) {
            double best = Math.min(limits.mostSetpointC(), Zones.of(limits).rate().bestC());
            return new Band(Math.min(LEAST_C, best), best);
        }
    }

    /** Whether the hour is kept. */
    public enum Reach {
        /** Yes, within {@link #MISS_H}. */
        MET,
        /** No: even at the most it comes later. */
        LATER,
        /** No: even at the least it comes earlier. */
        EARLIER
    }

    /** @param setC set-point, °C  @param readyHours announced at it, from now; infinite for never */
    public record Answer(double setC, double readyHours, Reach reach) {}

    /** An hour is kept by what comes within this time of it, h (*guess*: less than a person is punctual). */
    public static final double MISS_H = 0.25;
    /**
     * What is held stays as it is while it comes so near, h (*guess*), or while one step would bring it no
     * nearer: noise moves no set-point.
     */
    static final double KEEP_H = 4.0 / 60;
    /** In the last half hour water no longer follows a set-point (science.md §9: hours); nothing is moved. */
    static final double FROZEN_H = 0.5;
    /** Set-points are put to a twentieth of a kelvin: finer than any probe shows (science.md §9). */
    private static final double STEP_C = 0.05;
    private static final double CLOSE_H = 1.0 / 60;
    /** Bisections alone would need ten; six to eight are usual. */
    private static final int MOST_STEPS = 100;
    private static final int ORDER = 5;

    /** When it is announced for, at that set-point. */
    public Answer at(double setC, double hours) {
        Projection held = water.at(setC);
        double ready = Forecast.of(done, speed, held, rate).ready().announced();
        return new Answer(setC, ready, ready > hours + MISS_H ? Reach.LATER
                : ready < hours - MISS_H ? Reach.EARLIER : Reach.MET);
    }

    /** The chance that it is at its harvest point by then, 0..1. @param setC °C  @param hours from now */
    public double chance(double setC, double hours) {
        Projection held = water.at(setC);
        Ahead ahead = Ahead.walk(done.degreeHours(), speed.calledReadyAt(), held, rate);
        return Spread.of(done, ahead.there(speed), ahead, ahead::doneLossier).ready(ahead.doneAt(hours));
    }

    /** The set-point for that hour, whatever was held. @param hours from now */
    public Answer solve(double hours, Band band) {
        Answer warm = at(band.mostC(), hours);
        if (warm.readyHours() >= hours) {
            return warm;
        }
        Answer cool = at(band.leastC(), hours);
        if (cool.readyHours() <= hours) {
            return cool;
        }
        // The hours to go are nearly the reciprocal of the height above the base: their reciprocal is nearly
        // straight, and 0 for what never comes.
        double wanted = 1 / Math.max(hours, CLOSE_H);
        double c = new BracketingNthOrderBrentSolver(0, STEP_C / 4, CLOSE_H * wanted * wanted, ORDER).solve(
                MOST_STEPS, setC -> 1 / Math.max(at(setC, hours).readyHours(), CLOSE_H) - wanted, cool.setC(),
                warm.setC());
        return rounded(c, hours, band);
    }

    /** The same, but what is held now stays while it serves. @param heldC °C */
    public Answer solve(double hours, Band band, double heldC) {
        Answer held = at(Math.clamp(heldC, band.leastC(), band.mostC()), hours);
        double oneStepH = hours * STEP_C / Math.max(1, held.setC() - rate.baseC());
        boolean serves = Math.abs(held.readyHours() - hours) <= Math.max(KEEP_H, oneStepH);
        return serves || hours < FROZEN_H ? held : solve(hours, band);
    }

    private Answer rounded(double setC, double hours, Band band) {
        return at(Math.clamp(Math.rint(setC / STEP_C) * STEP_C, band.leastC(), band.mostC()), hours);
    }
}
