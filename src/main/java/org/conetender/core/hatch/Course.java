package org.conetender.core.hatch;

import java.util.Arrays;

/**
 * The water and the degree-hours of one batch over time: what was, and from now on what the projection
 * gives. A row of points, at most five minutes apart; hours count from now. Immutable.
 */
public final class Course {

    private final double[] hours;
    private final double[] least;
    private final double[] most;
    private final double[] waterC;
    private final int now;

    private Course(Builder b, int now) {
        this.hours = b.points(b.hours);
        this.least = b.points(b.least);
        this.most = b.points(b.most);
        this.waterC = b.points(b.waterC);
        this.now = now;
        double nowH = hours[now];
        for (int i = 0; i < hours.length; i++) {
            hours[i] -= nowH;
        }
        bridgeUnknown();
    }

    /** Where nothing was measured a straight line; beyond the first or last reading what that was. */
    private void bridgeUnknown() {
        int known = -1;
        for (int i = 0; i < waterC.length; i++) {
            if (!Double.isNaN(waterC[i])) {
                for (int k = known + 1; k < i; k++) {
                    waterC[k] = known < 0 ? waterC[i] : waterC[known]
                            + (waterC[i] - waterC[known]) * (k - known) / (i - known);
                }
                known = i;
            }
        }
    }

    /** How many points, at least one. */
    public int size() {
        return hours.length;
    }

    /** The point that is now: the last of what was. */
    public int now() {
        return now;
    }

    /** When, in hours from now. */
    public double hours(int i) {
        return hours[i];
    }

    /** Degree-hours surely done, °C·h. */
    public double least(int i) {
        return least[i];
    }

    /** Degree-hours that may have been done, °C·h. */
    public double most(int i) {
        return most[i];
    }

    /** The middle of both, °C·h. */
    public double done(int i) {
        return (least[i] + most[i]) / 2;
    }

    /** The water, °C. */
    public double waterC(int i) {
        return waterC[i];
    }

    /** What was done by then. @param atH hours from now, within the course */
    public Development doneAt(double atH) {
        int i = 1;
        while (i < hours.length - 1 && hours[i] < atH) {
            i++;
        }
        double part = hours.length == 1 ? 0
                : Math.clamp((atH - hours[i - 1]) / (hours[i] - hours[i - 1]), 0, 1);
        int before = hours.length == 1 ? 0 : i - 1;
        int after = Math.min(i, hours.length - 1);
        return new Development(least[before] + part * (least[after] - least[before]),
                most[before] + part * (most[after] - most[before]), 0, 0, 0);
    }

    /** Hours from now until so many degree-hours are done; negative if they are, infinite if never. */
    public double hoursAt(double degreeHours) {
        for (int i = 0; i < hours.length; i++) {
            if (done(i) >= degreeHours) {
                return i == 0 || done(i) == done(i - 1) ? hours[i] : hours[i - 1] + (hours[i] - hours[i - 1])
                        * (degreeHours - done(i - 1)) / (done(i) - done(i - 1));
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    /**
     * The course of a batch of which only the present is known, and how long it took: where nobody knows
     * that either, the water is taken to have been before as it is.
     *
     * @param done what the cysts have done so far  @param rate the same that it was gained with
     */
    public static Course from(Development done, Projection projection, Rate rate) {
        double doneNow = done.degreeHours();
        double perHour = rate.perHour(projection.waterC());
        Behind was = projection.behind().known() || perHour <= 0 ? projection.behind()
                : Behind.growing(doneNow / perHour);
        double sinceH = Math.min(Forecast.HORIZON_H, was.hours());
        int steps = (int) Math.ceil(sinceH / Projection.STEP_H);
        Builder b = new Builder(steps + 1 + Builder.AHEAD);
        for (int i = steps; i >= 1; i--) {
            double ago = Math.min(sinceH, i * Projection.STEP_H);
            double gained = was.gainedSince(doneNow, ago);
            b.add(-ago, Math.max(0, done.leastDegreeHours() - gained),
                    Math.max(0, done.mostDegreeHours() - gained), projection.behind().known()
                    ? rate.thresholdAtC(was.perHourAt(doneNow, ago)) : projection.waterC());
        }
        b.add(0, done, projection.waterC());
        return b.ahead(projection, rate);
    }

    /** Gathers the points in order of time. One use, one thread. */
    static final class Builder {

        private static final int AHEAD = (int) Math.round(Forecast.HORIZON_H / Projection.STEP_H);

        private int n;
        private double[] hours;
        private double[] least;
        private double[] most;
        private double[] waterC;

        /** @param points how many are expected */
        Builder(int points) {
            this.hours = new double[points];
            this.least = new double[points];
            this.most = new double[points];
            this.waterC = new double[points];
        }

        /** As many as there are; it is used once, so what was expected is handed over. */
        private double[] points(double[] of) {
            return n == of.length ? of : Arrays.copyOf(of, n);
        }

        /** @param atH hours on any clock, rising  @param c the water, °C; NaN while it was not measured */
        void add(double atH, Development done, double c) {
            add(atH, done.leastDegreeHours(), done.mostDegreeHours(), c);
        }

        private void add(double atH, double leastDone, double mostDone, double c) {
            if (n == hours.length) {
                hours = Arrays.copyOf(hours, 2 * n);
                least = Arrays.copyOf(least, 2 * n);
                most = Arrays.copyOf(most, 2 * n);
                waterC = Arrays.copyOf(waterC, 2 * n);
            }
            hours[n] = atH;
            least[n] = leastDone;
            most[n] = mostDone;
            waterC[n++] = c;
        }

        /** The whole, now being the last point, with the projected water after it; at least one point. */
        Course ahead(Projection projection, Rate rate) {
            int now = n - 1;
            double water = projection.waterC();
            double gain = rate.perHour(water);
            double kept = projection.plant().keptPerStep();
            for (int i = 0; i < AHEAD; i++) {
                double done = (least[n - 1] + most[n - 1]) / 2;
                water = projection.nextC(water, i, projection.plan().aimC(done), kept);
                double next = rate.perHour(water);
                double more = Projection.STEP_H * (gain + next) / 2;
                add(hours[n - 1] + Projection.STEP_H, least[n - 1] + more, most[n - 1] + more, water);
                gain = next;
            }
            return new Course(this, now);
        }
    }
}
