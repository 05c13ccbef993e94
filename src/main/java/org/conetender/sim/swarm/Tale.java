package org.conetender.sim.swarm;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.core.unit.Text;

/**
 * A story: a place, and what happens there. As text it is a head and a line for each event, so that one
 * that broke something can be kept, shortened by hand and told again:
 *
 * <pre>
 * story larkmoor-plain careful seed 17 hours 24
 * 02:15:30 switch a heat welded 2400s
 * </pre>
 *
 * @param place where, who, how long, and the seed of all that is drawn
 * @param events in order of time
 */
public record Tale(Place place, List<Event> events) {

    /** The head: four words and two figures. */
    private static final int HEAD = 7;
    private static final long HOUR_S = 3_600;

    public Tale {
        events = events.stream().sorted().toList();
        for (Event e : events) {
            place.check(e);
        }
    }

    /**
     * @param room how it is fitted
     * @param keeper who looks after the cones
     * @param seed of the world and its people
     * @param hours how long it lasts, 1 or more
     */
    public record Place(Fitting room, Keeper keeper, long seed, int hours) {

        private void check(Event e) {
            room.check(e);
            if (e.atS() >= HOUR_S * hours) {
                throw new IllegalArgumentException("the story is over after " + hours
                        + " hours; give it more, or let this happen earlier");
            }
        }
    }

    /** The same place, with these events. */
    Tale with(List<Event> some) {
        return new Tale(place, some);
    }

    /** The same, but over after so many hours. */
    Tale until(int hours) {
        return new Tale(new Place(place.room(), place.keeper(), place.seed(), hours),
                events.stream().filter(e -> e.atS() < hours * 3_600L).toList());
    }

    public String text() {
        return Stream.concat(Stream.of(Text.of("story %s %s seed %d hours %d", word(place.room()),
                word(place.keeper()), place.seed(), place.hours())), events.stream().map(Event::text))
                .collect(Collectors.joining("\n", "", "\n"));
    }

    private static String word(Enum<?> e) {
        return Deed.word(e);
    }

    /**
     * Reads a story. Empty lines, and those that begin with {@code #}, say nothing.
     *
     * @throws IllegalArgumentException with the line's number and what to write instead
     */
    public static Tale parse(String text) {
        List<Event> events = new ArrayList<>();
        Place place = null;
        int number = 0;
        for (String line : text.lines().toList()) {
            number++;
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            try {
                if (place == null) {
                    place = head(line);
                } else {
                    Event e = Event.parse(line);
                    place.check(e);
                    events.add(e);
                }
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException("line " + number + ": " + e.getMessage() + ".", e);
            }
        }
        if (place == null) {
            throw new IllegalArgumentException("a story begins with a line such as"
                    + " 'story larkmoor-plain careful seed 17 hours 24'.");
        }
        return new Tale(place, events);
    }

    private static Place head(String line) {
        String[] w = line.strip().split("\\s+");
        if (w.length != HEAD || !w[0].equals("story") || !w[3].equals("seed")
                || !w[4].matches("-?[0-9]{1,18}") || !w[5].equals("hours")
                || !w[6].matches("[1-9][0-9]{0,4}")) {
            throw new IllegalArgumentException("a story begins with a line such as"
                    + " 'story larkmoor-plain careful seed 17 hours 24'");
        }
        return new Place(one(Fitting.class, w[1]), one(Keeper.class, w[2]), Long.parseLong(w[4]),
                Integer.parseInt(w[6]));
    }

    private static <E extends Enum<E>> E one(Class<E> kind, String word) {
        return Stream.of(kind.getEnumConstants()).filter(e -> word(e).equals(word)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + word.toLowerCase(Locale.ROOT)
                        + "' is none of: " + Stream.of(kind.getEnumConstants()).map(Tale::word)
                        .collect(Collectors.joining(", "))));
    }
}
