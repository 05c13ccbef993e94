package org.conetender.core.face;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;

/**
 * Alarms on the shelf: those that do not stand are told at the end of a list of those that do, one that does
 * in its own line there.
 */
public final class ShelfWords {

    private static final String BEGIN = "Shelved: ";
    private static final String BETWEEN = ", ";
    private static final String CONE = "cone ";

    /** How it is said of one that stands. */
    static final String STANDS = "shelved until ";

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

    /** What of a list is on the shelf, whether it stands or not; empty where nothing is. */
    public static Optional<String> in(String list) {
        return sentence(shelved(list));
    }

    /** What of it belongs to no cone. */
    public static Optional<String> ofSite(String list) {
        return sentence(shelved(list).filter(t -> !t.startsWith(CONE)));
    }

    private static Optional<String> sentence(Stream<String> shelved) {
        String all = shelved.collect(Collectors.joining(BETWEEN));
        return all.isEmpty() ? Optional.empty() : Optional.of(BEGIN + all + ".");
    }

    private static Stream<String> shelved(String list) {
        int at = list.indexOf(BEGIN);
        return Stream.concat(list.lines().flatMap(l -> standing(l).stream()), at < 0 ? Stream.empty()
                : Arrays.stream(list.substring(at + BEGIN.length(), list.length() - 1).split(BETWEEN)));
    }

    /** One that stands, by the line that begins its entry: {@code Cone a, dry: …; …, shelved until 23:00.} */
    private static Optional<String> standing(String line) {
        int who = line.indexOf(": ");
        int states = line.lastIndexOf("; ");
        int until = line.indexOf(STANDS, Math.max(0, states));
        if (who < 0 || states < who || until < 0) {
            return Optional.empty();
        }
        String name = line.substring(0, who);
        String id = name.substring(name.lastIndexOf(BETWEEN) + BETWEEN.length());
        String cone = name.substring(0, Math.max(0, name.lastIndexOf(BETWEEN)));
        return Optional.of((cone.toLowerCase(Locale.ROOT).startsWith(CONE)
                ? CONE + cone.substring(CONE.length()) + " " : "") + id + " until "
                + line.substring(until + STANDS.length()).split("[,.]", 2)[0]);
    }
}
