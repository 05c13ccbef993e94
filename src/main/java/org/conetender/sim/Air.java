package org.conetender.sim;

import java.util.SplittableRandom;
import org.conetender.core.settings.Cone;

/**
 * The air of one cone: pump, pause relay or solenoid, hose, hand valve at the nozzle (or a pinched
 * dip-tube), and the water that runs back up the line when nothing holds it (design.md, back-siphon).
 */
public final class Air {

    /** What can be wrong with it. */
    public enum Fault { NONE, TORN_DIAPHRAGM, HOSE_OFF, PUMP_STOPPED, PROOF_STUCK_CLOSED, PROOF_STUCK_OPEN }

    /** Why water reached the pump. */
    public enum Flood { NOT, COMMANDED, POWER_LOST, PUMP_FAILED }

    /**
     * @param lpm flow of a healthy pump through this cone, L/min
     * @param backMlPerS how fast water runs back when nothing holds it, mL/s (guess 1 to 4)
     * @param lineMl what the line holds before water is in the pump, mL (guess 15 to 40)
     */
    record Build(double lpm, double backMlPerS, double lineMl) {
        /** About 0.5 vvm, as a dense hatch needs (science.md §7.3). */
        static Build draw(double litres, SplittableRandom random) {
            return new Build(litres * random.nextDouble(0.4, 0.6), random.nextDouble(1, 4),
                    random.nextDouble(15, 40));
        }
    }

    /** What is left of the flow when the diaphragm is torn (guess). */
    private static final double TORN = 0.08;
    /** The proof contact closes above this share of the flow (guess). */
    private static final double PROVEN = 0.3;
    /** A contact that proves flow is damped by about this much (guess). */
    private static final double PROOF_S = 2;
    /** A running pump blows the line clear in about this time (guess). */
    private static final double CLEAR_S = 3;

    private final Cone.Air fitted;
    private final Build build;
    private final boolean shared;
    private Fault fault = Fault.NONE;
    private boolean valveOpen;
    private double flowLpm;
    private double proofLpm;
    private double lineMl;
    private double noAirMs;
    /** By what the contact did, and by what was commanded. */
    private final Pause byContact = new Pause();
    private final Pause byCommand = new Pause();
    private boolean drowned;
    private Flood flood = Flood.NOT;

    /** @param shared whether one pump serves all cones through solenoids, open when de-energised */
    Air(Cone.Air fitted, Build build, boolean shared) {
        this.fitted = fitted;
        this.build = build;
        this.shared = shared;
    }

    /**
     * One step.
     *
     * @param powered whether the pump has its supply
     * @param paused whether the relay pauses the pump, or the solenoid of a shared pump is shut
     * @param water whether there is water that could run back
     * @return millilitres that left the cone up the air line
     */
    double step(boolean powered, boolean paused, boolean water, double seconds) {
        boolean turning = powered && fault != Fault.PUMP_STOPPED && !drowned && (shared || !paused);
        boolean through = turning && valveOpen && fault != Fault.HOSE_OFF && !(shared && paused);
        flowLpm = through ? build.lpm * (fault == Fault.TORN_DIAPHRAGM ? TORN : 1) : 0;
        proofLpm += (flowLpm - proofLpm) * Math.min(1, seconds / PROOF_S);
        noAirMs = flowLpm >= PROVEN * build.lpm ? 0 : noAirMs + 1_000 * seconds;
        byContact.step(paused, flowLpm > 0, seconds);
        if (turning) {
            lineMl *= Math.max(0, 1 - seconds / CLEAR_S);
            return 0;
        }
        boolean held = shared && paused;
        if (!water || held || !valveOpen || fault == Fault.HOSE_OFF || !fitted.geometry().canSiphon()) {
            return 0;
        }
        return runBack(seconds, !powered ? Flood.POWER_LOST : paused ? Flood.COMMANDED : Flood.PUMP_FAILED);
    }

    /** What it was commanded in that step, whether or not an output obeyed. */
    void commanded(boolean pause, double seconds) {
        byCommand.step(pause, !pause, seconds);
    }

    /** How long the air is paused now, was paused last, and has come since, ms. */
    private static final class Pause {
        private double nowMs;
        private double lastMs;
        private double airedMs;

        void step(boolean paused, boolean airs, double seconds) {
            if (!paused && nowMs > 0) {
                lastMs = nowMs;
                airedMs = 0;
            }
            airedMs += airs ? 1_000 * seconds : 0;
            nowMs = paused ? nowMs + 1_000 * seconds : 0;
        }
    }

    private double runBack(double seconds, Flood cause) {
        double ml = build.backMlPerS * seconds;
        lineMl += ml;
        if (lineMl >= build.lineMl) {
            drowned = true;
            flood = flood == Flood.NOT ? cause : flood;
        }
        return ml;
    }

    void fail(Fault what) {
        fault = what;
    }

    /** A person opens or shuts the air valve; a dip-tube is pinched or freed instead. */
    public void valve(boolean open) {
        valveOpen = open;
    }

    public boolean valveOpen() {
        return valveOpen;
    }

    /** A drowned pump and line are replaced; {@link #flood} still says that it happened. */
    void replacePump() {
        drowned = false;
        lineMl = 0;
    }

    /** Air that really bubbles through the water, L/min. */
    public double flowLpm() {
        return flowLpm;
    }

    /** Flow of this cone when all is well, L/min. */
    public double healthyLpm() {
        return build.lpm;
    }

    /** For how long hardly any air has come, ms; 0 while it flows. */
    public long offTrueMs() {
        return (long) noAirMs;
    }

    /** For how long the pause contact has held the air off, ms, whatever else is wrong. */
    public long pausedMs() {
        return (long) byContact.nowMs;
    }

    /**
     * Whether air has hardly come since it was last paused for most of a cap (guesses: 5 min after 8).
     *
     * @param seen whether a contact tells that it comes; else all that can be known is what was commanded
     */
    boolean outOfBreath(boolean seen) {
        Pause p = seen ? byContact : byCommand;
        return p.lastMs > 8 * 60_000 && p.airedMs < 5 * 60_000;
    }

    /** What a contact that proves the flow would do. */
    boolean proofClosed() {
        return switch (fault) {
            case PROOF_STUCK_CLOSED -> true;
            case PROOF_STUCK_OPEN -> false;
            case NONE, TORN_DIAPHRAGM, HOSE_OFF, PUMP_STOPPED -> proofLpm >= PROVEN * build.lpm;
        };
    }

    /** Why water first got into a pump of this cone; what happened once is never forgotten. */
    public Flood flood() {
        return flood;
    }
}
