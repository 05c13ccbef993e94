package org.conetender.core.alarm;

import org.conetender.core.alarm.AlarmKind.Priority;
import org.conetender.core.unit.Units;

/**
 * What stands at risk while nobody comes, and how long a person has. The priority of an alarm follows from
 * these two and from nothing else (control.md §7: consequence and time available).
 *
 * @param harm the worst that may come of it
 * @param minutes a person has about so long before it does; guesses, save where a guard knows better
 */
public record Stakes(Harm harm, int minutes) {

    /** The worst that may come of it; the first is the gravest. */
    public enum Harm {
        /** Fire, a scald or a shock. */
        PEOPLE("people"),
        /** Nauplii that swim. */
        ANIMALS("the animals"),
        /** A hatch that is lost, late, or fed though it is bad. */
        BATCH("the batch"),
        /** Work that must be done once more, hours that are shown wrongly. */
        WORK("your time");

        private final String words;

        Harm(String words) {
            this.words = words;
        }

        /** For the table of the documents. */
        public String words() {
            return words;
        }
    }

    /** Time enough for the next round at the cones. */
    static final int DAY = 24 * 60;

    /** Who has less than this must be called from whatever they do: a quarter of an hour (guess). */
    private static final int AT_ONCE = 15;

    /** Who has less than this looks before the next chore: an hour (guess). */
    private static final int SOON = 60;

    static Stakes people(int minutes) {
        return new Stakes(Harm.PEOPLE, minutes);
    }

    static Stakes animals(int minutes) {
        return new Stakes(Harm.ANIMALS, minutes);
    }

    static Stakes batch(int minutes) {
        return new Stakes(Harm.BATCH, minutes);
    }

    static Stakes work(int minutes) {
        return new Stakes(Harm.WORK, minutes);
    }

    /** How soon: people first, whoever else has minutes next; nobody runs to save work. */
    public Priority priority() {
        if (harm == Harm.WORK) {
            return minutes <= SOON ? Priority.SOON : Priority.LATER;
        }
        return minutes <= (harm == Harm.PEOPLE ? SOON : AT_ONCE) ? Priority.NOW
                : minutes <= SOON || harm == Harm.PEOPLE ? Priority.SOON : Priority.LATER;
    }

    /** Whether people or animals come to harm soon: nothing may keep such an alarm from being told. */
    public boolean dangerous() {
        return priority() == Priority.NOW && (harm == Harm.PEOPLE || harm == Harm.ANIMALS);
    }

    /** The time to act, in words. */
    public String time() {
        return switch (priority()) {
            case NOW -> "now: " + span();
            case SOON -> "soon: within " + span();
            case LATER -> "later: within " + span();
        };
    }

    private String span() {
        return minutes < SOON ? minutes + " min" : minutes == SOON ? "the hour"
                : minutes == DAY ? "the day" : (long) Units.hours(minutes * Units.MINUTE_MS) + " h";
    }
}
