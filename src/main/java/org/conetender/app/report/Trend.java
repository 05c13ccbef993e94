package org.conetender.app.report;

import java.util.List;
import java.util.Optional;

/**
 * A straight line through weighted points: what a figure does with the age of the tin.
 *
 * @param perMonth change in 30 days  @param sd its standard deviation, by the points' own
 */
record Trend(double perMonth, double sd) {

    /** Fewer tell nothing. */
    static final int LEAST = 3;

    /** In less no tin has aged (guess). */
    private static final double LEAST_DAYS = 14;

    private static final double MONTH_DAYS = 30;

    /** @param days since the tin was opened  @param value of the figure  @param sd its doubt, above 0 */
    record Point(double days, double value, double sd) {}

    /** Weighted least squares; empty for fewer than three points, or within two weeks. Points in order. */
    static Optional<Trend> of(List<Point> points) {
        double w = 0;
        double x = 0;
        double y = 0;
        for (Point p : points) {
            double weight = 1 / (p.sd() * p.sd());
            w += weight;
            x += weight * p.days();
            y += weight * p.value();
        }
        double xx = 0;
        double xy = 0;
        for (Point p : points) {
            double weight = 1 / (p.sd() * p.sd());
            xx += weight * (p.days() - x / w) * (p.days() - x / w);
            xy += weight * (p.days() - x / w) * (p.value() - y / w);
        }
        return points.size() < LEAST || points.getLast().days() - points.getFirst().days() < LEAST_DAYS
                ? Optional.empty()
                : Optional.of(new Trend(xy / xx * MONTH_DAYS, Math.sqrt(1 / xx) * MONTH_DAYS));
    }

    /** Whether it is more than what the doubt of its points may feign: two standard deviations. */
    boolean sure() {
        return Math.abs(perMonth) > 2 * sd;
    }
}
