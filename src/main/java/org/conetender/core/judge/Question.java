package org.conetender.core.judge;

import java.util.List;
import java.util.Map;

/**
 * Whose heater warms this cone? It warms though its own heater is off while others are on. So those are
 * switched off together: water that warms on is warmed by something else, mostly by a switch of its own
 * that is welded. If it stops, they come on again one by one, the most likely first; and the one with which
 * it warms again is switched off once more. Only water that followed three times in a row names a heater,
 * so that a lid, a hand or warm water poured in at the right moment name none. Heat is only ever taken away
 * or given back as its own law wants it, never forced. While the water is too warm its own cut-out is open;
 * what is seen with it open and with it closed is held apart, and what is seen as it changes counts for
 * neither. Immutable.
 *
 * @param part of the question
 * @param suspects cones whose heaters are asked about, the first of them now
 * @param fromC the water when it was asked, °C
 * @param sums of this part
 * @param fit of all parts, for the first suspect, while its own cut-out conducted
 * @param hidden the same while that was open
 */
public record Question(Part part, List<String> suspects, double fromC, Sums sums, Fit fit, Fit hidden) {

    /** The parts of the question and how it may end. */
    public enum Part { ALL_OFF, ONE_ON, ONE_OFF, NAMED, CLOSED }

    /**
     * What came in this part, all at this cone's reading.
     *
     * @param seconds it has lasted
     * @param gainK warming beyond what its own heater and losses explain, K
     * @param leastK what the heater in question would have brought at least, K
     * @param mostK and at most: it may be another's element in this water
     * @param stays what of it does not come out with the heat of those that are off
     */
    record Sums(double seconds, double gainK, double leastK, double mostK, Remainder stays) {
        static final Sums NONE = new Sums(0, 0, 0, 0, Remainder.NONE);

        private Sums and(Seen s, double leastK, double mostK) {
            double full = s.fullKPerS() * s.dtS();
            return new Sums(seconds + s.dtS(), gainK + s.takenK(), this.leastK + leastK * full,
                    this.mostK + mostK * full, stays.and(s.dtS(), s.own().more(), leastK, s.takenK()));
        }

        private Sums later(double dtS) {
            return new Sums(seconds + dtS, gainK, leastK, mostK, stays);
        }
    }

    /**
     * One step.
     *
     * @param dtS its length, s
     * @param takenK warming in it beyond what is understood, K
     * @param fullKPerS rise at full power without losses, K/s
     * @param nowC the water, °C
     * @param own heater of this cone
     * @param felt of each other heater, as a share of its full power, and its watts over this heater's
     */
    record Seen(double dtS, double takenK, double fullKPerS, double nowC, Own own,
                Map<String, Felt> felt) {}

    /**
     * @param felt of what was switched, as a share of its full power, 0..1
     * @param possible what would be felt, were its switch welded, 0..1
     * @param locked whether its heat waits for a person: then it loses none by cooling
     */
    record Own(double felt, double possible, boolean locked) {
        /** What a welded switch would give beyond what is known, 0..1. */
        private double more() {
            return Math.max(0, possible - felt);
        }
    }

    /**
     * @param share of its full power that would be felt here, 0..1
     * @param watts over this cone's
     * @param dead whether it was found to do nothing where it belongs
     */
    record Felt(double share, double watts, boolean dead) {
        static final Felt NONE = new Felt(0, 1, false);

        private double least() {
            return share * Math.min(1, watts);
        }

        private double most() {
            return share * Math.max(1, watts);
        }
    }

    /** Two answers differ by so much when one is taken, K. */
    private static final double SURE_K = Fit.SURE_K;
    /** Beyond the middle of both by so much, it is plain before: a standard error of a gain (guess). */
    private static final double PLAIN_K = 0.03;
    /** A heater may bring so much more than reckoned, and the reading err by so much (guess). */
    private static final double STRONGER = 1.4;
    private static final double OFF_K = 0.12;
    /** A part that tells nothing for so long is given up, s (guess). */
    private static final double PATIENCE_S = 1_200;
    /** Nor is a heater waited for that does not come on, s: its own cone may be warm enough (guess). */
    private static final double ABSENT_S = 600;
    /**
     * Nor is it asked while the water goes on rising: beyond so much, K, and what was on its way, as seconds
     * of full power, it is warmed by a switch of its own (guess: both lags, and an answer).
     */
    private static final double RISEN_K = 0.35;
    private static final double COASTS_S = 100;
    /** With more of its power to be felt its cut-out conducts, and has so for a while, 0..1 (guess). */
    private static final double CONDUCTS = 0.8;
    /** While more of their power than that is felt, those that should be off may be why, 0..1 (guess). */
    private static final double FELT = 0.2;
    /** Its own heat is withheld meanwhile, but no longer than until the water has cooled by so much, K. */
    private static final double COOLED_K = 0.5;

    /** @param suspects heaters that are on, the most likely first; at least one */
    static Question first(List<String> suspects, double nowC) {
        return new Question(Part.ALL_OFF, List.copyOf(suspects), nowC, Sums.NONE, Fit.NONE, Fit.NONE);
    }

    /** Known without asking: it warmed with a heater that did nothing where it belongs. */
    static Question named(String cone, double nowC) {
        return new Question(Part.NAMED, List.of(cone), nowC, Sums.NONE, Fit.NONE, Fit.NONE);
    }

    /** Whether it is not answered yet. */
    public boolean open() {
        return part != Part.NAMED && part != Part.CLOSED;
    }

    /** Whether that cone's heater is to be off for it. */
    public boolean pauses(String cone) {
        return open() && suspects.contains(cone)
                && !(part == Part.ONE_ON && suspects.getFirst().equals(cone));
    }

    /** Whether that cone's heater is in question, or was named. */
    public boolean concerns(String cone) {
        return part != Part.CLOSED && suspects.contains(cone);
    }

    Question after(Seen s) {
        if (!open()) {
            return this;
        }
        double least = 0;
        double most = 0;
        for (String c : part == Part.ALL_OFF ? suspects : suspects.subList(0, 1)) {
            Felt f = s.felt().getOrDefault(c, Felt.NONE);
            least = Math.max(least, f.least());
            most = Math.max(most, f.most());
        }
        Felt first = s.felt().getOrDefault(suspects.getFirst(), Felt.NONE);
        boolean conducts = s.own().possible() > CONDUCTS;
        boolean open = s.own().possible() < FELT;
        Question q = new Question(part, suspects, fromC,
                part != Part.ONE_ON || conducts ? sums.and(s, least, most) : sums.later(s.dtS()),
                conducts ? fit.and(s.dtS(), first.least(), s.takenK()) : fit,
                open ? hidden.and(s.dtS(), first.least(), s.takenK()) : hidden);
        boolean off = part != Part.ALL_OFF || least < FELT;
        if (!s.own().locked() && s.nowC() < fromC - COOLED_K
                || off && s.nowC() > fromC + RISEN_K + COASTS_S * s.fullKPerS()) {
            return q.to(Part.CLOSED);
        }
        return part == Part.ONE_ON ? q.on(first.dead(), s.fullKPerS()) : q.off(s.fullKPerS());
    }

    private Question to(Part next) {
        return new Question(next, suspects, fromC, Sums.NONE, fit, hidden);
    }

    /** Off: water that warms on is warmed by something else. */
    private Question off(double fullKPerS) {
        double told = sums.stays.toldK(fullKPerS);
        if (sums.stays.stayedK() > told / 2 + PLAIN_K) {
            return to(Part.CLOSED);
        }
        if (part == Part.ONE_OFF && hidden.surelyFollows(fullKPerS)) {
            return to(Part.NAMED);
        }
        if (told >= SURE_K) {
            return to(part == Part.ALL_OFF ? Part.ONE_ON
                    : follows(fullKPerS) ? Part.NAMED : Part.CLOSED);
        }
        return sums.seconds > PATIENCE_S ? to(Part.CLOSED) : this;
    }

    /** On again: water that does not warm is not warmed by it, nor is what warms more than it could. */
    private Question on(boolean dead, double fullKPerS) {
        if (dead) {
            // It comes on no more; that it did nothing at its own cone meanwhile says as much.
            return to(Part.NAMED);
        }
        if (sums.gainK > STRONGER * sums.mostK + OFF_K) {
            return to(Part.CLOSED);
        }
        boolean told = sums.leastK > SURE_K / 2 && fit.toldK(fullKPerS) >= Fit.SURE_K;
        // That it did not behind its open cut-out says nothing: what reaches its own heater stops there.
        if (told && fit.follows(fullKPerS) && sums.gainK > sums.leastK / 2
                || hidden.toldToFollow(fullKPerS)) {
            return new Question(Part.ONE_OFF, suspects.subList(0, 1), fromC, Sums.NONE, fit, hidden);
        }
        if (!told && sums.seconds <= (sums.mostK > PLAIN_K ? PATIENCE_S : ABSENT_S)) {
            return this;
        }
        return suspects.size() == 1 ? to(Part.CLOSED)
                : new Question(Part.ONE_ON, suspects.subList(1, suspects.size()), fromC, Sums.NONE,
                        fit.ofAnother(), hidden.ofAnother());
    }

    private boolean follows(double fullKPerS) {
        return fit.toldToFollow(fullKPerS) || hidden.toldToFollow(fullKPerS);
    }
}
