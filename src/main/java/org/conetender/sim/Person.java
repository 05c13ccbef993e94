package org.conetender.sim;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/**
 * Whoever works at the cones: reads what the daemon publishes, does the physical things in the world, and
 * tells the daemon through {@link Hands} only. Everything takes time, and a seeded share of it goes wrong.
 */
public final class Person {

    private static final double MINUTE_MS = 60_000;
    private static final int HATCH_H = 26;

    private final World world;
    private final Settings settings;
    private final Habit habit;
    final Eyes eyes;
    final Hands hands;
    private final SplittableRandom random;
    private final List<Errand> errands = new ArrayList<>();

    /** How a person reaches the daemon. */
    public record Senses(Eyes eyes, Hands hands) {}

    /** @param senses what is read and how one speaks; both go through the broker, never past it */
    public Person(World world, Settings settings, Habit habit, Senses senses) {
        this.world = world;
        this.settings = settings;
        this.habit = habit;
        this.eyes = senses.eyes();
        this.hands = senses.hands();
        this.random = Seeds.of(world.seed(), "person");
        for (Cone c : settings.cones()) {
            // The cones are started one after the other, so that they are not all ready at once.
            long first = (long) ((5 + 25 * errands.size()) * MINUTE_MS);
            errands.add(new Errand(this, world.cone(c.id()), first));
        }
    }

    /** Looks and acts; to be called every few seconds of simulated time. */
    public void step() {
        long now = world.clock().elapsedMs();
        for (Errand e : errands) {
            e.step(now);
        }
    }

    boolean awake() {
        return habit.awakeAt(time());
    }

    /** Whether a harvest begun now would be in time for a feed, or no feed is coming for long. */
    boolean harvestTime(double leadMinutes) {
        List<LocalTime> hours = settings.site().feeding().hours();
        if (hours.isEmpty()) {
            return true;
        }
        double until = Double.MAX_VALUE;
        for (LocalTime h : hours) {
            double minutes = Math.floorMod(h.toSecondOfDay() - time().toSecondOfDay(), 86_400) / 60.0;
            until = Math.min(until, minutes);
        }
        return until <= settings.site().feeding().leadMinutes() + leadMinutes;
    }

    /** A feed that a usual hatch begun now should serve, as a person says it: the first after a day. */
    String wantedHour() {
        ZonedDateTime later = Instant.ofEpochMilli(world.clock().trueWallMs())
                .atZone(settings.site().feeding().zone()).plusHours(HATCH_H);
        LocalTime feed = settings.site().feeding().hours().stream()
                .filter(h -> h.isAfter(later.toLocalTime())).findFirst().orElse(LocalTime.of(23, 30));
        return later.toLocalDate() + " " + feed;
    }

    private LocalTime time() {
        return Instant.ofEpochMilli(world.clock().trueWallMs())
                .atZone(settings.site().feeding().zone()).toLocalTime();
    }

    /** A delay around the habit's mean, in ms: never none, seldom many times as long. */
    long delayMs() {
        double exponential = -Math.log(1 - random.nextDouble());
        return (long) (MINUTE_MS * (0.5 + habit.delayMinutes() * Math.min(4, exponential)));
    }

    boolean slips() {
        return habit.slips() > 0 && random.nextDouble() < habit.slips();
    }

    int pick(int bound) {
        return random.nextInt(bound);
    }

    Habit habit() {
        return habit;
    }

    String device(String cone) {
        return Topics.device(settings.site().id(), cone);
    }

    /** Some cone, perhaps the wrong one. */
    String anyCone() {
        return settings.cones().get(random.nextInt(settings.cones().size())).id();
    }

    /** A word that would come later or not at all: what a person reports too early or by mistake. */
    static String wrongFor(String word) {
        return switch (word) {
            case "filled", "started" -> "cleaned";
            case "stocked" -> "first-seen";
            case "settle" -> "drained";
            case "drawing" -> "part-drawn";
            case "valve-shut" -> "valve-open";
            default -> "settle";
        };
    }
}
