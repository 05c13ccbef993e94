package org.conetender.core.face;

import java.util.Arrays;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;

/** Alarms on the shelf, told at the end of a list of those that stand. */
public final class ShelfWords {

    private static final String BEGIN = "Shelved: ";
    private static final String BETWEEN = ", ";
    private static final String CONE = "cone ";

    private ShelfWords() {}

    /** Those that do not stand, and until when; one that stands says so itself. @param cone empty for all */
    static String of(Settings s, Alarms alarms, Optional<String> cone, Moment now) {
        if (alarms.shelves().isEmpty()) {
            return "";
        }
        String all = new TreeMap<>(alarms.shelves()).entrySet().stream()
                .filter(e -> cone.isEmpty() || e.getKey().startsWith(cone.get() + "/"))
                .filter(e -> alarms.raised().stream().map(Alarm::key).noneMatch(e.getKey()::equals))
                .map(e -> name(e.getKey()) + " until " + until(s, e.getValue(), now))
                .collect(Collectors.joining(BETWEEN));
        return all.isEmpty() ? "" : "\n" + BEGIN + all + ".";
    }

    /** The hour at which it is told again. @param untilMs monotonic ms */
    public static String until(Settings s, long untilMs, Moment now) {
        return Sentences.clock(now.wallMs() + untilMs - now.monoMs(), s.site().feeding().zone(),
                now.wallMs());
    }

    private static String name(String key) {
        String alarm = key.substring(key.indexOf('/') + 1);
        return key.startsWith("/") ? alarm : CONE + key.substring(0, key.indexOf('/')) + " " + alarm;
    }

    /** That end of a list, where it has one. */
    public static Optional<String> in(String list) {
        int at = list.indexOf(BEGIN);
        return at < 0 ? Optional.empty() : Optional.of(list.substring(at));
    }

    /** What of it belongs to no cone. */
    public static Optional<String> ofSite(String list) {
        String own = in(list).stream().flatMap(t -> Arrays.stream(t.substring(BEGIN.length(), t.length() - 1)
                .split(BETWEEN))).filter(t -> !t.startsWith(CONE)).collect(Collectors.joining(BETWEEN));
        return own.isEmpty() ? Optional.empty() : Optional.of(BEGIN + own + ".");
    }
}
