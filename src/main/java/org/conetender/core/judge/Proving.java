package org.conetender.core.judge;

import org.conetender.core.unit.Units;

/**
 * The proof test of a heater's switches, before the first heat of a batch. Where a cut-out is fitted, first
 * the heater's own switch is closed alone and then, when what it may have heated has arrived, the cut-out
 * alone; water that warms under the one more than under the other names the switch that did not open. What
 * is compared are the two times, so that room, lid and losses do not enter; and a switch is only named
 * when a second round says the same, so that hands and water poured in name none. With one switch there is
 * nothing to close: off must mean off.
 *
 * <p>Water that warms by itself about as fast as its heater would warm it tells nothing. Then it is watched
 * with everything off, where {@link HeatTrack} and {@link Watch} find two welded switches, and tried anew;
 * after {@link #PATIENCE_MS} the test is given up for an hour, in which little heat is allowed.
 *
 * @param part what is being tried
 * @param forMs how long this part has lasted
 * @param triedMs how long it has been tried in vain
 * @param reading what was read at the ends of this part
 * @param round what this round and the one before have shown
 */
public record Proving(Part part, long forMs, long triedMs, Ends reading, Round round) {

    /** The parts of the test and how it may end. */
    public enum Part {
        /** Everything is off until heat is wanted and the water is calm. */
        WAITING,
        /** The heater's own switch is closed, the cut-out open. */
        HEATER,
        /** Everything is off until what the heater may have given has arrived. */
        BETWEEN,
        /** The cut-out is closed, the heater's own switch open. */
        CUT_OUT,
        /** As between, before another round. */
        AGAIN,
        /** Everything is off, of the only switch that there is. */
        OFF,
        /** Everything is off and the water is watched: it warmed by itself. */
        LOOKING,
        /** It could not be tried; little heat, and another attempt later. */
        UNTESTABLE,
        PASSED,
        CUT_OUT_STUCK,
        HEATER_STUCK;

        /** Whether heat may be given as the law wants, or at low power. */
        public boolean over() {
            return this == PASSED || this == UNTESTABLE;
        }

        public boolean failed() {
            return this == CUT_OUT_STUCK || this == HEATER_STUCK;
        }

        /** Whether what is done to the heater would mislead those who watch it. */
        public boolean misleads() {
            return this == HEATER || this == BETWEEN || this == CUT_OUT || this == AGAIN;
        }
    }

    /** Sums of the first and of the last readings of a part, °C, and their numbers. */
    record Ends(double firstC, int first, double lastC, int last) {
        static final Ends NONE = new Ends(0, 0, 0, 0);

        private double riseK() {
            return lastC / last - firstC / first;
        }
    }

    /**
     * @param heaterK rise while the heater's switch was closed alone, K
     * @param before part that the round before spoke for; {@link Part#PASSED} for none
     */
    record Round(double heaterK, Part before) {
        static final Round FIRST = new Round(0, Part.PASSED);
    }

    /** The test is due. */
    public static final Proving DUE = new Proving(Part.WAITING, 0, 0, Ends.NONE, Round.FIRST);
    /** There is nothing to be tried, or it has been. */
    public static final Proving DONE = new Proving(Part.PASSED, 0, 0, Ends.NONE, Round.FIRST);

    /** A switch that does not open shows so much: three steps of a 12-bit probe, K. */
    private static final double SHOWN_K = 3 * 0.0625;
    /** Half of it, K: beyond what noise and steps make of two means (control.md §2.3: 0.018 rms each). */
    private static final double LIMIT_K = SHOWN_K / 2;
    /** Nominal time constants of heater and probe together, s. */
    private static final double LAGS_S = Traits.USUAL_LAG_S + Underway.PROBE_S;
    /** Readings of so long make the mean at an end, ms (guess: noise of a step evens out). */
    private static final long MEAN_MS = 15 * Units.SECOND_MS;
    /** Room and losses may warm water by so much more, or cool it by so much less, than reckoned (guess). */
    private static final double MORE_WARMING = 1.5;
    private static final double LESS_COOLING = 0.5;
    /** Water that warmed by itself is watched for so long; two welded switches show in half of it (guess). */
    static final long LOOK_MS = 10 * Units.MINUTE_MS;
    /** Tried in vain for so long it is given up (guess: six rounds), and taken up again after as long. */
    static final long PATIENCE_MS = Units.HOUR_MS;

    /**
     * What one step sees.
     *
     * @param dtMs since the last
     * @param water what is believed of it
     * @param may whether the water is calm: in, stirred, not handled; whatever is read proves something
     * @param heater how the heater was set, and what it is
     */
    public record Seen(long dtMs, Belief water, boolean may, Heater heater) {}

    /**
     * @param wanted whether the stage's heat is wanted
     * @param own whether its own switch was closed  @param cutOut whether the cut-out was
     * @param offForMs how long no heat has been given
     * @param plant the rest
     */
    public record Heater(boolean wanted, boolean own, boolean cutOut, long offForMs, Plant plant) {}

    /**
     * @param two whether a cut-out is fitted
     * @param riseKPerS at full power without losses
     * @param roomKPerS by which a room that is measured warms the water, K/s; negative where it cools it
     */
    public record Plant(boolean two, double riseKPerS, double roomKPerS) {

        /** How long each switch is tried: full power shows three steps in it, and both lags pass twice. */
        public long tryMs() {
            return Math.round((SHOWN_K / riseKPerS + 2 * LAGS_S) * Units.SECOND_MS);
        }
    }

    private static final long PAUSE_MS = Math.round(2 * LAGS_S * Units.SECOND_MS);

    /** The test a step later. */
    public Proving after(Seen s) {
        return switch (part) {
            case PASSED, CUT_OUT_STUCK, HEATER_STUCK -> this;
            case UNTESTABLE -> forMs >= PATIENCE_MS ? DUE : lasting(s.dtMs());
            case WAITING, HEATER, BETWEEN, CUT_OUT, AGAIN, OFF, LOOKING -> trying(s);
        };
    }

    /** How long it will still keep all heat off where nothing disturbs it and both switches open, ms. */
    public long leftMs(Plant plant) {
        long one = plant.tryMs();
        long all = plant.two() ? 2 * one + PAUSE_MS : one;
        return Math.max(0, switch (part) {
            case WAITING -> all;
            case HEATER -> all - forMs;
            case BETWEEN -> PAUSE_MS - forMs + one;
            case CUT_OUT, OFF -> one - forMs;
            case AGAIN -> PAUSE_MS - forMs + all;
            case LOOKING -> LOOK_MS - forMs + all;
            case UNTESTABLE, PASSED, CUT_OUT_STUCK, HEATER_STUCK -> 0;
        });
    }

    /** The test where something else is being found out meanwhile: what is not over begins anew. */
    public Proving interrupted() {
        return part.over() || part.failed() ? this
                : new Proving(Part.WAITING, 0, triedMs, Ends.NONE, Round.FIRST);
    }

    private Proving lasting(long dtMs) {
        return new Proving(part, forMs + dtMs, triedMs, reading, round);
    }

    private Proving trying(Seen s) {
        if (!s.may() || !s.heater().wanted() && part == Part.WAITING
                || !(s.water() instanceof Belief.Trusted(double c))) {
            return new Proving(Part.WAITING, 0, triedMs, Ends.NONE, Round.FIRST);
        }
        if (triedMs >= PATIENCE_MS) {
            return new Proving(Part.UNTESTABLE, 0, 0, Ends.NONE, Round.FIRST);
        }
        Proving p = new Proving(part, forMs + s.dtMs(), triedMs + s.dtMs(), reading, round);
        Heater h = s.heater();
        return switch (part) {
            case WAITING -> h.offForMs() < PAUSE_MS ? p : p.to(h.plant().two() ? Part.HEATER : Part.OFF);
            case BETWEEN -> p.forMs < PAUSE_MS ? p : p.to(Part.CUT_OUT);
            case AGAIN -> p.forMs < PAUSE_MS ? p : p.to(Part.HEATER);
            case LOOKING -> p.forMs < LOOK_MS ? p : p.to(Part.WAITING);
            case HEATER, CUT_OUT, OFF -> set(h) ? p.read(c, h.plant()) : to(part);
            case UNTESTABLE, PASSED, CUT_OUT_STUCK, HEATER_STUCK -> this;
        };
    }

    /** Whether the switches were set as this part wants them: a guard, or want of power, may forbid it. */
    private boolean set(Heater h) {
        return h.own() == (part == Part.HEATER) && h.cutOut() == (part == Part.CUT_OUT);
    }

    private Proving to(Part next) {
        return new Proving(next, 0, triedMs, Ends.NONE, round);
    }

    private Proving read(double c, Plant plant) {
        Ends e = forMs <= MEAN_MS ? new Ends(reading.firstC + c, reading.first + 1, 0, 0)
                : forMs > plant.tryMs() - MEAN_MS
                ? new Ends(reading.firstC, reading.first, reading.lastC + c, reading.last + 1) : reading;
        Proving p = new Proving(part, forMs, triedMs, e, round);
        if (forMs < plant.tryMs()) {
            return p;
        }
        // Ticks that came late may have left an end without a reading.
        return e.first == 0 || e.last == 0 ? to(part)
                : p.tried(e.riseK(), plant.roomKPerS() * plant.tryMs() / Units.SECOND_MS);
    }

    /** @param riseK in this part  @param roomK of it by the room, as it is measured */
    private Proving tried(double riseK, double roomK) {
        double most = LIMIT_K + (roomK > 0 ? MORE_WARMING : LESS_COOLING) * roomK;
        if (part == Part.HEATER) {
            return new Proving(Part.BETWEEN, 0, triedMs, Ends.NONE, new Round(riseK, round.before));
        }
        if (part == Part.OFF) {
            return riseK < most ? DONE : to(Part.LOOKING);
        }
        double more = round.heaterK - riseK;
        Part says = more >= LIMIT_K ? Part.CUT_OUT_STUCK : more <= -LIMIT_K ? Part.HEATER_STUCK : Part.PASSED;
        if (says == Part.PASSED) {
            return Math.max(riseK, round.heaterK) < most ? DONE
                    : new Proving(Part.LOOKING, 0, triedMs, Ends.NONE, Round.FIRST);
        }
        return new Proving(says == round.before ? says : Part.AGAIN, 0, triedMs, Ends.NONE,
                new Round(0, says));
    }
}
