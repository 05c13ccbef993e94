package org.conetender.core;

import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Lesson.Sight;
import org.conetender.core.hatch.Speed;

/**
 * Which shares can have hatched by then, as far as a lot is known.
 *
 * @param least share of the hatchable, 0..1
 * @param most share of the hatchable, 0..1
 * @param sd of what is known of ln K50
 */
record Plausible(double least, double most, double sd) {

    /** Beyond so many standard deviations nobody expects a lot (*guess*). */
    private static final double FAR = 3;
    /** The standard score of nine in ten, in which {@link Speed#within} is told. */
    private static final double SCORE_OF_90 = 1.2816;
    /** At least this share of full cysts can hatch in the worst lots that are sold (*guess*). */
    private static final double LEAST_VIABLE = 0.55;

    /** @param lot what was known before  @param at how far the cysts were */
    static Plausible of(Speed lot, Lesson.At at) {
        double sd = Math.log(lot.within(0.5, true) / lot.k50DegreeHours()) / SCORE_OF_90;
        double far = Math.exp(FAR * sd);
        return new Plausible(lot.hatchedShare(at.leastDegreeHours() / far),
                lot.hatchedShare(at.mostDegreeHours() * far), sd);
    }

    /** Whether that count can be of such a lot. */
    boolean fits(Sight.Counted c) {
        return !tooMany(c) && !tooFew(c);
    }

    boolean tooMany(Sight.Counted c) {
        return swims(c) - FAR * error(c) > most;
    }

    private boolean tooFew(Sight.Counted c) {
        return swims(c) + FAR * error(c) < LEAST_VIABLE * least;
    }

    private static double all(Sight.Counted c) {
        return (double) c.nauplii() + c.umbrella() + c.unhatched();
    }

    /** As if one more of each had been seen: a small count proves little. */
    private static double swims(Sight.Counted c) {
        return (c.nauplii() + 1) / (all(c) + 2);
    }

    private static double error(Sight.Counted c) {
        return Math.sqrt(swims(c) * (1 - swims(c)) / (all(c) + 2));
    }
}
