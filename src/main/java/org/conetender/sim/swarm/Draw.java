package org.conetender.sim.swarm;

import static org.conetender.sim.swarm.Event.lasting;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.conetender.core.settings.Cone;
import org.conetender.sim.Seeds;

/**
 * Draws stories, and the particulars of each trouble. Every story omits most kinds of trouble, for what is
 * always there hides what it gets in the way of (control.md §8, swarm testing). All figures are guesses:
 * far more than life brings.
 */
final class Draw {

    /** Chance that a story has a kind of trouble at all. */
    private static final double HAS = 0.12;
    /** Mean hours between two troubles of one kind, of those that a story has. */
    private static final double EVERY_H = 16;
    private static final long HOUR_S = 3_600;
    /** Before this nothing goes wrong: the cones are only begun. */
    private static final long FIRST_S = 300;
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

    /** The story of a seed. @param hours how long it lasts */
    static Tale tale(long seed, int hours) {
        SplittableRandom r = Seeds.of(seed, "swarm");
        Fitting room = Fitting.values()[r.nextInt(Fitting.values().length)];
        Keeper keeper = Keeper.values()[r.nextInt(Keeper.values().length - 1)];
        List<Event> events = new ArrayList<>();
        Trouble surely = Trouble.values()[r.nextInt(Trouble.values().length)];
        for (Trouble t : Trouble.values()) {
            SplittableRandom own = Seeds.of(seed, "swarm/" + t.name());
            if (t != surely && own.nextDouble() >= HAS) {
                continue;
            }
            double at = FIRST_S + (t == surely ? own.nextDouble() * (hours * HOUR_S - 2 * FIRST_S) : 0);
            while (at < hours * HOUR_S) {
                if (t == surely || at > FIRST_S) {
                    events.addAll(t.at((long) at, own, room));
                }
                at += -Math.log(1 - own.nextDouble()) * EVERY_H * HOUR_S;
            }
        }
        return new Tale(new Tale.Place(room, keeper, seed, hours),
                events.stream().filter(e -> e.atS() < hours * HOUR_S).toList());
    }

    long between(double least, double most) {
        return Math.round(Math.exp(random.nextDouble(Math.log(least), Math.log(most))));
    }

    private String time() {
        return lasting(between(SHORTEST_S, LONGEST_S));
    }

    @SafeVarargs
    final <T> T one(T... of) {
        return of[random.nextInt(of.length)];
    }

    private String anyCone() {
        List<Cone> all = room.settings().cones();
        return all.get(random.nextInt(all.size())).id();
    }

    List<Event> probe(long atS, String kind) {
        return List.of(Event.at(atS, Deed.PROBE, anyCone(), one("0", "0", "1"), kind, time()));
    }

    List<Event> output(long atS, String outlet, String kind) {
        return List.of(Event.at(atS, Deed.SWITCH, anyCone(), outlet, kind, time()));
    }

    List<Event> contact(long atS, String contact, String kind) {
        return List.of(Event.at(atS, Deed.CONTACT, anyCone(), contact, kind, time()));
    }

    List<Event> air(long atS, String kind) {
        return List.of(Event.at(atS, Deed.AIR, anyCone(), kind, time()));
    }

    List<Event> water(long atS, String kind) {
        return List.of(Event.at(atS, Deed.WATER, anyCone(), kind, time()));
    }

    List<Event> site(long atS, String kind) {
        return List.of(Event.at(atS, Deed.SITE, kind, time()));
    }

    List<Event> disk(long atS, String mood) {
        return List.of(Event.at(atS, Deed.DISK, mood, time()));
    }

    List<Event> cone(long atS, Deed deed, String... more) {
        List<String> words = new ArrayList<>(List.of(anyCone()));
        words.addAll(List.of(more));
        return List.of(new Event(atS, deed, words));
    }

    List<Event> two(long atS, Deed deed) {
        String one = anyCone();
        String two = anyCone();
        return one.equals(two) ? List.of() : List.of(Event.at(atS, deed, one, two, time()));
    }

    /** Power that comes and goes until the machine has hardly booted. */
    List<Event> brownOuts(long atS) {
        List<Event> all = new ArrayList<>();
        long t = atS;
        for (int i = random.nextInt(2, 9); i > 0; i--) {
            long cut = between(1, 60);
            all.add(Event.at(t, Deed.SITE, "power-cut", lasting(cut)));
            t += cut + between(5, 240);
        }
        return all;
    }

    /** The machine has no battery for its clock, and no network. */
    List<Event> noClock(long atS) {
        return List.of(Event.at(atS, Deed.SITE, "clock-untrusted", lasting(between(600, 100_000))));
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
