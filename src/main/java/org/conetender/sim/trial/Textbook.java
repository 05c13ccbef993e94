package org.conetender.sim.trial;

/** What a person does today who forecasts a hatch by hand. */
final class Textbook {

    /** A day and a night (science.md §2.1: T90 within 24 h is the field's goal). */
    static final double FIXED_H = 24;
    /** Lower threshold, °C, and degree-hours to the harvest point (science.md §2.3, K90). */
    static final double BASE_C = 12;
    static final double K90 = 319;

    private Textbook() {}

    /** Degree-hours of an hour in that water. */
    static double perHour(double waterC) {
        return Math.max(0, waterC - BASE_C);
    }

    /** Hours to go from that moment, if the water is held there from now on. @param setC °C */
    static double hoursLeft(ForecastRun.Moment m, double setC) {
        return (K90 - m.doneDegreeHours()) / Math.max(1, perHour(setC));
    }
}
