package org.conetender.core.alarm;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
 */
public record Alarms(Map<String, Alarm> standing, Seen seen) {

    public static final Alarms NONE = new Alarms(Map.of(), Seen.NOTHING);

    /** @param alarms acknowledged ones  @param untilMs waited for until then, monotonic ms */
    public record Seen(List<Alarm> alarms, long untilMs) {
        static final Seen NOTHING = new Seen(List.of(), 0);

        /** Whether it has been waited for in vain. */
        boolean late(Alarm a, long nowMs) {
            return nowMs >= untilMs + a.kind().matureMs();
        }

        Seen without(List<Alarm> some) {
            return new Seen(alarms.stream().filter(a -> !some.contains(a)).toList(), untilMs);
        }

        Optional<Alarm> of(String key) {
            return alarms.stream().filter(a -> a.key().equals(key)).findFirst();
        }
    }

    /** A cause that stood before the start shows itself this soon after its own delay (guess). */
    static final long SHOWS_MS = 5 * Units.MINUTE_MS;

    /** A cause must be gone this long before its alarm ends, so that it does not flutter (guess). */
    static final long OFF_DELAY_MS = Units.MINUTE_MS;

    /**
     * After a restart: nothing stands, but what a person has seen is not told as new if it still does.
     *
     * @param acknowledged by cone, the ids of alarms whose end was never seen
     */
    public static Alarms resumed(Map<String, List<String>> acknowledged, Moment now) {
        List<Alarm> all = new ArrayList<>();
        for (AlarmKind k : AlarmKind.values()) {
            // What may be silenced for minutes only is told again: it is not known how long it was quiet.
            if (k.quietMs() == Long.MAX_VALUE) {
                acknowledged.forEach((cone, ids) -> {
                    if (ids.contains(k.id())) {
                        all.add(new Alarm(k.siteWide() ? "" : cone, k, "", Alarm.Held.BY_CAUSE,
                                new Alarm.Course(now, -1, 1, now.monoMs(), Optional.of(now.monoMs()))));
                    }
                });
            }
        }
        return new Alarms(Map.of(), new Seen(List.copyOf(all), now.monoMs() + SHOWS_MS));
    }

    /**
     * Something that is wrong now.
     *
     * @param cone empty for the site
     * @param what in words
     * @param held by what
     */
    public record Cause(String cone, AlarmKind kind, String what, Alarm.Held held) {
        boolean mended() {
            return held == Alarm.Held.ONLY_BY_LATCH;
        }
    }

    /**
     * @param next the alarms after this tick
     * @param tell those of which a person is told now, first or again
     * @param over those that ended now
     */
    public record Turn(Alarms next, List<Alarm> tell, List<Alarm> over) {}

    /**
     * One tick.
     *
     * @param causes what is wrong now
     * @param now the clock
     */
    public Turn after(List<Cause> causes, Moment now) {
        Map<String, Alarm> next = new TreeMap<>(standing);
        for (Cause c : causes) {
            Alarm known = next.get(Alarm.key(c.cone(), c.kind()));
            Alarm fresh = new Alarm(c.cone(), c.kind(), c.what(), c.held(),
                    new Alarm.Course(now, -1, 0, 0, Optional.empty()));
            Alarm a = known == null
                    ? seen.of(fresh.key()).map(s -> fresh.acknowledged(now.monoMs())).orElse(fresh)
                    : known.gone(now.monoMs()) >= OFF_DELAY_MS ? fresh : known.present(-1);
            // Who acknowledged before the cause was gone has to be told that it is gone now.
            next.put(fresh.key(), c.mended() && !a.mended() && a.acknowledged() ? a.anew(c.what()) : a);
        }
        List<Alarm> over = fade(causes, next, now.monoMs());
        Seen left = left(next);
        List<Alarm> late = left.alarms().stream().filter(a -> left.late(a, now.monoMs())).toList();
        over.addAll(late);
        List<Alarm> tell = new ArrayList<>();
        for (Map.Entry<String, Alarm> e : next.entrySet()) {
            if (due(e.getValue(), now.monoMs())) {
                e.setValue(e.getValue().told(now.monoMs()));
                tell.add(e.getValue());
            }
        }
        return new Turn(new Alarms(java.util.Collections.unmodifiableMap(next),
                left.without(late)), tell, over);
    }

    /** Each is recognised once; what has not shown itself in time has ended while nobody looked. */
    private Seen left(Map<String, Alarm> next) {
        return seen.alarms().isEmpty() ? seen
                : new Seen(seen.alarms().stream().filter(a -> !next.containsKey(a.key())).toList(),
                        seen.untilMs());
    }

    private static List<Alarm> fade(List<Cause> causes, Map<String, Alarm> next, long nowMs) {
        List<Alarm> over = new ArrayList<>();
        for (Alarm a : List.copyOf(next.values())) {
            if (causes.stream().anyMatch(c -> Alarm.key(c.cone(), c.kind()).equals(a.key()))) {
                continue;
            }
            long gone = a.course().goneAtMs() < 0 ? nowMs : a.course().goneAtMs();
            boolean unseen = a.kind().standsUntilSeen() && !a.acknowledged();
            // A latch cannot flutter: once a person has released it, all of it is over.
            boolean released = a.acknowledged() && a.held() != Alarm.Held.BY_CAUSE;
            if (a.raised() && (unseen || !released && nowMs - gone < OFF_DELAY_MS)) {
                next.put(a.key(), a.present(gone));
            } else {
                next.remove(a.key());
                over.add(a);
            }
        }
        over.removeIf(a -> !a.raised());
        return over;
    }

    private static boolean due(Alarm a, long nowMs) {
        Alarm.Course c = a.course();
        if (c.goneAtMs() >= 0) {
            return false;
        }
        if (c.acknowledgedAtMs().isPresent()) {
            long quiet = a.kind().quietMs();
            return quiet != Long.MAX_VALUE && nowMs - c.acknowledgedAtMs().get() >= quiet;
        }
        return a.raised() ? nowMs - c.toldAtMs() >= a.kind().repeatAfterMs(c.told())
                : nowMs - c.since().monoMs() >= a.kind().onDelayMs();
    }

    /** The alarms after a person has seen that one; unchanged when it does not stand. */
    public Alarms acknowledged(String cone, String id, long nowMs) {
        Alarm a = standing.get(cone + "/" + id);
        if (a == null) {
            return this;
        }
        Map<String, Alarm> next = new TreeMap<>(standing);
        next.put(a.key(), a.acknowledged(nowMs));
        return new Alarms(java.util.Collections.unmodifiableMap(next), seen);
    }

    /** The alarms after that cone was filled anew: what nobody had seen of the batch before is over. */
    public Alarms filled(String cone) {
        Map<String, Alarm> next = new TreeMap<>(standing);
        next.values().removeIf(a -> a.cone().equals(cone) && a.kind().standsUntilSeen() && !a.acknowledged());
        return new Alarms(java.util.Collections.unmodifiableMap(next), seen);
    }

    /** Those a person has been told of. */
    public List<Alarm> raised() {
        return standing.values().stream().filter(Alarm::raised).toList();
    }
}
