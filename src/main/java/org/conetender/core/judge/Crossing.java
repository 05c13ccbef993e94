package org.conetender.core.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Whether the heater of another cone warms this one: two plugs, switches or probes are exchanged, a heater
 * hangs in the wrong cone, or two outputs touch. Watches what this water does beyond what its own heater and
 * losses explain, and asks a {@link Question} when others are on meanwhile. Water that gets too warm over it
 * has its cut-out open until it has cooled. One step is one tick. Immutable.
 *
 * @param levelC what is taken for the reading, °C; NaN before the first
 * @param surplusK unexplained warming that has gathered, K
 * @param others heaters of other cones, as this water would know them
 * @param question that is asked, or how the last one ended; empty before the first
 * @param asked whether this warming has been asked about
 * @param risk that its own switch is welded meanwhile
 */
public record Crossing(double levelC, double surplusK, Map<String, Neighbour> others,
                       Optional<Question> question, boolean asked, Risk risk) {

    /** Nothing is known. */
    public static final Crossing NONE = new Crossing(Double.NaN, 0, Map.of(), Optional.empty(), false,
            Risk.NONE);

    /**
     * What its own heater would do, were its switch welded.
     *
     * @param way what of it could be felt: nothing while the cut-out is open for it
     * @param heldC what the water is held at; where that was lowered, as far as it has cooled yet, °C; NaN
     *     for not known
     * @param tooWarm whether the cut-out is to be open, until it has cooled
     */
    public record Risk(Underway way, double heldC, boolean tooWarm) {
        static final Risk NONE = new Risk(Underway.FULL, Double.NaN, false);
    }

    /** What the second switch in series does. */
    public enum Second {
        /** There is none. */
        NONE,
        CONDUCTS,
        OPEN,
        /** Its heat waits for a person, whatever that switch does meanwhile, if there is one. */
        LOCKED,
        /** It is open to find out whether its own switch is welded: nothing else is asked meanwhile. */
        TELLS
    }

    /** The level takes over the reading within this time, s (as in {@link Watch}). */
    private static final double FOLLOW_S = 8;
    /** Of full power: less is no heater, but losses and a rise that are not known well yet (guess). */
    private static final double IDLE = 0.3;
    /** Reason enough to ask, K: three standard deviations of what noise gathers so (guess). */
    private static final double REASON_K = 0.1;
    /** What is felt of a heater that is suspected, as a share of its full power (guess). */
    private static final double ON = 0.2;
    /** Two heaters that do nothing where they belong are exchanged if the water hints at it, K (guess). */
    private static final double BOTH_DEAD_K = 0.1;
    /** So little of its own heater, known or possible, or of a change in that, hides nothing (guess). */
    private static final double QUIET = 0.1;

    /**
     * One step.
     *
     * @param dtS its length, s
     * @param probeC newly read, °C; NaN when there is nothing new
     * @param own what its own water and heater do
     * @param others heaters of other cones that may be in question, by cone
     */
    public record Seen(double dtS, double probeC, Own own, Map<String, Other> others) {}

    /**
     * @param traits of this cone
     * @param driftKPerS warming without a cause that is allowed for, K/s
     * @param felt of its own heater, 0..1
     * @param roomC around it, °C
     * @param aimC what it is to be held at, °C; NaN for nothing
     * @param suspect whether its watch takes its own switch for welded
     * @param second what its cut-out does
     * @param dead whether its own heater was found to do nothing
     */
    public record Own(Traits traits, double driftKPerS, double felt, double roomC, double aimC,
                      boolean suspect, Second second, boolean dead) {}

    /**
     * @param on whether its switch was closed
     * @param watts of it over this cone's
     * @param dead whether it was found to do nothing where it belongs
     * @param touched whether somebody is at its cone, or it is empty
     */
    public record Other(boolean on, double watts, boolean dead, boolean touched) {}

    /** A step later, of water that is seen and left alone. */
    public Crossing after(Seen s) {
        Traits t = s.own().traits();
        Map<String, Neighbour> feel = felt(s, t.lagS());
        if (Double.isNaN(levelC)) {
            return new Crossing(s.probeC(), 0, feel, question, false, next(s, s.probeC(), false));
        }
        double full = t.riseKPerS();
        double c = levelC + s.dtS() * (full * s.own().felt()
                - t.lossPerS() * (levelC - s.own().roomC()) + s.own().driftKPerS());
        double taken = Double.isNaN(s.probeC()) ? 0 : (s.probeC() - c) * s.dtS() / (FOLLOW_S + s.dtS());
        double surplus = Math.clamp(surplusK + taken - IDLE * full * s.dtS(), 0, 2 * REASON_K);
        double possible = risk.way().felt();
        boolean steady = s.own().felt() < QUIET && (possible < QUIET || possible > 1 - QUIET);
        if (steady) {
            feel.replaceAll((cone, n) -> n.seen(s.dtS(), taken));
        }
        boolean reason = s.own().second() != Second.TELLS && (s.own().suspect() || surplus > REASON_K
                || surelyFollows(feel, full));
        Optional<Question> q = question.map(x -> x.after(new Question.Seen(s.dtS(), taken, full, c + taken,
                new Question.Own(s.own().felt(), possible, s.own().second() == Second.LOCKED),
                shares(feel, s.others()))));
        List<String> on = reason && !asked ? on(feel, full) : List.of();
        boolean asks = !on.isEmpty() && q.filter(x -> x.open()
                || x.part() == Question.Part.NAMED).isEmpty();
        Optional<Question> known = q.filter(x -> x.part() == Question.Part.NAMED)
                .or(() -> dead(s, feel, full).map(o -> Question.named(o, c + taken)));
        Optional<Question> now = known.isPresent() ? known
                : asks ? Optional.of(Question.first(on, c + taken)) : q;
        return new Crossing(c + taken, surplus, feel, now,
                reason && (asked || asks) || q.filter(Question::open).isPresent(),
                next(s, c + taken, now.filter(Question::open).isPresent()));
    }

    private static boolean surelyFollows(Map<String, Neighbour> feel, double full) {
        for (Neighbour n : feel.values()) {
            if (n.fit().surelyFollows(full)) {
                return true;
            }
        }
        return false;
    }

    /** The heater that does nothing where it belongs, and is felt here. */
    private static Optional<String> dead(Seen s, Map<String, Neighbour> feel, double full) {
        for (Map.Entry<String, Other> o : s.others().entrySet()) {
            Fit fit = feel.get(o.getKey()).fit();
            if (o.getValue().dead() && fit.follows(full)
                    && fit.toldK(full) >= (s.own().dead() ? BOTH_DEAD_K : Fit.SURE_K)) {
                return Optional.of(o.getKey());
            }
        }
        return Optional.empty();
    }

    /** @param nowC the water, °C  @param asking whether a question is open */
    private Risk next(Seen s, double nowC, boolean asking) {
        Second second = s.own().second();
        boolean open = second == Second.TELLS || second == Second.OPEN && risk.tooWarm();
        Underway way = risk.way().after(open ? 0 : 1, s.dtS(), s.own().traits().lagS());
        if (Double.isNaN(nowC)) {
            return new Risk(way, risk.heldC(), risk.tooWarm());
        }
        double held = Math.max(s.own().aimC(), Double.isNaN(risk.heldC()) ? nowC
                : Math.min(risk.heldC(), nowC));
        boolean warm = second != Second.NONE && second != Second.LOCKED && nowC > held
                + (risk.tooWarm() ? Judge.NOT_ABOVE_K : Judge.ABOVE_K);
        return new Risk(way, held, warm && (asking || risk.tooWarm()));
    }

    /**
     * A step in which nothing can be told of this water; what was named stays named.
     *
     * @param late whether only its reading is late: else it is touched, still or gone, and what was too warm
     *     is not known to be so any more
     */
    public Crossing unseen(Seen s, boolean late) {
        Map<String, Neighbour> feel = felt(s, s.own().traits().lagS());
        feel.replaceAll((cone, n) -> n.unseen());
        return new Crossing(Double.NaN, 0, feel,
                question.filter(q -> q.part() == Question.Part.NAMED), false,
                late ? next(s, Double.NaN, false) : Risk.NONE);
    }

    private Map<String, Neighbour> felt(Seen s, double lagS) {
        Map<String, Neighbour> next = new LinkedHashMap<>();
        s.others().forEach((cone, o) -> next.put(cone, others.getOrDefault(cone, Neighbour.NONE)
                .after(o, s.dtS(), lagS)));
        return next;
    }

    private static Map<String, Question.Felt> shares(Map<String, Neighbour> feel,
                                                     Map<String, Other> others) {
        Map<String, Question.Felt> shares = new TreeMap<>();
        feel.forEach((cone, w) -> shares.put(cone, new Question.Felt(w.way().felt(), others.get(cone).watts(),
                others.get(cone).dead())));
        return shares;
    }

    /** Those that are felt enough to be in question, the most felt first; none that is surely innocent. */
    private static List<String> on(Map<String, Neighbour> feel, double full) {
        List<String> on = new ArrayList<>(feel.keySet());
        on.removeIf(c -> feel.get(c).way().felt() < ON || feel.get(c).fit().surelyLeaves(full));
        on.sort(Comparator.comparingDouble(c -> -feel.get(c).way().felt()));
        return on;
    }

    /** Whether it is being found out; until then nobody knows what warms this cone. */
    public boolean open() {
        return question.filter(Question::open).isPresent();
    }

    /** Whether it stopped warming when the others were switched off. */
    public boolean stopped() {
        return question.filter(q -> q.part() == Question.Part.ONE_ON || q.part() == Question.Part.ONE_OFF)
                .isPresent();
    }

    /** Whether that other cone's heater is to be off, to see whether it warms this one. */
    public boolean pauses(String cone) {
        return question.isPresent() && question.get().pauses(cone);
    }

    /** Whether that other cone's heater is asked about, or was named. */
    public boolean concerns(String cone) {
        return question.isPresent() && question.get().concerns(cone);
    }

    /** Whether its water has gone with that other heater, be it too weakly to name it. */
    public boolean hintsAt(String cone, Traits t) {
        Neighbour n = others.get(cone);
        return n != null && n.fit().hints(t.riseKPerS());
    }

    /** The cone whose heater warms this one. */
    public Optional<String> warmedBy() {
        return question.filter(q -> q.part() == Question.Part.NAMED).map(q -> q.suspects().getFirst());
    }
}
