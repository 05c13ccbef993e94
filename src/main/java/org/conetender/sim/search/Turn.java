package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.core.Damage;
import org.conetender.core.Opening;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Fits;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Image;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/** Leads the daemon through one move: every second of it is a real tick, and every tick is judged. */
final class Turn {

    /** A process that died is started again after so long; the power stays off for so long. */
    private static final long RESTART_MS = 3 * Units.SECOND_MS;
    private static final long CUT_MS = 15 * Units.MINUTE_MS;
    private static final long BOOT_MS = 20 * Units.SECOND_MS;
    private static final long TRYING_MS = 10 * Units.SECOND_MS;
    /** So many ticks pass at most while nothing changes: 25 min of quiet, or over an hour without a clock. */
    private static final int QUIET_TICKS = 31;
    private static final int CLOCKLESS_TICKS = 75;
    /** So many hours may then pass at once, in which only cysts and deadlines go on. */
    private static final int QUIET_HOURS = 30;

    private final Settings settings;
    private final Daemon daemon;
    private final Rules rules;
    private final List<String> broken = new ArrayList<>();
    private Result last;
    private long ticks;

    Turn(Settings settings, Daemon daemon) {
        this.settings = settings;
        this.daemon = daemon;
        this.rules = new Rules(settings.cones().getFirst(), broken);
    }

    /** A rule of the search's own. */
    void check(boolean holds, String rule, String what) {
        rules.check(holds, rule, what);
    }

    /** Rules that broke since the last call, in words. */
    List<String> takeBroken() {
        List<String> out = List.copyOf(broken);
        broken.clear();
        return out;
    }

    /** Ticks so far. */
    long ticks() {
        return ticks;
    }

    /** The last tick's result. */
    Result last() {
        return last;
    }

    /** Where everything begins: a new daemon, an empty record, a cone that is clean. */
    Node first() {
        Moment now = new Moment("boot-0", 600_000, 1_772_442_000_000L, true);
        Paper paper = Paper.empty(Durable.nothing(settings, Book.empty(settings, now)));
        return begun(new World(now, World.Senses.WELL, paper, Memory.NONE));
    }

    /** After that move. */
    Node after(Node n, Move move) {
        return switch (move) {
            case Move.Says(Ask ask) -> tick(n, Units.SECOND_MS, List.of(request(n, ask)));
            case Move.Misfits _ -> tick(n, Units.SECOND_MS, misfits(n));
            case Move.Turns(Move.Trouble t, boolean _) when t == Move.Trouble.RECORD_DAMAGED ->
                    begun(n.world().turned(t, true).at(n.world().now().plusMs(RESTART_MS))
                            .with(n.world().memory().died(false, true,
                                    n.world().now().monoMs() + RESTART_MS)));
            case Move.Turns(Move.Trouble t, boolean wrong) ->
                    tick(new Node(n.state(), n.world().turned(t, wrong)), Units.SECOND_MS, List.of());
            case Move.Waits(boolean second) -> second ? tick(n, Units.SECOND_MS, List.of()) : quiet(n);
            case Move.Dies(boolean cut, boolean arrived) -> died(n, cut, arrived);
        };
    }

    static Request request(Node n, Ask ask) {
        Moment at = n.world().now();
        return new Request("r-" + at.boot() + "-" + at.monoMs() + "-" + ask.word(),
                Request.Origin.fresh("search", ""), Fitted.CONE, ask);
    }

    /** Steps that do not fit, all of them. */
    static List<Request> misfits(Node n) {
        List<Request> out = new ArrayList<>();
        for (Step s : Step.values()) {
            if (Fits.refusal(n.book(), s).isPresent()) {
                out.add(request(n, new Ask.Did(s)));
            }
        }
        return out;
    }

    /** A tick so long after the last. */
    Node tick(Node n, long dtMs, List<Request> came) {
        Moment now = n.world().now().plusMs(dtMs);
        boolean two = settings.cones().getFirst().fittings().heat().cutOut();
        World w = n.world().at(now).with(n.world().senses().after(n.live().out(), two, dtMs));
        Image image = w.image(n.batch(), n.live().out(), came);
        ticks++;
        last = daemon.step(n.state(), image);
        Node next = new Node(last.next(), w.with(w.paper().after(last.record())));
        Event e = new Event(settings.cones().getFirst(), n, image, last, next);
        Event whole = remembered(e, came);
        rules.look(whole);
        return whole.next();
    }

    /** The event with the memory that includes it. */
    private static Event remembered(Event e, List<Request> came) {
        Memory m = e.memory();
        long now = e.nowMs();
        // A filling speaks of other water: whatever was in it before, is not.
        boolean filled = e.next().batch().number() != e.before().batch().number();
        Map<String, Bell> bells = AlarmRules.heard(e);
        Event said = e.with(new Memory(!e.out().airPause() ? -1 : m.airOffSinceMs() < 0 ? now
                : m.airOffSinceMs(),
                said(came, Step.HANDS_IN) ? now : filled ? -1 : m.handsSinceMs(),
                filled || said(came, Step.VALVE_SHUT) && !e.before().batch().marks().valveShut() ? now
                : m.valveSinceMs(), m.wrongSinceMs(),
                bells, AlarmRules.seenMs(e, bells), m.cuts()));
        Map<Hazard, Long> wrong = new EnumMap<>(Hazard.class);
        for (Hazard h : Hazard.values()) {
            if (h.there(said)) {
                wrong.put(h, m.wrongSinceMs().getOrDefault(h, now));
            }
        }
        return said.with(said.memory().wrong(wrong));
    }

    private static boolean said(List<Request> came, Step step) {
        return came.stream().anyMatch(r -> r.ask() instanceof Ask.Did(Step s) && s == step);
    }

    /** Until something other than the heater's own coming and going changes. */
    private Node quiet(Node n) {
        long was = Likeness.of(n).high();
        long dt = Units.SECOND_MS;
        Node next = n;
        int most = n.world().now().wallTrusted() ? QUIET_TICKS : CLOCKLESS_TICKS;
        for (int i = 0; i < most; i++) {
            next = tick(next, dt, List.of());
            if (Likeness.of(next).high() != was || !broken.isEmpty()) {
                return next;
            }
            // While a switch is tried readings count that are seconds apart.
            dt = Math.min(2 * dt, next.live().judged().proving().part().misleads() ? TRYING_MS
                    : Units.MINUTE_MS);
        }
        for (int i = 0; i < QUIET_HOURS && next.batch().stage().growing(); i++) {
            next = tick(next, Units.HOUR_MS, List.of());
            if (Likeness.of(next).high() != was || !broken.isEmpty()) {
                return next;
            }
        }
        return next;
    }

    private Node died(Node n, boolean cut, boolean arrived) {
        World w = n.world();
        Moment was = w.now();
        long offMs = cut ? CUT_MS + BOOT_MS : RESTART_MS;
        Moment now = cut ? new Moment("boot-" + (w.memory().cuts() + 1), BOOT_MS, was.wallMs() + offMs,
                was.wallTrusted()) : was.plusMs(offMs);
        Set<String> seen = w.paper().untold(arrived).stream().flatMap(f -> f.change()
                instanceof Change.Told(Ask ask) ? AlarmRules.keys(ask, n) : Stream.empty())
                .collect(Collectors.toSet());
        return begun(new World(now, w.senses(), w.paper().died(arrived),
                w.memory().seen(seen, was.monoMs()).died(cut, !n.settled(), now.monoMs())));
    }

    private Node begun(World was) {
        World w = was.with(was.senses().unheard(was.now().monoMs()));
        Durable d = w.paper().durable();
        Paper paper = w.paper().knowing(Damage.facts(d.facts(), d.lost(), w.now()));
        List<Fact> facts = paper.durable().facts();
        List<Fact> opening = Opening.facts(settings, facts, paper.checkpoint(), w.now());
        State state = daemon.begin(facts, paper.checkpoint(), w.now());
        rules.begun(w.with(paper), state);
        return tick(new Node(state, w.with(paper.handed(opening))), 0, List.of());
    }
}
