package org.conetender.sim.swarm;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.conetender.core.settings.Cone;

/** Draws the particulars of a trouble: where, how, for how long. All figures are guesses. */
final class Draw {

    private static final long HOUR_S = 3_600;
    private static final double SHORTEST_S = 30;
    private static final double LONGEST_S = 5 * HOUR_S;
    private static final long YEAR_S = 365 * 24 * HOUR_S;
    private static final List<String> PROPERTIES = List.of("hand/step", "hand/filled", "hand/stocked",
            "hand/withdraw", "hand/acknowledge", "water/setpoint", "usual/litres", "heat/on");
    private static final List<String> PAYLOADS = List.of("dance", "}{", "-1", "NaN", "1e308", "26", "last",
            "crash-loop", "{\"litres\":2}", "true", "overheat", "none");

    private final SplittableRandom random;
    private final Fitting room;

    Draw(SplittableRandom random, Fitting room) {
        this.random = random;
        this.room = room;
    }

    long between(double least, double most) {
        return Math.round(Math.exp(random.nextDouble(Math.log(least), Math.log(most))));
    }

    private String time() {
        return Event.lasting(between(SHORTEST_S, LONGEST_S));
    }

    @SafeVarargs
    final <T> T one(T... of) {
        return of[random.nextInt(of.length)];
    }

    private String anyCone() {
        List<Cone> all = room.settings().cones();
        return all.get(random.nextInt(all.size())).id();
    }

    /** Something at any cone, for a while. */
    List<Event> lasting(long atS, Deed deed, String... words) {
        List<String> all = new ArrayList<>(List.of(words));
        all.add(time());
        return cone(atS, deed, all.toArray(String[]::new));
    }

    /** Something that concerns the house, for a while. */
    List<Event> house(long atS, Deed deed, String how) {
        return List.of(Event.at(atS, deed, how, time()));
    }

    List<Event> cone(long atS, Deed deed, String... more) {
        List<String> words = new ArrayList<>(List.of(anyCone()));
        words.addAll(List.of(more));
        return List.of(new Event(atS, deed, words));
    }

    List<Event> two(long atS, Deed deed, String... how) {
        String one = anyCone();
        String two = anyCone();
        return one.equals(two) ? List.of() : List.of(new Event(atS, deed,
                Stream.of(Stream.of(one, two), Stream.of(how), Stream.of(time())).flatMap(s -> s).toList()));
    }

    /** Power that comes and goes until the machine has hardly booted. */
    List<Event> brownOuts(long atS) {
        List<Event> all = new ArrayList<>();
        long t = atS;
        for (int i = random.nextInt(2, 9); i > 0; i--) {
            long cut = between(1, 60);
            all.add(Event.at(t, Deed.SITE, "power-cut", Event.lasting(cut)));
            t += cut + between(5, 240);
        }
        return all;
    }

    /** Power comes and goes, and the clock stands still meanwhile. */
    List<Event> noBattery(long atS) {
        List<Event> all = new ArrayList<>(List.of(Event.at(atS, Deed.SITE, "no-battery",
                Event.lasting(between(3_600, 100_000)))));
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            all.add(Event.at(atS + between(1, 40_000), Deed.SITE, "power-cut",
                    Event.lasting(between(1, 20_000))));
        }
        return all;
    }

    /** Ten years wrong, and right again. */
    List<Event> yearsOff(long atS) {
        long off = one(-10, 10) * YEAR_S;
        return List.of(Event.at(atS, Deed.CLOCK, signed(off)),
                Event.at(atS + between(60, 40_000), Deed.CLOCK, signed(-off)));
    }

    private static String signed(long seconds) {
        return (seconds < 0 ? "-" : "+") + Math.abs(seconds) + "s";
    }

    List<Event> hostile(long atS) {
        List<Event> all = new ArrayList<>();
        for (int i = random.nextInt(1, 30); i > 0; i--) {
            all.add(Event.at(atS, Deed.SET, anyCone(), PROPERTIES.get(random.nextInt(PROPERTIES.size())),
                    PAYLOADS.get(random.nextInt(PAYLOADS.size()))));
        }
        return all;
    }

    /** The computer has so much else to do that each turn comes seconds late. */
    List<Event> overloaded(long atS) {
        long everyS = one(3, 3, 4, 6);
        List<Event> all = new ArrayList<>();
        for (int i = random.nextInt(2, 10); i > 0; i--) {
            all.add(Event.at(atS + all.size() * everyS, Deed.HANG, Event.lasting(everyS)));
        }
        return all;
    }

    List<Event> crashLoop(long atS) {
        List<Event> all = new ArrayList<>();
        long t = atS;
        for (int i = random.nextInt(3, 8); i > 0; i--) {
            all.add(Event.at(t, Deed.KILL, "now"));
            t += between(8, 150);
        }
        return all;
    }
}
