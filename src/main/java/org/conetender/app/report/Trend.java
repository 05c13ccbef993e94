package org.conetender.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.conetender.core.unit.Text;

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

    private static final double DAY_MS = 86_400_000.0;
    private static final double MONTH_DAYS = 30;

    /** @param days since the tin was opened  @param value of the figure  @param sd its doubt, above 0 */
    record Point(double days, double value, double sd) {}

    /** A figure of one batch. */
    interface Figure {
        Optional<Point> of(Story s, double days);
    }

    /** That figure of all batches that have it, by days since the first of them began. */
    static List<Point> points(Measured measured, List<Story> stories, Figure figure) {
        List<Point> points = new ArrayList<>();
        Optional<Double> first = Optional.empty();
        for (Story s : stories) {
            Optional<Double> days = s.began().flatMap(measured.past().ruler()::hour)
                    .map(h -> h.toInstant().toEpochMilli() / DAY_MS);
            first = first.or(() -> days);
            double opened = first.orElse(0.0);
            days.flatMap(d -> figure.of(s, d - opened)).ifPresent(points::add);
        }
        return points;
    }

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

    /**
     * The same of figures that scatter by more than the doubt of each explains: the doubt of the line grows
     * with them, by the square root of what is left over for each degree of freedom.
     */
    static Optional<Trend> scattered(List<Point> points) {
        return of(points).map(t -> {
            double at = mean(points, Point::days);
            double high = mean(points, Point::value);
            double left = points.stream().mapToDouble(p -> (p.value() - high - t.perMonth() / MONTH_DAYS
                    * (p.days() - at)) / p.sd()).map(z -> z * z).sum() / (points.size() - 2);
            return new Trend(t.perMonth(), t.sd() * Math.sqrt(Math.max(1, left)));
        });
    }

    private static double mean(List<Point> points, ToDoubleFunction<Point> figure) {
        double w = points.stream().mapToDouble(p -> 1 / (p.sd() * p.sd())).sum();
        return points.stream().mapToDouble(p -> figure.applyAsDouble(p) / (p.sd() * p.sd())).sum() / w;
    }

    /** @param format of a figure and its doubt */
    String words(String format) {
        return "  with age: " + Text.of(format, perMonth, sd) + (sure() ? "" : ", which may be chance");
    }

    /** Whether it is more than what the doubt of its points may feign: two standard deviations. */
    boolean sure() {
        return Math.abs(perMonth) > 2 * sd;
    }
}
