package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * What one look at a batch teaches of its lot.
 *
 * @param at how far the cysts were
 * @param sight what was seen
 */
public record Lesson(At at, Sight sight) {

    /**
     * How far the cysts were when somebody looked.
     *
     * @param leastDegreeHours surely done, °C·h
     * @param mostDegreeHours perhaps done, °C·h
     * @param hours since they were wetted, h
     */
    public record At(double leastDegreeHours, double mostDegreeHours, double hours) {

        /** @throws IllegalArgumentException unless the figures are finite, ordered and above 0 */
        public At {
            if (!(leastDegreeHours > 0 && leastDegreeHours <= mostDegreeHours && hours > 0
                    && Double.isFinite(mostDegreeHours + hours))) {
                throw new IllegalArgumentException(Text.of("nobody can look after %s to %s °C·h and %s h",
                        leastDegreeHours, mostDegreeHours, hours));
            }
        }

        /** Middle of what was done, °C·h. */
        public double degreeHours() {
            return (leastDegreeHours + mostDegreeHours) / 2;
        }

        /** How uncertain that is, as a log-sd: anything in between is as likely. */
        double logSd() {
            return (mostDegreeHours - leastDegreeHours) / Math.sqrt(12) / degreeHours();
        }

        /** The water that gives so many degree-hours an hour on the average, °C. @param baseC of the rate */
        double waterC(double baseC) {
            return baseC + Math.max(1, degreeHours() / hours);
        }
    }

    /** What was seen. */
    public sealed interface Sight {

        /** Somebody looked, and nothing swam yet. */
        record NoneYet() implements Sight {}

        /** The first nauplii. */
        record First() implements Sight {}

        /**
         * A sub-sample was counted.
         *
         * @param nauplii that swim  @param umbrella under their shells  @param unhatched full cysts
         */
        record Counted(int nauplii, int umbrella, int unhatched) implements Sight {

            int all() {
                return nauplii + umbrella + unhatched;
            }
        }

        /** A harvest was judged by eye. */
        record Judged(Word word) implements Sight {}
    }

    /** How the hour of a harvest was. */
    public enum Word { TOO_EARLY, RIGHT, LATE }

    /** First nauplii come by so much of ln K50 before the middle, where spread is as usual (*guess*). */
    private static final double FIRST_BEFORE = 0.34;

    /** No lot is as quick as this many standard deviations of what is believed of it (*guess*). */
    private static final double SURELY = 2;

    /**
     * Whether it can tell anything. That nothing swims long before anything could, or a count of nothing,
     * says nothing of any lot.
     *
     * @param lnK50 what is believed  @param sd its standard deviation, that of the batch and its spread too
     */
    boolean says(double lnK50, double sd) {
        return switch (sight) {
            case Sight.NoneYet _ -> Math.log(at.mostDegreeHours()) > lnK50 - FIRST_BEFORE - SURELY * sd;
            case Sight.Counted c -> c.all() > 0;
            case Sight.First _, Sight.Judged _ -> true;
        };
    }

    /** Whether it says more than that it was not yet time. */
    boolean teaches() {
        return switch (sight) {
            case Sight.NoneYet _ -> false;
            case Sight.First _, Sight.Judged _ -> true;
            case Sight.Counted c -> c.all() > 0;
        };
    }
}
