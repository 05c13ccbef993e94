package org.conetender.core.face;

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
import org.conetender.core.alarm.Message;
import org.conetender.core.batch.Book;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/** Alarms in words: one, many at once, and for the second person. */
public final class AlarmWords {

    /** A cause that is gone so long is called over; a contact that chatters comes back before (guess). */
    private static final long SURELY_GONE_MS = 10 * Units.SECOND_MS;

    /** What these tell, and ask, stays true when their cause is over. */
    private static final Set<AlarmKind> REMAINS = Set.of(AlarmKind.AIR_BACK, AlarmKind.COOKED);

    /** They begin by what becomes of heat, though a cone without a heater has them too. */
    private static final Set<AlarmKind> HEAT_FIRST = Set.of(AlarmKind.ROOM_TOO_WARM, AlarmKind.PROBE,
            AlarmKind.PROBE_UNSTEADY, AlarmKind.PROBE_FROZEN, AlarmKind.DRY);

    /** Of one whose cause is over, a clause. */
    private static final String OVER = "; that is over now";

    /** Of one that only heat shows. */
    private static final String HIDDEN = "; with the heat off that shows no more";

    /** What is left of it, where there is heat. */
    private static final String LOCKED = ", but heat stays locked off until this alarm is acknowledged";

    /** The same for who acknowledged before that. */
    private static final String AGAIN = " once more";

    /** What is asked before such a lock is opened. */
    private static final String FIRST = "Find out first why it came, so that it does not come again.";

    private AlarmWords() {}

    /**
     * An alarm as a person is told it: what, where, since when, what to do; once it is over, that it is. New
     * words would call again: so an acknowledgement changes none of them, and how it is given stands there as
     * a rule, which stays true.
     */
    static String alert(Settings s, Alarm a, Moment now) {
        String seen = " Whoever has seen it says: " + acknowledge(a) + ".";
        if (!over(a, now)) {
            boolean mended = a.told().mended() && a.kind().mends();
            return where(s, a) + ": " + what(a) + (mended || a.told().onceMore() ? left(s, a) : "")
                    + ", since " + hour(s, a.course().since().wallMs())
                    + with(a) + ". "
                    + (mended ? FIRST : todo(s, a.cone(), a.kind())) + seen;
        }
        // What stands through restarts would have another hour after each: its end is not in the record.
        String until = a.kind().standsUntilSeen() ? "" : " since "
                + hour(s, now.wallMs() - a.goneMs(now.monoMs()));
        return where(s, a) + ": over" + until + ": " + what(a) + ", since "
                + hour(s, a.course().since().wallMs()) + "." + (a.kind().standsUntilSeen() ? seen : "");
    }

    /** What is still to be done about it; empty where its cause took that along. */
    static String todo(Settings s, Alarm a) {
        return a.course().goneAtMs().isPresent() && !REMAINS.contains(a.kind()) ? ""
                : a.held() == Alarm.Held.ONLY_BY_LATCH && a.kind().mends() ? FIRST
                : todo(s, a.cone(), a.kind());
    }

    /** The words that acknowledge it. */
    static String acknowledge(Alarm a) {
        return "conetender tell " + (a.cone().isEmpty() ? TellLine.SITE : a.cone()) + " acknowledge "
                + a.kind().id();
    }

    /** Where no heater is fitted nothing is said of it. */
    private static String todo(Settings s, String cone, AlarmKind kind) {
        return !HEAT_FIRST.contains(kind) || heated(s, cone) ? kind.todo()
                : kind.todo().substring(kind.todo().indexOf(". ") + 2);
    }

    private static boolean heated(Settings s, String cone) {
        return s.cone(cone).stream().allMatch(c -> c.fittings().heat().fitted());
    }

    /** That its cause is over, and what is left of it: where no heater is fitted nothing is locked off. */
    static String left(Settings s, Alarm a) {
        return (AlarmList.hidden(s, a) ? HIDDEN : OVER)
                + (!heated(s, a.cone()) ? "" : LOCKED + (a.told().onceMore() ? AGAIN : ""));
    }

    private static boolean over(Alarm a, Moment now) {
        return a.goneMs(now.monoMs()) >= SURELY_GONE_MS && !REMAINS.contains(a.kind());
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
                .filter(a -> Again.forSecond(a) && !a.acknowledged())
                // As it was told: what comes and goes in between must not call.
                .filter(a -> a.course().goneAtMs().isEmpty() && !a.told().mended())
                .filter(a -> a.told().way() != Alarm.Way.NAMED).toList();
        String who = state.book().away().map(Book.Away::helper).or(() -> s.site().second())
                .map(w -> "For " + w + ": nobody").orElse("Nobody");
        return open.isEmpty() ? Optional.empty() : Optional.of(who + " has answered. "
                + open.stream().map(a -> alert(s, a, now)).collect(Collectors.joining(" ")));
    }

    static String where(Settings s, Alarm a) {
        return Sentences.where(s, a.cone());
    }

    static String what(Alarm a) {
        return a.what().isEmpty() ? a.kind().id() : a.what();
    }

    /** Always with its weekday: words that change at midnight would call. */
    private static String hour(Settings s, long wallMs) {
        return Sentences.day(wallMs, s.site().feeding().zone());
    }
}
