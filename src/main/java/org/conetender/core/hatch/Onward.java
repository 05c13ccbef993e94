package org.conetender.core.hatch;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.conetender.core.unit.Units;

/**
 * What a thermometer's log lets one expect of the water after it. Water that rose and fell over the log's
 * last day is taken to do so again; any other stays at the mean of its last hour. Nobody knows whether it
 * does, so what it swung by goes along as a doubt.
 *
 * @param daily whether the last 24 h are repeated
 * @param meanC mean of what is expected over a day, °C
 * @param leastC coldest of it  @param mostC warmest
 * @param doubtK by which all the water to come may be warmer or colder, one standard deviation, K
 */
public record Onward(boolean daily, double meanC, double leastC, double mostC, double doubtK) {

    private static final int PER_HOUR = (int) Math.round(1 / Projection.STEP_H);
    private static final int STEPS = 24 * PER_HOUR;

    /** Water that swings by less is taken for steady, K (*guess*: what a thermostat leaves). */
    private static final double LEAST_SWING_K = 0.3;

    /** A course that ends so far from where it began is a change, no day: share of its range (*guess*). */
    private static final double COMES_BACK = 0.5;

    /** One day differs from the next by so much of what it swings by (*guess*). */
    private static final double DAYS_DIFFER = 0.5;

    /** The water of each step of a log's last day, oldest first, °C; NaN where nobody knows. */
    private record Day(double[] waterC) {

        static Day of(ThermometerLog log) {
            double[] c = new double[STEPS + 1];
            int after = log.size() - 1;
            for (int i = STEPS; i >= 0; i--) {
                long at = log.lastMs() - Math.round((STEPS - i) * Projection.STEP_H * Units.HOUR_MS);
                while (after > 0 && log.timeMs(after - 1) >= at) {
                    after--;
                }
                c[i] = at == log.timeMs(after) ? log.waterC(after) : after == 0 || log.gapBefore(after)
                        ? Double.NaN : log.waterC(after - 1) + (log.waterC(after) - log.waterC(after - 1))
                        * (at - log.timeMs(after - 1)) / (log.timeMs(after) - log.timeMs(after - 1));
            }
            return new Day(c);
        }

        /** Means of its hours as far as they were read, oldest first; at least the last one. */
        double[] hourlyC() {
            return IntStream.range(0, 24).mapToObj(h -> Arrays.stream(waterC, h * PER_HOUR + 1,
                    (h + 1) * PER_HOUR + 1).filter(c -> !Double.isNaN(c)).average())
                    .filter(m -> m.isPresent()).mapToDouble(m -> m.getAsDouble()).toArray();
        }

        boolean pattern() {
            double range = Arrays.stream(waterC).filter(c -> !Double.isNaN(c)).max().orElseThrow()
                    - Arrays.stream(waterC).filter(c -> !Double.isNaN(c)).min().orElseThrow();
            // Without a reading a day ago the comparison is false.
            return DayPattern.known(waterC) && Math.abs(waterC[STEPS] - waterC[0])
                    <= COMES_BACK * range;
        }

        /** From now on, a straight line over what nobody knows. */
        List<Double> again() {
            return Arrays.stream(DayPattern.bridged(waterC), 0, STEPS).boxed().toList();
        }
    }

    /** @param log so far  @param heldC mean of its last hour, °C */
    static Onward of(ThermometerLog log, double heldC) {
        Day day = Day.of(log);
        double[] hourly = day.hourlyC();
        double swing = apart(hourly, median(hourly));
        if (swing >= LEAST_SWING_K && day.pattern()) {
            var c = day.again().stream().mapToDouble(d -> d).summaryStatistics();
            return new Onward(true, c.getAverage(), c.getMin(), c.getMax(), DAYS_DIFFER * swing);
        }
        double[] before = Arrays.copyOf(hourly, hourly.length - 1);
        return new Onward(false, heldC, heldC, heldC, before.length == 0 ? 0 : apart(before, heldC));
    }

    /** The water from the last reading on. @param log the same */
    Projection projection(ThermometerLog log) {
        return daily ? Projection.following(log.waterC(log.size() - 1), Day.of(log).again(), meanC)
                : Projection.steady(meanC);
    }

    /** Why a batch never gets there: of a day, not of the hour at which the look-ahead ends. */
    Forecast.Course told(Forecast.Course c, Rate rate) {
        if (!daily || c.end() == Forecast.End.REACHED) {
            return c;
        }
        Forecast.End end = mostC <= rate.baseC() ? Forecast.End.TOO_COLD
                : meanC >= rate.bestC() ? Forecast.End.TOO_WARM : Forecast.End.TOO_SLOW;
        return new Forecast.Course(end, meanC, c.calibrated());
    }

    /**
     * How far they mostly lie from that: for a day that swings evenly its standard deviation, and nothing
     * for water that was warmed once and stayed so.
     */
    private static double apart(double[] hourlyC, double fromC) {
        return median(Arrays.stream(hourlyC).map(c -> Math.abs(c - fromC)).toArray());
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }
}
