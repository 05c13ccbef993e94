package org.conetender.sim.search;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Message;
import org.conetender.core.guard.Finding;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Units;

/**
 * Rules about the list of alarms and who is called of them: what guards find is listed until it has ended and
 * been seen, and people are called of it until somebody answers. Held against what guards found and what was
 * acknowledged; of an alarm only what it follows is asked.
 */
final class AlarmRules {

    /** A cause must be gone this long before its alarm ends, ms (alarms.md, how an alarm lives). */
    static final long OFF_DELAY_MS = Units.MINUTE_MS;
    /** So many messages may be in the way of one, ms: two in ten minutes, and a minute between two. */
    private static final long IN_THE_WAY_MS = 11 * Units.MINUTE_MS;
    /** Unanswered it is told again: after so long, then more seldom (control.md §7). */
    private static final long FIRST_AGAIN_MS = 15 * Units.MINUTE_MS;
    private static final long AGAIN_MS = 4 * Units.HOUR_MS;
    /** Of want of air people are called so often, five times, before it is told as all else; ms. */
    private static final long SUFFOCATES_MS = 3 * Units.MINUTE_MS;
    private static final int SUFFOCATES_TIMES = 5;
    /** Nothing that is urgent is told again sooner, ms (design.md, dangers). */
    private static final long LEAST_REPEAT_MS = 3 * Units.MINUTE_MS;

    /** After a restart that is waited for which was acknowledged before, ms (guess: its delay, and more). */
    static final long SHOWS_MS = 20 * Units.MINUTE_MS;

    private final Rules rules;

    AlarmRules(Rules rules) {
        this.rules = rules;
    }

    /** What is remembered of each alarm after that tick, by key; the event's memory is that before it. */
    static Map<String, Bell> heard(Event e) {
        Set<String> found = new HashSet<>();
        e.result().findings().get(Fitted.CONE).forEach(f -> f.alarm().map(k -> key(f, k, e))
                .filter(k -> !k.isEmpty()).ifPresent(found::add));
        Map<String, Alarm> listed = listed(e.next());
        if (found.isEmpty() && listed.isEmpty()) {
            return Map.of();
        }
        Set<String> called = e.result().words().alarms().stream().map(Alarm::key).collect(Collectors.toSet());
        Map<String, Bell> out = new TreeMap<>();
        Set<String> keys = new HashSet<>(found);
        keys.addAll(listed.keySet());
        for (String key : keys) {
            Alarm a = listed.get(key);
            boolean alone = a != null && a.aside().follows().filter(listed::containsKey).isEmpty();
            out.put(key, e.memory().bells().getOrDefault(key, Bell.NONE).found(found.contains(key), e.nowMs())
                    .stood(alone, called.contains(key), e.nowMs()));
        }
        return out;
    }

    /** Empty for what only keeps up an alarm, where none is kept up. */
    private static String key(Finding f, AlarmKind kind, Event e) {
        String key = Alarm.key(kind.siteWide() ? "" : Fitted.CONE, kind);
        return f.nearly() && !e.memory().bells().getOrDefault(key, Bell.NONE).there() ? "" : key;
    }

    private static Map<String, Alarm> listed(Node n) {
        Map<String, Alarm> out = new TreeMap<>();
        n.state().live().alarms().raised().forEach(a -> out.put(a.key(), a));
        return out;
    }

    /**
     * When each alarm was acknowledged, or what named it, monotonic ms: what was asked for and refused counts
     * for nothing, but for what no record can keep: that silences all the same ({@code core.Silence}).
     * @param bells after that tick: what was gone before it is forgotten
     */
    static Map<String, Long> seenMs(Event e, Map<String, Bell> bells) {
        Map<String, Long> seen = new TreeMap<>(e.memory().seenMs());
        boolean failing = e.image().pipes().store().isPresent()
                || e.before().world().paper().mood() == Paper.Mood.SILENT;
        e.result().words().replies().stream().filter(r -> r.accepted() || failing)
                .flatMap(r -> keys(r.request().ask(), e.before()))
                .forEach(key -> seen.merge(key, e.nowMs(), Math::max));
        seen.keySet().removeIf(key -> !bells.containsKey(key) && !e.memory().bells().containsKey(key)
                && seen.get(key) < e.nowMs());
        return seen;
    }

    /** Which alarms that acknowledges there, by key: the cone's, the site's, and what they named. */
    static Stream<String> keys(Ask ask, Node n) {
        return ask instanceof Ask.Acknowledge(String id) ? Stream.of("/" + id, Fitted.CONE + "/" + id)
                .flatMap(key -> Stream.concat(Stream.of(key), named(n, key))) : Stream.empty();
    }

    /** What people were told of together with that one, and follows from it yet; no lock is among that. */
    private static Stream<String> named(Node n, String key) {
        Map<String, Alarm> listed = n.state().live().alarms().standing();
        Alarm a = listed.get(key);
        return a == null ? Stream.empty() : a.told().with().stream().filter(k -> listed.containsKey(k)
                && listed.get(k).held() != Alarm.Held.ONLY_BY_LATCH
                && listed.get(k).aside().follows().filter(key::equals).isPresent());
    }

    void look(Event e) {
        Map<String, Alarm> listed = listed(e.next());
        Map<String, Bell> bells = e.memory().bells();
        bells.forEach((key, b) -> {
            if (b.there()) {
                called(e, key, b, listed.containsKey(key));
            }
        });
        listed.forEach((key, a) -> rules.check(!a.acknowledged() || !unseen(e, key, bells.get(key)),
                "seen-by-nobody", "'" + a.kind().id()
                + "' counts as seen, and nobody has acknowledged it since it began"));
        e.result().words().messages().forEach(m -> often(e, m));
        // A filling that became durable ends what nobody had seen; that it was withdrawn since is no matter.
        long durable = e.durable().number();
        if (durable == e.before().batch().number() && durable == e.next().batch().number()) {
            listed(e.before()).values().stream().filter(a -> !listed.containsKey(a.key()))
                    .filter(a -> a.kind().renamed().filter(k -> listed.containsKey(Alarm.key(a.cone(), k)))
                            .isEmpty())
                    .forEach(a -> left(e, a));
        }
    }

    private void called(Event e, String key, Bell b, boolean listed) {
        AlarmKind kind = AlarmKind.of(key.substring(key.indexOf('/') + 1)).orElseThrow();
        rules.check(listed || e.nowMs() - b.foundMs() < kind.onDelayMs(), "alarm-missing",
                "'" + kind.id() + "' is found and in no list");
        long quietMs = b.aloneMs() < 0 || !unseen(e, key, b) ? 0
                : e.nowMs() - Math.max(b.aloneMs(), b.lastMs());
        rules.check(quietMs < withinMs(kind, b), "uncalled", "nobody is called of '" + kind.id() + "'");
    }

    /** One sentence for many names again what waits for an answer, but something in it has to be new. */
    private void often(Event e, Message m) {
        rules.check(m.alarms().stream().anyMatch(a -> !lately(e, a)), "told-often",
                "'" + m.alarms().getFirst().kind().id() + "' was told twice within three minutes");
    }

    /** Unanswered since: who acknowledged too early is told once more when only the lock is left. */
    private static boolean lately(Event e, Alarm a) {
        Bell was = e.before().world().memory().bells().getOrDefault(a.key(), Bell.NONE);
        Bell is = e.memory().bells().get(a.key());
        return was.lastMs() > seenMs(e, a.key()) && was.foundMs() == is.foundMs()
                && was.aloneMs() == is.aloneMs() && e.nowMs() - was.lastMs() < LEAST_REPEAT_MS;
    }

    private void left(Event e, Alarm a) {
        Bell b = e.before().world().memory().bells().getOrDefault(a.key(), Bell.NONE).found(false, e.nowMs());
        boolean over = !a.kind().standsUntilSeen() && e.nowMs() - b.goneMs() >= OFF_DELAY_MS;
        rules.check(over || !unseen(e, a.key(), b), "alarm-gone",
                "'" + a.kind().id() + "' left the list too soon, and nobody had seen it");
    }

    private static boolean unseen(Event e, String key, Bell b) {
        return b.foundMs() > seenMs(e, key);
    }

    private static long seenMs(Event e, String key) {
        return e.memory().seenMs().getOrDefault(key, -1L);
    }

    private static long withinMs(AlarmKind kind, Bell b) {
        if (b.lastMs() < 0) {
            return IN_THE_WAY_MS;
        }
        boolean suffocates = kind == AlarmKind.AIR_FAILED_ANIMALS || kind == AlarmKind.AIR_SHUT_IN;
        return suffocates && b.lastMs() - b.firstMs() < (SUFFOCATES_TIMES - 1) * SUFFOCATES_MS
                ? SUFFOCATES_MS + 2 * Units.MINUTE_MS
                : IN_THE_WAY_MS + (b.lastMs() == b.firstMs() ? FIRST_AGAIN_MS : AGAIN_MS);
    }
}
