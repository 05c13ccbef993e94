package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * When a batch will be at its harvest point, as an interval, and how much has hatched now.
 *
 * <p>The harvest point is T90 of the lot, the field's point (science.md §6). All hours count from
 * now; they are negative when the point has been passed, and infinite where it will not be reached.
 * Past hours are reckoned at the present rate, so they say "about"; who saw the moment keeps its own.
 *
 * @param doneDegreeHours degree-hours done, the middle of what is possible, °C·h
 * @param neededDegreeHours those at which the batch is called ready, which is the announced hour, °C·h
 * @param ready hours until the harvest point
 * @param t10Hours median hours until 10 % have hatched
 * @param hatched share of the hatchable that has hatched now
 * @param course where the water is heading, and whether development gets there
 */
public record Forecast(double doneDegreeHours, double neededDegreeHours, Ready ready, double t10Hours,
                       Hatched hatched, Course course) {

    /**
     * Hours from now.
     *
     * @param earliest one in ten batches is ready before
     * @param earlierQuartile one in four is
     * @param median half are
     * @param laterQuartile three in four are
     * @param latest nine in ten are
     * @param announced what a person is told: the median of a known lot, the later quartile of another
     */
    public record Ready(double earliest, double earlierQuartile, double median, double laterQuartile,
                        double latest, double announced) {}

    /** @param low 10 % point  @param median middle  @param high 90 % point; shares 0..1 */
    public record Hatched(double low, double median, double high) {}

    /**
     * @param end whether the harvest point is reached, and if not, why
     * @param headingC water temperature when the point is reached, or at the end of the look-ahead, °C
     * @param calibrated false when most of the way lies outside 20 to 30 °C, where the published
     *     figures end; by the usual rate the interval is wider there: below, since its threshold is in doubt
     *     (science.md §2.3), above, since a probe's error makes more of the steep fall ({@link Spread})
     */
    public record Course(End end, double headingC, boolean calibrated) {}

    /** Whether the projected water brings the batch to its harvest point. */
    public enum End {
        REACHED, TOO_WARM, TOO_COLD, TOO_SLOW
    }

    /** The median harvest point lies within the look-ahead of {@value #HORIZON_H} h, or behind. */
    public boolean reachable() {
        return course.end() == End.REACHED;
    }

    /** One sentence for a person: how it stands. */
    public String sentence() {
        return switch (course.end()) {
            case REACHED -> "developing";
            case TOO_WARM -> Text.of("stands still: the water is heading for %.1f °C, in arrest; let it cool",
                    course.headingC());
            case TOO_COLD ->
                    Text.of("stands still: the water is heading for %.1f °C, too cold to develop; warm it",
                    course.headingC());
            case TOO_SLOW ->
                    Text.of("too slow: at the projected %.1f °C it takes more than %d hours; warm the water",
                    course.headingC(), HORIZON_H);
        };
    }

    /** Look-ahead, h: a batch that needs longer will spoil rather than hatch (*guess*). */
    public static final int HORIZON_H = 96;

    /**
     * The forecast of a batch. Deterministic, without state, one array; well below 200 µs.
     *
     * @param done what the cysts have done so far
     * @param lot what is known of it
     * @param projection the water from now on
     * @param rate the same that {@code done} was gained with
     */
    public static Forecast of(Development done, Speed lot, Projection projection, Rate rate) {
        return of(done, lot, Ahead.walk(done.degreeHours(), lot.calledReadyAt(), projection, rate), rate);
    }

    /** The same, what lies ahead being walked already. */
    static Forecast of(Development done, Speed lot, Ahead ahead, Rate rate) {
        Speed speed = ahead.there(lot);
        double needed = speed.timesSeen() == 0 ? lot.calledReadyAt() : speed.calledReadyAt();
        double median = ahead.hoursUntil(speed.k90());
        Spread spread = Spread.of(done, speed, ahead, ahead::doneLossier);
        Ready ready = ready(ahead, spread);
        Course course = new Course(end(median, ahead, rate), ahead.headingC(),
                ahead.calibrated(needed));
        return new Forecast(done.degreeHours(), spread.calledReadyAt(), ready, ahead.hoursUntil(speed.k10()),
                hatched(done, speed, spread.logSdAt(0)), course);
    }

    private static Ready ready(Ahead ahead, Spread spread) {
        return new Ready(
                ahead.hoursUntil(spread.readyAt(-Normal.Z90)),
                ahead.hoursUntil(spread.readyAt(-Normal.Z75)),
                ahead.hoursUntil(spread.readyAt(0)),
                ahead.hoursUntil(spread.readyAt(Normal.Z75)),
                ahead.hoursUntil(spread.readyAt(Normal.Z90)),
                ahead.hoursUntil(spread.calledReadyAt()));
    }

    /** A slower lot has hatched less: the band runs through the same K50 uncertainty. */
    private static Hatched hatched(Development done, Speed speed, double logSd) {
        double factor = Math.exp(Normal.Z90 * logSd);
        return new Hatched(
                speed.hatchedShare(done.degreeHours() / factor),
                speed.hatchedShare(done.degreeHours()),
                speed.hatchedShare(done.degreeHours() * factor));
    }

    private static End end(double medianHours, Ahead ahead, Rate rate) {
        if (medianHours < Double.POSITIVE_INFINITY) {
            return End.REACHED;
        }
        if (rate.perHour(ahead.headingC()) > 0) {
            return End.TOO_SLOW;
        }
        return ahead.headingC() >= rate.ceilingC() ? End.TOO_WARM : End.TOO_COLD;
    }
}
