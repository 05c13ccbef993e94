package org.conetender.core.hatch;

import java.util.List;

/**
 * The answer to a {@link ThermometerLog}: a table that a person can check by hand, and the forecast
 * from its last reading on.
 *
 * @param past one row per hour since stocking, the last one perhaps shorter, and what was not read
 * @param development at the last reading
 * @param forecast hours from the last reading
 * @param outlook what else can be said, hours from the last reading too
 */
public record Replay(Past past, Development development, Forecast forecast, Outlook outlook) {

    /** @param hours, holes until the last reading, in their order */
    public record Past(List<Hour> hours, List<Hole> holes) {

        public Past {
            hours = List.copyOf(hours);
            holes = List.copyOf(holes);
        }
    }

    /**
     * A time without readings.
     *
     * @param fromMs, untilMs ms since 1970 UTC  @param development what it gave, an interval
     */
    public record Hole(long fromMs, long untilMs, Development development) {
        public long ms() {
            return untilMs - fromMs;
        }
    }

    public List<Hour> hours() {
        return past.hours();
    }

    public List<Hole> holes() {
        return past.holes();
    }

    /**
     * @param speed the lot
     * @param zones what temperatures do to cysts
     * @param stockedMs when the cysts were wetted, ms since 1970 UTC
     * @param surroundings for hours without readings
     */
    public record Question(Speed speed, Zones zones, long stockedMs, Surroundings surroundings) {}

    /**
     * @param speed the lot in this water
     * @param onward the water from the last reading on
     * @param course water and degree-hours, until the look-ahead ends
     * @param harvest when it is worth most, for the lot's median
     * @param spread of the degree-hours that a hatched share takes
     */
    public record Outlook(Speed speed, Onward onward, Course course, Harvest harvest, Spread spread) {

        /** The share of the hatchable hatched at a point of the course, with its 10 and 90 % points. */
        public Forecast.Hatched hatched(int i) {
            double factor = Math.exp(Normal.Z90 * spread.logSdAt(0, course.done(i)));
            return new Forecast.Hatched(speed.hatchedShare(course.done(i) / factor),
                    speed.hatchedShare(course.done(i)), speed.hatchedShare(course.done(i) * factor));
        }

        /** The chance that the harvest point is reached by then, 0..1. @param hours within the course */
        public double readyBy(double hours) {
            return spread.ready(course.doneAt(hours).degreeHours());
        }
    }

    /** @param roomC the room, °C  @param timeConstantH of the cone, h */
    public record Surroundings(double roomC, double timeConstantH) {}

    /**
     * One hour. Below the bend of the rate, {@code gained} is the mean temperature less the base.
     *
     * @param untilMs its end, ms since 1970 UTC
     * @param water what was measured in it
     * @param gainedDegreeHours middle of what was gained in it, °C·h
     * @param done since stocking, at its end
     * @param hatched share of the hatchable hatched at its end, for the lot's median, 0..1
     */
    public record Hour(long untilMs, Water water, double gainedDegreeHours, Development done,
                       double hatched) {

        Hour hatched(Speed speed) {
            return new Hour(untilMs, water, gainedDegreeHours, done, speed.hatchedShare(done.degreeHours()));
        }
    }

    /**
     * @param meanC mean over time, °C; NaN when nothing was measured in that hour
     * @param leastC coldest  @param mostC warmest
     * @param minutes how much of the hour lies between readings that belong together
     */
    public record Water(double meanC, double leastC, double mostC, double minutes) {
        public boolean measured() {
            return minutes > 0;
        }
    }
}
