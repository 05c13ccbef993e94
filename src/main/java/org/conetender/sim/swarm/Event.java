package org.conetender.sim.swarm;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.conetender.core.unit.Text;

/**
 * One thing that happens in a story, as a line: {@code 02:15:30 switch a heat welded 2400s}.
 *
 * @param atS seconds since the story began, 0 or more
 * @param deed what is done
 * @param words about what, how, and where it lasts, for how long
 */
public record Event(long atS, Deed deed, List<String> words) implements Comparable<Event> {

    private static final long HOUR_S = 3_600;
    private static final long MINUTE_S = 60;

    /** @throws IllegalArgumentException in words for whoever wrote it */
    public Event {
        words = List.copyOf(words);
        if (atS < 0) {
            throw new IllegalArgumentException("an event is at 00:00:00 or later");
        }
        deed.check(words);
    }

    public static Event at(long atS, Deed deed, String... words) {
        return new Event(atS, deed, List.of(words));
    }

    /** For so many seconds. */
    public static String lasting(long seconds) {
        return seconds + "s";
    }

    /** The seconds of its last word; 0 where that is none. */
    long forS() {
        String last = words.isEmpty() ? "" : words.getLast();
        return last.matches("[0-9]{1,9}s") ? Long.parseLong(last.substring(0, last.length() - 1)) : 0;
    }

    /** The line. */
    public String text() {
        return Text.of("%02d:%02d:%02d %s", atS / HOUR_S, atS / MINUTE_S % 60, atS % MINUTE_S,
                String.join(" ", deed.name().toLowerCase(Locale.ROOT), String.join(" ", words))).strip();
    }

    /** @throws IllegalArgumentException when the line says nothing that can be done */
    static Event parse(String line) {
        String[] parts = line.strip().split("\\s+");
        if (parts.length < 2 || !parts[0].matches("[0-9]{2,4}:[0-5][0-9]:[0-5][0-9]")) {
            throw new IllegalArgumentException("write hours:minutes:seconds and a deed, such as"
                    + " '02:15:30 kill now'");
        }
        String[] clock = parts[0].split(":");
        long at = HOUR_S * Long.parseLong(clock[0]) + MINUTE_S * Long.parseLong(clock[1])
                + Long.parseLong(clock[2]);
        return new Event(at, Deed.of(parts[1]), Arrays.asList(parts).subList(2, parts.length));
    }

    @Override
    public int compareTo(Event other) {
        return Long.compare(atS, other.atS);
    }
}
