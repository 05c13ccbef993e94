package org.conetender.core.face;

import static org.conetender.core.face.AlarmWords.acknowledge;
import static org.conetender.core.face.AlarmWords.left;
import static org.conetender.core.face.AlarmWords.todo;
import static org.conetender.core.face.AlarmWords.what;
import static org.conetender.core.face.AlarmWords.where;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;

/** The list of alarms with their states: unlike the message of each, it follows what becomes of them. */
public final class AlarmList {

    /** The list while there is nothing in it. */
    public static final String NONE = "No alarm stands.";

    private static final String FOLLOWS = "follows from ";
    private static final String CONE = "Cone ";
    private static final String OF_CONE = " of cone ";

    private AlarmList() {}

    /**
     * Every alarm with its states, what to do about each first cause, and how to acknowledge it: a few lines
     * for each.
     *
     * @param cone empty for all
     */
    public static String of(Settings s, Alarms all, Optional<String> cone, Moment now) {
        List<Alarm> alarms = all.raised().stream().filter(a -> cone.isEmpty() || a.cone().equals(cone.get()))
                .toList();
        return (alarms.isEmpty() ? NONE : listed(s, alarms, now)) + ShelfWords.of(s, all, cone, now);
    }

    private static String listed(Settings s, List<Alarm> alarms, Moment now) {
        return (alarms.size() == 1 ? "1 alarm." : alarms.size() + " alarms.")
                + alarms.stream().map(a -> "\n" + where(s, a) + ", " + a.kind().id() + ": "
                        + words(s, a) + ", since "
                        + Sentences.clock(a.course().since().wallMs(), s.site().feeding().zone(),
                                now.wallMs()) + "; " + String.join(", ", states(s, a, now)) + "."
                        + (a.follows() || a.shelved() || todo(s, a).isEmpty() ? "" : "\n  " + todo(s, a))
                        + asked(a).map(how -> "\n  " + how + ": " + acknowledge(a)).orElse(""))
                        .collect(Collectors.joining());
    }

    /** The words of now; and that an answer that was given came before its cause was over. */
    private static String words(Settings s, Alarm a) {
        boolean once = a.told().onceMore() && a.held() == Alarm.Held.ONLY_BY_LATCH;
        return what(a.asItIs()) + (once ? left(s, a) : "");
    }

    /** What is still asked of whoever reads it; what was given is asked for no more. */
    private static Optional<String> asked(Alarm a) {
        boolean locks = a.held() != Alarm.Held.BY_CAUSE;
        boolean leaves = a.course().goneAtMs().isPresent() && !a.latched();
        return a.follows() || leaves || a.acknowledged() && !locks ? Optional.empty()
                : Optional.of(!a.acknowledged() ? "To acknowledge"
                : "To acknowledge once more" + (a.active() ? " when its cause is over" : ""));
    }

    private static final Set<AlarmKind> BY_HEAT = Set.of(AlarmKind.NO_EFFECT, AlarmKind.SWITCH_STUCK,
            AlarmKind.WRONG_CONE);

    /** Whether only heat shows its cause, or a cut-out that closes: nobody knows whether it is mended. */
    static boolean hidden(Settings s, Alarm a) {
        return BY_HEAT.contains(a.kind()) || a.kind() == AlarmKind.WELDED
                && s.cone(a.cone()).stream().allMatch(c -> c.fittings().heat().cutOut());
    }

    private static List<String> states(Settings s, Alarm a, Moment now) {
        List<String> out = new ArrayList<>();
        out.add(a.active() ? "active" : hidden(s, a) && a.held() == Alarm.Held.ONLY_BY_LATCH
                ? "the heat is locked off, so that its cause cannot show" : "its cause is over");
        out.add(a.acknowledged() ? "acknowledged" : "not acknowledged");
        if (a.held() != Alarm.Held.BY_CAUSE || a.latched() && !a.acknowledged()) {
            out.add("latched until acknowledged" + (a.acknowledged() ? " once more" : ""));
        }
        a.aside().shelvedUntilMs().ifPresent(until -> out.add(ShelfWords.STANDS
                + ShelfWords.until(s, until, now)));
        a.aside().follows().ifPresent(key -> out.add(FOLLOWS
                + key.substring(key.indexOf('/') + 1)
                + (key.startsWith("/") ? "" : OF_CONE + key.substring(0, key.indexOf('/')))));
        return out;
    }

    /** Of such a list what is said of that alarm, as one paragraph. @param where a cone, or the site */
    public static Optional<String> entry(String list, String where, String id) {
        String begin = where + ", " + id + ": ";
        String entry = list.lines().dropWhile(l -> !l.startsWith(begin))
                .takeWhile(l -> l.startsWith(begin) || l.startsWith("  ")).map(String::strip)
                .collect(Collectors.joining(" "));
        return entry.isEmpty() ? Optional.empty() : Optional.of(entry);
    }

    /** By such a list what follows from that alarm, a sentence. @param cone empty for the site */
    public static String followers(String list, String cone, String id) {
        String end = FOLLOWS + id + (cone.isEmpty() ? "" : OF_CONE + cone) + ".";
        String all = list.lines().filter(l -> l.endsWith(end)).map(l -> l.substring(0, l.indexOf(": ")))
                .map(l -> l.substring(l.lastIndexOf(", ") + 2) + (l.startsWith(CONE)
                        ? OF_CONE + l.substring(CONE.length(), l.lastIndexOf(", ")) : ""))
                .collect(Collectors.joining(", "));
        return all.isEmpty() ? "" : " With it: " + all + ".";
    }
}
