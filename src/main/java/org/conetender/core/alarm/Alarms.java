package org.conetender.core.alarm;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * Which alarms stand, and whom to tell when again: raise, acknowledge, return, repeat. Acknowledging
 * silences; only the end of the cause clears, and for some kinds only once a person has seen them
 * ({@link AlarmKind#standsUntilSeen}). What has no cause any more is shown but never told again.
 *
 * @param standing by key, in order
 * @param seen what a person acknowledged in a life before, while its cause is waited for
 * @param shelves until when people want to hear nothing of these, by key, monotonic ms
 * @param calls when people were called last
 */
public record Alarms(Map<String, Alarm> standing, Seen seen, Map<String, Long> shelves, Calls calls) {

    public static final Alarms NONE = new Alarms(Map.of(), Seen.NOTHING, Map.of(), Calls.NONE);

    /** A cause that stood before the start shows itself this soon after its own delay (guess). */
    static final long SHOWS_MS = 5 * Units.MINUTE_MS;

    /** A cause must be gone this long before its alarm ends, so that it does not flutter (guess). */
    static final long OFF_DELAY_MS = Units.MINUTE_MS;

    /** An acknowledgement that opened no lock for so long was not recorded; a write takes less (guess). */
    static final long UNKEPT_MS = 5 * Units.MINUTE_MS;

    /** A level at its line flutters for so long after it was told to be over (guess). */
    static final long BACK_MS = 10 * Units.MINUTE_MS;

    /** @param alarms acknowledged ones  @param sinceMs waited for since the start, monotonic ms */
    public record Seen(List<Alarm> alarms, long sinceMs) {
        static final Seen NOTHING = new Seen(List.of(), 0);

        /** Whether it has been waited for in vain. A danger is there at once, by its latch or its output. */
        boolean late(Alarm a, long nowMs) {
            return nowMs - sinceMs >= (a.kind().dangerous() ? OFF_DELAY_MS : SHOWS_MS) + a.kind().matureMs();
        }

        Seen without(List<Alarm> some) {
            return some.isEmpty() ? this
                    : new Seen(alarms.stream().filter(a -> !some.contains(a)).toList(), sinceMs);
        }

        Optional<Alarm> of(String key) {
            return alarms.stream().filter(a -> a.key().equals(key)).findFirst();
        }
    }

    /**
     * What the record kept of an alarm that nobody has seen.
     *
     * @param cone its cone
     * @param kind which, one that stands until it is seen
     * @param what in words
     * @param since when its cause began
     */
    public record Kept(String cone, AlarmKind kind, String what, Moment since) {}

    /**
     * After a restart. What nobody has seen stands, untold; what a person has seen is not told as new if it
     * still does.
     *
     * @param acknowledged by cone, the ids of alarms whose end was never seen
     * @param unseen in order
     */
    public static Alarms resumed(Map<String, List<String>> acknowledged, List<Kept> unseen, Moment now) {
        List<Alarm> all = new ArrayList<>();
        for (AlarmKind k : AlarmKind.values()) {
            // What may be silenced for minutes only is told again: it is not known how long it was quiet.
            if (!Again.minutesOnly(k)) {
                acknowledged.forEach((cone, ids) -> {
                    if (ids.contains(k.id())) {
                        all.add(raised(new Cause(k.siteWide() ? "" : cone, k, "", Alarm.Held.BY_CAUSE), now)
                                .with(Alarm.Told.NEVER.seen(now.monoMs())));
                    }
                });
            }
        }
        return new Alarms(Map.of(), new Seen(List.copyOf(all), now.monoMs()), Map.of(), Calls.NONE)
                .filled("", unseen, now);
    }

    private static Alarm raised(Cause c, Moment since) {
        return Alarm.begun(c, since).with(new Alarm.Course(since, OptionalLong.empty(), true));
    }

    /**
     * Something that is wrong now.
     *
     * @param cone empty for the site
     * @param what in words
     * @param held by what
     * @param nearly whether it only keeps up what stands, since its level is not yet back by its deadband
     * @param seen whether it is measured now; else nobody knows whether what was locked off is over
     */
    public record Cause(String cone, AlarmKind kind, String what, Alarm.Held held, boolean nearly,
                        boolean seen) {

        public Cause(String cone, AlarmKind kind, String what, Alarm.Held held) {
            this(cone, kind, what, held, false, true);
        }

        boolean mended() {
            return held == Alarm.Held.ONLY_BY_LATCH;
        }

        String key() {
            return Alarm.key(cone, kind);
        }
    }

    /**
     * @param next the alarms after this tick
     * @param messages of which a person is told now, first or again
     * @param raised those that stand from now on
     * @param over those that ended now
     */
    public record Turn(Alarms next, List<Message> messages, List<Alarm> raised, List<Alarm> over) {

        /** Those of which a person is told now. */
        public List<Alarm> tell() {
            return messages.stream().flatMap(m -> m.alarms().stream()).toList();
        }
    }

    /**
     * One tick.
     *
     * @param found what is wrong now
     * @param now the clock
     */
    public Turn after(List<Cause> found, Moment now) {
        if (found.isEmpty() && standing.isEmpty() && seen.alarms().isEmpty() && calls.many().isEmpty()) {
            return new Turn(this, List.of(), List.of(), List.of());
        }
        List<Cause> causes = new ArrayList<>(found);
        // Nothing begins with a level that is nearly back.
        causes.removeIf(c -> c.nearly() && Optional.ofNullable(standing.get(c.key()))
                .filter(a -> a.course().goneAtMs().isEmpty()).isEmpty());
        Map<String, Alarm> next = new TreeMap<>(standing);
        boolean kept = causes.stream().noneMatch(c -> c.kind() == AlarmKind.RECORD);
        for (Cause c : causes) {
            next.put(c.key(), caused(c, next.get(c.key()), now, kept));
        }
        List<Alarm> over = fade(causes, next, now.monoMs());
        Seen left = left(next);
        List<Alarm> late = left.alarms().isEmpty() ? List.of()
                : left.alarms().stream().filter(a -> left.late(a, now.monoMs())).toList();
        over.addAll(late);
        List<Alarm> raised = new ArrayList<>();
        next.replaceAll((key, a) -> {
            Alarm b = shelved(key, a, now.monoMs());
            // What has not lasted so long and is gone has faded just now.
            boolean grown = !a.raised()
                    && now.monoMs() - a.course().since().monoMs() >= a.kind().onDelayMs();
            Alarm c = grown ? b.with(new Alarm.Course(a.course().since(), OptionalLong.empty(), true)) : b;
            if (grown) {
                raised.add(c);
            }
            return c;
        });
        Incidents incidents = new Incidents(next, now.monoMs());
        incidents.fold();
        List<Message> messages = calls.messages(incidents, next, now.monoMs());
        return new Turn(new Alarms(Collections.unmodifiableMap(next), left.without(late), shelves,
                calls.after(messages, next, now.monoMs())), messages, List.copyOf(raised), over);
    }

    /** @param kept whether an acknowledgement can be recorded now */
    private Alarm caused(Cause c, Alarm known, Moment now, boolean kept) {
        if (known == null || known.goneMs(now.monoMs()) >= OFF_DELAY_MS) {
            // Only its latch is left: so that acknowledgement came too early, in a life before.
            return seen.of(c.key()).isEmpty() ? Alarm.begun(c, now) : raised(c, now).with(c.mended()
                    ? Alarm.Told.NEVER.onceMore(true) : Alarm.Told.NEVER.seen(now.monoMs()));
        }
        // Who acknowledged before the cause was gone has to be told that it is gone now.
        boolean mended = c.mended() && known.acknowledged() && (known.held() != Alarm.Held.ONLY_BY_LATCH
                || kept && now.monoMs() - known.told().acknowledgedAtMs().getAsLong() >= UNKEPT_MS);
        Alarm.Course there = new Alarm.Course(known.course().since(), OptionalLong.empty(),
                known.course().raised());
        if (mended) {
            return anew(c, known).with(there);
        }
        boolean back = back(c, known, now.monoMs());
        // What is over by words that nobody was told may have come again. A set-point moves.
        boolean anew = back || known.told().times() == 0 && !c.mended() && known.held()
                == Alarm.Held.ONLY_BY_LATCH || c.kind() == AlarmKind.OUT_OF_REACH;
        Alarm.Told told = back ? known.told().anew() : known.told();
        return new Alarm(known.cone(), known.kind(), anew ? c.what() : known.what(), c.what(), c.held(),
                there, anew ? told.onceMore(false) : told, known.aside());
    }

    /** A danger that people were told is over is seen to be there again, and does not just flutter. */
    private static boolean back(Cause c, Alarm known, long nowMs) {
        return nowMs - known.told().atMs() >= BACK_MS && known.told().mended() && !c.mended() && c.seen()
                && c.kind().dangerous()
                && (c.kind().mends() || known.told().onceMore());
    }

    /** The same incident, to be told once more: its cause is gone, its latch is not. */
    private static Alarm anew(Cause c, Alarm known) {
        return new Alarm(c.cone(), c.kind(), c.what(), c.what(), Alarm.Held.ONLY_BY_LATCH, known.course(),
                Alarm.Told.NEVER.onceMore(true), known.aside());
    }

    /** On the shelf or back from it; what comes back and still stands is told anew. */
    private Alarm shelved(String key, Alarm a, long nowMs) {
        if (shelves.isEmpty() && !a.shelved()) {
            return a;
        }
        Long until = shelves.get(key);
        boolean now = until != null && nowMs < until;
        Alarm next = a.with(new Alarm.Aside(a.aside().follows(), now ? OptionalLong.of(until)
                : OptionalLong.empty()));
        return a.shelved() && !now && !a.acknowledged()
                ? next.with(Alarm.Told.NEVER.onceMore(a.told().onceMore())) : next;
    }

    /** Each is recognised once; what has not shown itself in time has ended while nobody looked. */
    private Seen left(Map<String, Alarm> next) {
        return seen.alarms().isEmpty() ? seen : new Seen(seen.alarms().stream()
                .filter(a -> !next.containsKey(a.key())).toList(), seen.sinceMs());
    }

    private static List<Alarm> fade(List<Cause> causes, Map<String, Alarm> next, long nowMs) {
        List<Alarm> over = new ArrayList<>();
        Set<String> there = new HashSet<>();
        causes.forEach(c -> there.add(c.key()));
        for (Iterator<Map.Entry<String, Alarm>> all = next.entrySet().iterator(); all.hasNext();) {
            Map.Entry<String, Alarm> e = all.next();
            Alarm a = e.getValue();
            if (there.contains(e.getKey())) {
                continue;
            }
            long gone = a.course().goneAtMs().orElse(nowMs);
            boolean unseen = a.kind().standsUntilSeen() && !a.acknowledged();
            // A latch cannot flutter: once a person has released it, all of it is over.
            boolean released = a.acknowledged() && a.held() != Alarm.Held.BY_CAUSE;
            boolean left = released || a.kind().renamed().filter(k -> there.contains(Alarm.key(a.cone(), k)))
                    .isPresent();
            if (a.raised() && (unseen || !left && nowMs - gone < OFF_DELAY_MS)) {
                e.setValue(a.with(new Alarm.Course(a.course().since(), OptionalLong.of(gone), true)));
            } else {
                all.remove();
                over.add(a);
            }
        }
        over.removeIf(a -> !a.raised());
        return over;
    }

    /** The alarms with these on the shelf. @param until by key, monotonic ms */
    public Alarms shelving(Map<String, Long> until) {
        return until.equals(shelves) ? this : new Alarms(standing, seen, Map.copyOf(until), calls);
    }

    /**
     * The alarms after a person has seen that one, and what its message named with it; unchanged when it does
     * not stand. What only its latch holds waits for an acknowledgement of its own, which ends it: the answer
     * says so.
     */
    public Alarms acknowledged(String cone, String id, long nowMs) {
        Alarm a = standing.get(cone + "/" + id);
        if (a == null) {
            return this;
        }
        Map<String, Alarm> next = new TreeMap<>(standing);
        next.put(a.key(), a.with(a.told().seen(nowMs)));
        for (Alarm f : named(a)) {
            boolean locks = f.held() == Alarm.Held.ONLY_BY_LATCH && !f.acknowledged();
            next.put(f.key(), f.with(locks ? f.told().besides(nowMs) : f.told().seen(nowMs)));
        }
        return new Alarms(Collections.unmodifiableMap(next), seen, shelves, calls);
    }

    /** What the last message of that one named with it, and still follows from it. */
    public List<Alarm> named(Alarm a) {
        return a.told().with().stream().map(standing::get).filter(f -> f != null && f.raised()
                && f.aside().follows().filter(a.key()::equals).isPresent()).toList();
    }

    /**
     * The alarms after that cone was filled anew: what nobody had seen of the batch before is over. Once that
     * is withdrawn it stands again.
     *
     * @param unseen what the record keeps of it now
     */
    public Alarms filled(String cone, List<Kept> unseen, Moment now) {
        Map<String, Alarm> next = new TreeMap<>(standing);
        next.values().removeIf(a -> a.cone().equals(cone) && a.kind().standsUntilSeen() && !a.acknowledged()
                && unseen.stream().noneMatch(u -> u.kind() == a.kind()));
        // Its cause was over long ago: when it comes again that is another incident.
        unseen.forEach(u -> {
            Alarm a = raised(new Cause(u.cone(), u.kind(), u.what(), Alarm.Held.BY_CAUSE), u.since());
            next.putIfAbsent(a.key(), a.with(new Alarm.Course(u.since(),
                    OptionalLong.of(now.monoMs() - OFF_DELAY_MS), true))
                    .with(Alarm.Told.NEVER.again(now.monoMs(), List.of(), Alarm.Way.ALONE, false)));
        });
        return new Alarms(Collections.unmodifiableMap(next), seen, shelves, calls);
    }

    /** That alarm of the list, the cone's own or the site's. */
    public Optional<Alarm> raised(String cone, String id) {
        return raised().stream().filter(a -> a.kind().id().equals(id)
                && (a.cone().isEmpty() || a.cone().equals(cone))).findFirst();
    }

    /** Those that have lasted their delay: the list of alarms. */
    public List<Alarm> raised() {
        List<Alarm> raised = new ArrayList<>();
        for (Alarm a : standing.values()) {
            if (a.raised()) {
                raised.add(a);
            }
        }
        return raised.isEmpty() ? List.of() : Collections.unmodifiableList(raised);
    }
}
