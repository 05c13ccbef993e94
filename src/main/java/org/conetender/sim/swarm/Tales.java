package org.conetender.sim.swarm;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.conetender.sim.Seeds;

/**
 * Draws stories. Each omits most kinds of trouble, for what is always there hides what it gets in the way of
 * (control.md §8, swarm testing). All figures are guesses: far more than life brings.
 */
final class Tales {

    /** Chance that a story has a kind of trouble, beside the one that it surely has. */
    private static final double HAS = 0.12;
    /** Mean hours between two troubles of one kind, of those that a story has. */
    private static final double EVERY_H = 16;
    private static final long HOUR_S = 3_600;
    /** Before this nothing goes wrong: the cones are only begun. */
    private static final long FIRST_S = 300;

    private Tales() {}

    /** The story of a seed. @param hours how long it lasts */
    static Tale of(long seed, int hours) {
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
}
