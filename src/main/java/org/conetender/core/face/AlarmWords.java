package org.conetender.core.face;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.conetender.core.State;
import org.conetender.core.alarm.Again;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.alarm.Message;
import org.conetender.core.batch.Book;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/** Alarms in words: one, many at once, for the second person, and the list of all with their states. */
public final class AlarmWords {

    /** A cause that is gone so long is called over; a contact that chatters comes back before (guess). */
    private static final long SURELY_GONE_MS = 10 * Units.SECOND_MS;

    /** The list while there is nothing in it. */
    public static final String NONE = "No alarm stands.";

    private AlarmWords() {}

    /** An alarm as a person is told it: what, where, since when, what to do; once it is over, that it is. */
    static String alert(Settings s, Alarm a, Moment now) {
        if (!over(a, now)) {
            return where(s, a) + ": " + what(a) + ", since " + since(s, a, now) + with(a) + ". "
                    + a.kind().todo() + " " + acknowledge(a) + ".";
        }
        String until = Sentences.clock(now.wallMs() - a.goneMs(now.monoMs()), zone(s), now.wallMs());
        return where(s, a) + ": over since " + until + ": " + what(a) + ", since " + since(s, a, now) + ".";
    }

    private static String acknowledge(Alarm a) {
        return "To acknowledge: conetender tell " + (a.cone().isEmpty() ? TellLine.SITE : a.cone())
                + " acknowledge " + a.kind().id();
    }

    /** What stays true is not over when its cause is. */
    private static boolean over(Alarm a, Moment now) {
        return a.goneMs(now.monoMs()) >= SURELY_GONE_MS && !a.kind().standsUntilSeen();
    }

    /** What else a person was told of with it. */
    private static String with(Alarm a) {
        List<String> same = new ArrayList<>();
        Map<String, List<String>> others = new LinkedHashMap<>();
        for (String key : a.told().with()) {
            String cone = key.substring(0, key.indexOf('/'));
            String id = key.substring(key.indexOf('/') + 1);
            if (id.equals(a.kind().id())) {
                same.add(cone);
            } else {
                others.computeIfAbsent(id, _ -> new ArrayList<>()).add(cone);
            }
        }
        List<String> parts = new ArrayList<>();
        if (!same.isEmpty()) {
            parts.add("; the same in " + cones(same));
        }
        if (!others.isEmpty()) {
            parts.add("; with it " + others.entrySet().stream().map(e -> e.getKey() + place(e.getValue()))
                    .collect(Collectors.joining(", ")));
        }
        return String.join("", parts);
    }

    private static String place(List<String> cones) {
        return cones.equals(List.of("")) ? "" : " in " + cones(cones);
    }

    private static String cones(List<String> ids) {
        return ids.size() == 1 ? "cone " + ids.getFirst()
                : "cones " + String.join(", ", ids.subList(0, ids.size() - 1)) + " and " + ids.getLast();
    }

    /** Many incidents in one sentence: what cannot wait in words, the rest by name. */
    static String many(Settings s, Message m) {
        Map<AlarmKind, Set<String>> at = new LinkedHashMap<>();
        for (Alarm a : m.alarms()) {
            at.computeIfAbsent(a.kind(), _ -> new LinkedHashSet<>()).add(a.cone());
            a.told().with().forEach(key -> AlarmKind.of(key.substring(key.indexOf('/') + 1))
                    .filter(AlarmKind::dangerous).ifPresent(k -> at.computeIfAbsent(k,
                            _ -> new LinkedHashSet<>()).add(key.substring(0, key.indexOf('/')))));
        }
        String now = at.entrySet().stream().filter(e -> e.getKey().dangerous())
                .map(e -> e.getKey().id() + place(List.copyOf(e.getValue())) + " ("
                        + e.getKey().cause() + ")")
                .collect(Collectors.joining("; "));
        String then = at.entrySet().stream().filter(e -> !e.getKey().dangerous())
                .map(e -> e.getKey().id() + place(List.copyOf(e.getValue())))
                .collect(Collectors.joining("; "));
        return s.site().name() + ": many alarms at once. " + (now.isEmpty() ? "" : "Danger, go now: " + now
                + ". ") + (then.isEmpty() ? "" : (now.isEmpty() ? "First causes: " : "Then: ") + then + ". ")
                + "What to do for each: conetender tell site alarms.";
    }

    /** What the second person is told; empty while there is nothing that nobody answers. */
    static Optional<String> escalated(Settings s, State state, Moment now) {
        List<Alarm> open = state.live().alarms().raised().stream()
                .filter(a -> Again.forSecond(a) && a.active() && !a.acknowledged())
                .filter(a -> a.told().way() != Alarm.Way.NAMED).toList();
        String who = state.book().away().map(Book.Away::helper).or(() -> s.site().second())
                .map(w -> "For " + w + ": nobody").orElse("Nobody");
        return open.isEmpty() ? Optional.empty() : Optional.of(who + " has answered. "
                + open.stream().map(a -> alert(s, a, now)).collect(Collectors.joining(" ")));
    }

    /**
     * Every alarm with its states, what to do about each first cause, and how to acknowledge it: a few lines
     * for each.
     *
     * @param cone empty for all
     */
    public static String list(Settings s, Alarms all, Optional<String> cone, Moment now) {
        List<Alarm> alarms = all.raised().stream().filter(a -> cone.isEmpty() || a.cone().equals(cone.get()))
                .toList();
        return (alarms.isEmpty() ? NONE : listed(s, alarms, now)) + ShelfWords.of(s, all, cone, now);
    }

    private static String listed(Settings s, List<Alarm> alarms, Moment now) {
        return (alarms.size() == 1 ? "1 alarm." : alarms.size() + " alarms.")
                + alarms.stream().map(a -> "\n" + where(s, a) + ", " + a.kind().id() + ": " + what(a)
                        + ", since " + since(s, a, now) + "; " + String.join(", ", states(s, a, now)) + "."
                        + (a.follows() || a.shelved() ? "" : "\n  " + a.kind().todo())
                        + (a.follows() || a.acknowledged() && !a.latched() ? ""
                                : "\n  " + acknowledge(a)))
                        .collect(Collectors.joining());
    }

    /** What only heat shows: while that is locked off, nobody knows whether its cause is mended. */
    private static final Set<AlarmKind> BY_HEAT = Set.of(AlarmKind.NO_EFFECT, AlarmKind.WELDED,
            AlarmKind.SWITCH_STUCK, AlarmKind.WRONG_CONE);

    private static List<String> states(Settings s, Alarm a, Moment now) {
        List<String> out = new ArrayList<>();
        out.add(a.active() ? "active" : BY_HEAT.contains(a.kind()) && a.held() == Alarm.Held.ONLY_BY_LATCH
                ? "the heat is locked off, so that its cause cannot show" : "its cause is over");
        out.add(a.acknowledged() ? "acknowledged" : "not acknowledged");
        if (a.latched()) {
            out.add("latched until acknowledged");
        }
        a.aside().shelvedUntilMs().ifPresent(until -> out.add("shelved until "
                + ShelfWords.until(s, until, now)));
        a.aside().follows().ifPresent(key -> out.add("follows from "
                + key.substring(key.indexOf('/') + 1)
                + (key.startsWith("/") ? "" : " of cone " + key.substring(0, key.indexOf('/')))));
        return out;
    }

    private static String where(Settings s, Alarm a) {
        return Sentences.where(s, a.cone());
    }

    private static String what(Alarm a) {
        return a.what().isEmpty() ? a.kind().id() : a.what();
    }

    private static String since(Settings s, Alarm a, Moment now) {
        return Sentences.clock(a.course().since().wallMs(), zone(s), now.wallMs());
    }

    private static ZoneId zone(Settings s) {
        return s.site().feeding().zone();
    }
}
