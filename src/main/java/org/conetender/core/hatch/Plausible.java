package org.conetender.core.hatch;

import org.conetender.core.hatch.Lesson.Sight;

/**
 * Which shares can have hatched by then, as far as a lot is known.
 *
 * @param least share of the hatchable, 0..1
 * @param most share of the hatchable, 0..1
 * @param sd of what is known of ln K50
 */
public record Plausible(double least, double most, double sd) {

    /** Beyond so many standard deviations nobody expects a lot (*guess*). */
    private static final double FAR = 3;
    /** Fewer than one in so many swim unnoticed, share (*guess*: some hundred in a cone). */
    private static final double NOTICED = 0.001;
    /** At least this share of full cysts can hatch in the worst lots that are sold (*guess*). */
    private static final double LEAST_VIABLE = 0.55;

    /** @param lot what was known before  @param at how far the cysts were */
    public static Plausible of(Speed lot, Lesson.At at) {
        double sd = lot.logSdAt(0);
        double far = Math.exp(FAR * sd);
        return new Plausible(lot.hatchedShare(at.leastDegreeHours() / far),
                lot.hatchedShare(at.mostDegreeHours() * far), sd);
    }

    /** Whether that count can be of such a lot. */
    public boolean fits(Sight.Counted c) {
        return !tooMany(c) && !tooFew(c);
    }

    /** Whether more swim than can have hatched. */
    public boolean tooMany(Sight.Counted c) {
        return swims(c) - FAR * error(c) > most;
    }

    /** Whether more than can have hatched would have to swim for that to be seen. */
    public boolean tooEarly(Sight s) {
        return switch (s) {
            case Sight.First _ -> most < NOTICED;
            case Sight.Counted c -> tooMany(c);
            case Sight.NoneYet _, Sight.Judged _ -> false;
        };
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
