package org.conetender.sim;

import java.time.LocalTime;

/**
 * What kind of person looks after the cones.
 *
 * @param tellsAll tells every step and lets the daemon separate; else only {@code started} and
 *     {@code cleaned}, and harvests with the air valve and a watch
 * @param slips chance that a report goes wrong: early, late, wrong, to another cone, or never
 * @param delayMinutes mean time until an errand that is asked for is begun
 * @param wakes when the day begins, the site's own time
 * @param sleeps when it ends, later than {@code wakes}
 */
public record Habit(boolean tellsAll, double slips, double delayMinutes, LocalTime wakes, LocalTime sleeps) {

    private static final LocalTime EARLY = LocalTime.of(6, 30);
    private static final LocalTime LATE = LocalTime.of(22, 30);

    private static final double SOON_MINUTES = 4;

    /** Tells everything, soon, and without mistakes. */
    public static Habit careful() {
        return new Habit(true, 0, 4, EARLY, LATE);
    }

    /** Touches it twice a day. */
    public static Habit twoTouches() {
        return new Habit(false, 0, 10, EARLY, LATE);
    }

    /** Any of them, drawn from the seed, mistakes included. */
    public static Habit draw(long seed) {
        var r = Seeds.of(seed, "habit");
        return new Habit(r.nextDouble() < 0.65, r.nextDouble(0, 0.25), r.nextDouble(1, 15), EARLY, LATE);
    }

    /** Whether such a person also says when the nauplii are wanted: who tells all, and soon (guess). */
    boolean wantsHours() {
        return tellsAll && delayMinutes < SOON_MINUTES;
    }

    boolean awakeAt(LocalTime time) {
        return !time.isBefore(wakes) && time.isBefore(sleeps);
    }
}
