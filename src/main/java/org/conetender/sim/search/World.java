package org.conetender.sim.search;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.ConeLive;
import org.conetender.core.batch.Batch;
import org.conetender.core.image.ContactSample;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Image;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Request;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * The truth around the daemon; immutable.
 *
 * @param now when the last tick was
 * @param senses what is wrong with what it is told
 * @param paper its record
 * @param memory what the rules remember
 */
record World(Moment now, Senses senses, Paper paper, Memory memory) {

    /** How warm a hot summer's room keeps the water: above the guard, and above what cysts survive, °C. */
    static final double HOT_C = 32.4;
    static final double KILLING_C = 38.6;
    /** As it is held, and as it comes from a tap, °C. */
    static final double USUAL_C = 27;
    static final double COLD_C = 23;
    /** A 25 W heater in 2 L of brine, K/s, and what such a cone loses for each K above the room, 1/s. */
    private static final double RISE_K_PER_S = 25 / (2 * Units.BRINE_J_PER_L_K);
    private static final double LOSS_PER_S = 1.34 / (2 * Units.BRINE_J_PER_L_K);
    private static final double ROOM_C = 20;
    private static final double TREMBLE_C = 0.01;

    /** How warm the room keeps the water. */
    enum Climate { USUAL, HOT, KILLING }

    /** What the probe does: LATE, its last answer is all there is and grows old; FROZEN, it comes anew. */
    enum Answers { WELL, ABSENT, LATE, FROZEN }

    /**
     * @param lastC what it said when that began, °C; NaN if that was to another life of the process
     * @param sinceMs when that was, monotonic ms
     */
    record Probe(Answers answers, double lastC, long sinceMs) {
        static final Probe WELL = new Probe(Answers.WELL, USUAL_C, 0);
    }

    /**
     * @param probe what it does
     * @param climate how warm the room keeps the water
     * @param waterC the water, °C
     * @param levelLies whether the level contact says the opposite of what is
     * @param noAir whether no air arrives though the pump is on
     * @param unset outputs that cannot be set
     * @param high whether the probe's last digit trembles up in the next tick
     */
    record Senses(Probe probe, Climate climate, double waterC, boolean levelLies, boolean noAir,
                  Set<String> unset, boolean high) {

        static final Senses WELL = new Senses(Probe.WELL, Climate.USUAL, USUAL_C, false, false, Set.of(),
                false);

        Senses water(Climate next, double c) {
            return new Senses(probe, next, c, levelLies, noAir, unset, high);
        }

        /** After so long with these outputs. */
        Senses after(ConeLive.ConeOut out, boolean two, long dtMs) {
            double s = Math.min(dtMs, Units.MINUTE_MS) / 1000.0;
            double c = climate != Climate.USUAL ? waterC
                    : waterC + (out.heat() && (out.cutOut() || !two) ? RISE_K_PER_S * s : 0)
                    - (waterC - ROOM_C) * LOSS_PER_S * s;
            return new Senses(probe, climate, c, levelLies, noAir, unset, !high);
        }

        private Senses unset(String output, boolean wrong) {
            Set<String> next = new TreeSet<>(unset);
            if (wrong) {
                next.add(output);
            } else {
                next.remove(output);
            }
            return new Senses(probe, climate, waterC, levelLies, noAir, Set.copyOf(next), high);
        }

        /** Whether nothing comes from the probe. */
        boolean gone() {
            return probe.answers() == Answers.ABSENT || probe.answers() == Answers.LATE;
        }

        /** What the probe says, °C. */
        double shownC() {
            return probe.answers() == Answers.WELL ? waterC + (high ? TREMBLE_C : 0) : probe.lastC();
        }

        private Senses probe(Answers next, double lastC, long nowMs) {
            return new Senses(new Probe(next, lastC, nowMs), climate, waterC, levelLies, noAir, unset, high);
        }

        /** To a life of the process that begins then: what was said before is not heard again. */
        Senses unheard(long nowMs) {
            return probe.answers() == Answers.LATE ? probe(Answers.LATE, Double.NaN, nowMs) : this;
        }

        /** How many things are wrong. */
        int faults() {
            return (probe.answers() == Answers.WELL ? 0 : 1) + (climate == Climate.USUAL ? 0 : 1)
                    + (levelLies ? 1 : 0) + (noAir ? 1 : 0) + unset.size();
        }
    }

    World with(Senses s) {
        return new World(now, s, paper, memory);
    }

    World with(Paper p) {
        return new World(now, senses, p, memory);
    }

    World with(Memory m) {
        return new World(now, senses, paper, m);
    }

    World at(Moment next) {
        return new World(next, senses, paper, memory);
    }

    int faults() {
        return senses.faults() + (paper.mood() == Paper.Mood.KEEPING ? 0 : 1) + (now.wallTrusted() ? 0 : 1);
    }

    /** With that trouble beginning or ending. */
    World turned(Move.Trouble t, boolean wrong) {
        Senses s = senses;
        return switch (t) {
            case PROBE_GONE -> with(s.probe(wrong ? Answers.ABSENT : Answers.WELL, s.shownC(), now.monoMs()));
            case PROBE_LATE -> with(s.probe(wrong ? Answers.LATE : Answers.WELL, s.shownC(), now.monoMs()));
            case PROBE_FROZEN -> with(s.probe(wrong ? Answers.FROZEN : Answers.WELL, s.shownC(),
                    now.monoMs()));
            case HOT_ROOM -> with(wrong ? s.water(Climate.HOT, HOT_C) : s.water(Climate.USUAL, USUAL_C));
            case KILLING_ROOM -> with(wrong ? s.water(Climate.KILLING, KILLING_C)
                    : s.water(Climate.USUAL, USUAL_C));
            case COLD_WATER -> with(s.water(Climate.USUAL, wrong ? COLD_C : USUAL_C));
            case LEVEL_LIES -> with(new Senses(s.probe, s.climate, s.waterC, wrong, s.noAir, s.unset,
                    s.high));
            case NO_AIR -> with(new Senses(s.probe, s.climate, s.waterC, s.levelLies, wrong, s.unset,
                    s.high));
            case HEAT_UNSET -> with(s.unset("a.heat", wrong));
            case AIR_UNSET -> with(s.unset("a.air-pause", wrong));
            case RECORD_SILENT -> with(paper.mood(wrong ? Paper.Mood.SILENT : Paper.Mood.KEEPING));
            case RECORD_REFUSES -> with(paper.mood(wrong ? Paper.Mood.REFUSING : Paper.Mood.KEEPING));
            case RECORD_DAMAGED -> with(paper.damaged());
            case CLOCK_LOST -> at(new Moment(now.boot(), now.monoMs(), now.wallMs(), !wrong));
        };
    }

    /**
     * What the daemon is told at this moment. @param b the batch as it is taken to be  @param out last set
     */
    Image image(Batch b, ConeLive.ConeOut out, List<Request> came) {
        Answers answers = senses.probe().answers();
        double shownC = senses.shownC();
        Reading reading = answers == Answers.ABSENT ? new Reading.Absent()
                : Double.isNaN(shownC) ? new Reading.NotYet() : new Reading.Value(shownC);
        long ageMs = answers == Answers.LATE ? now.monoMs() - senses.probe().sinceMs() : 0;
        boolean wet = b.stage().hasWater() != senses.levelLies();
        boolean bubbles = !out.airPause() && !senses.noAir() && !b.marks().valveShut();
        return new Image(now, List.of(new ProbeSample(Fitted.PROBE, reading, ageMs)),
                List.of(new ContactSample(Fitted.CONE + ".level", wet ? Level.CLOSED : Level.OPEN),
                        new ContactSample(Fitted.CONE + ".air-proof", bubbles ? Level.CLOSED : Level.OPEN)),
                new Image.Inbox(came, paper.finished()),
                new Image.Pipes(paper.trouble(), Optional.empty(), 0, senses.unset()));
    }
}
