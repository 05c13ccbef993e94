package org.conetender.core.hatch;

/**
 * A forecast whose past is known: what lies behind is read from the course instead of being reckoned at the
 * present rate.
 *
 * @param onward what the water is expected to do
 * @param course what was, and the projection the forecast was made with
 * @param spread of the same forecast
 */
record Remembered(Onward onward, Course course, Spread spread) {

    /** With the degree-hours of the moment that is announced. @param rate the same that it was made with */
    Forecast of(Forecast f, Rate rate) {
        Speed speed = spread.speed();
        double needed = spread.calledReadyAt();
        Forecast.Ready ready = new Forecast.Ready(at(-Normal.Z90), at(-Normal.Z75), at(0), at(Normal.Z75),
                at(Normal.Z90), course.hoursAt(needed));
        return new Forecast(f.doneDegreeHours(), needed, ready, course.hoursAt(speed.k10()),
                f.hatched(), onward.told(f.course(), rate));
    }

    /** When 90 % have hatched of a batch that is slower than the median by so many deviations. */
    private double at(double z) {
        return course.hoursAt(spread.readyAt(z));
    }
}
