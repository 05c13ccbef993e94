package org.conetender.sim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.conetender.core.Opening;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Lives;
import org.conetender.core.batch.Reports;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;

/**
 * What people have said of each cone, as the disk has it. No book of the daemon's is asked, so that a rule
 * can judge one which forgets too much or keeps too much.
 */
final class Said {

    /** It was said before a rebuilding: nobody knows when, world time. */
    private static final long LONG_AGO_MS = Long.MIN_VALUE / 2;

    private final Rig rig;
    private final Map<String, List<Word>> words = new TreeMap<>();
    private final Map<String, Standing> standing = new HashMap<>();
    /** Cones whose valve was said to be shut, which was set aside; nothing was said of it since. */
    private final Set<String> valveAside = new HashSet<>();
    /** Cones of which nothing was reported since the record was damaged. */
    private final Set<String> unheard = new HashSet<>();
    private final Map<String, Long> settledSeq = new HashMap<>();
    private long beganSeq;
    private long seq;

    /** @param at world time at which it was first seen on the disk, ms */
    private record Word(Fact fact, Ask ask, long at) {}

    /**
     * How a cone stands by what was said.
     *
     * @param water whether there is some in it, that may be heated
     * @param filled whether no cysts are in it yet
     * @param valveShut whether that was said of this filling, and not taken back
     * @param handsMs when hands were said to be in this filling, world time
     * @param touchedMs the same, or when it was topped up
     * @param told what this filling was told to be held at, °C; NaN where an hour is wanted; else empty
     */
    record Standing(boolean water, boolean filled, boolean valveShut, long handsMs, long touchedMs,
                    OptionalDouble told) {
        static final Standing EMPTY = new Standing(false, false, false, LONG_AGO_MS, LONG_AGO_MS,
                OptionalDouble.empty());

        private Standing after(Word w) {
            return switch (w.ask()) {
                case Ask.Did(Step s) -> did(s, w.at());
                // Filled up again it is the same filling.
                case Ask.DidFill _ -> filled ? this
                        : new Standing(true, true, false, LONG_AGO_MS, LONG_AGO_MS, OptionalDouble.empty());
                case Ask.DidStock _ -> new Standing(water, false, valveShut, handsMs, touchedMs, told);
                case Ask.SetSetpoint(double c) -> told(OptionalDouble.of(c));
                case Ask.ReadyBy r when r.hour().isPresent() -> told(OptionalDouble.of(Double.NaN));
                case Ask.ReadyBy _ -> told.isPresent() && Double.isNaN(told.getAsDouble())
                        ? told(OptionalDouble.empty()) : this;
                case Ask.DidStockAsUsual _, Ask.DidCount _, Ask.DidWeigh _, Ask.TinHolds _,
                     Ask.SetUsual _, Ask.Withdraw _,
                     Ask.Acknowledge _, Ask.Shelve _, Ask.Alarms _, Ask.Away _ -> this;
            };
        }

        private Standing did(Step step, long at) {
            return switch (step) {
                case STARTED, DRAINED, CLEANED, ABANDONED ->
                        new Standing(false, false, valveShut, handsMs, touchedMs, told);
                case VALVE_SHUT -> new Standing(water, filled, true, handsMs, touchedMs, told);
                case VALVE_OPEN -> new Standing(water, filled, false, handsMs, touchedMs, told);
                case HANDS_IN -> new Standing(water, filled, valveShut, at, at, told);
                case TOPPED_UP -> new Standing(water, filled, valveShut, handsMs, at, told);
                case FILLED, SALTED, STOCKED, FIRST_SEEN, SETTLE, DRAWING, PART_DRAWN, RINSED, DISINFECTED,
                     TOO_EARLY, RIGHT, LATE, RELAY_EXCHANGED, NONE_SEEN -> this;
            };
        }

        private Standing told(OptionalDouble c) {
            return new Standing(water, filled, valveShut, handsMs, touchedMs, c);
        }
    }

    Said(Rig rig) {
        this.rig = rig;
    }

    /** Reads what became durable in this second. */
    void look() {
        long now = rig.world().clock().elapsedMs();
        for (Fact f : rig.disk().since(seq)) {
            if (f.change() instanceof Change.SetAside a) {
                words.forEach((cone, of) -> of.stream().filter(w -> w.fact().source().equals(a.request())
                        && w.ask().equals(new Ask.Did(Step.VALVE_SHUT))).forEach(_ -> valveAside.add(cone)));
                anew();
                return;
            }
            // A full disk takes it long after it was said.
            Moment clock = rig.world().clock().now();
            heard(f, now - (f.at().sameBoot(clock) ? clock.monoMs() - f.at().monoMs() : 0));
        }
    }

    /** The record lost its end, and nobody has looked since. */
    void damaged() {
        anew();
        for (Cone c : rig.settings().cones()) {
            unheard.add(c.id());
        }
    }

    private void anew() {
        Map<Long, Long> when = new HashMap<>();
        words.values().forEach(of -> of.forEach(w -> when.put(w.fact().seq(), w.at())));
        Set<String> before = Set.copyOf(unheard);
        Set<String> valves = Set.copyOf(valveAside);
        words.clear();
        standing.clear();
        settledSeq.clear();
        seq = 0;
        List<Fact> all = rig.disk().since(0);
        Set<Long> aside = Opening.aside(all);
        all.stream().filter(f -> !aside.contains(f.seq()))
                .forEach(f -> heard(f, when.getOrDefault(f.seq(), LONG_AGO_MS)));
        unheard.addAll(before);
        valveAside.addAll(valves);
        seq = rig.disk().lastSeq();
    }

    private void heard(Fact f, long now) {
        seq = f.seq();
        if (f.change() instanceof Change.Began) {
            beganSeq = seq;
        } else if (f.change() instanceof Change.Moved(String stage, String _) && stage.equals("settling")
                || f.change() instanceof Change.Told(Ask.Did(Step s)) && s == Step.SETTLE) {
            settledSeq.put(f.cone(), seq);
        }
        if (f.change() instanceof Change.Told(Ask ask)) {
            List<Word> of = words.computeIfAbsent(f.cone(), _ -> new ArrayList<>());
            if (ask instanceof Ask.Withdraw) {
                of.reversed().stream().filter(w -> Reports.withdrawable(w.fact())).findFirst()
                        .ifPresent(last -> of.removeIf(w -> w.fact().sameRequest(last.fact())));
            } else {
                of.add(new Word(f, ask, now));
            }
            standing.remove(f.cone());
            if (ask instanceof Ask.Did(Step s) && (s == Step.VALVE_SHUT || s == Step.VALVE_OPEN
                    || s == Step.CLEANED)) {
                valveAside.remove(f.cone());
            }
            if (Lives.reports(ask)) {
                unheard.remove(f.cone());
            }
        }
    }

    /** How that cone stands. */
    Standing of(String cone) {
        return standing.computeIfAbsent(cone, id -> {
            Standing s = Standing.EMPTY;
            for (Word w : words.getOrDefault(id, List.of())) {
                s = s.after(w);
            }
            return s;
        });
    }

    /** Whether its valve was said to be shut, that was set aside, and nothing was said of it since. */
    boolean valveAside(String cone) {
        return valveAside.contains(cone);
    }

    /** Whether nobody has reported how it stands since the record was damaged. */
    boolean unheard(String cone) {
        return unheard.contains(cone);
    }

    /** Whether a separation was begun there in this life of the process. */
    boolean settledInThisLife(String cone) {
        return settledSeq.getOrDefault(cone, 0L) > beganSeq;
    }
}
