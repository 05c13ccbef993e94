package org.conetender.core.hatch;

/**
 * How long a batch took to come where it is. Of its past no more is kept than that, so it is a straight line
 * from its wetting to the moment at which it was called ready, and another from there: neither moves with the
 * water of this minute.
 *
 * @param growingHours from the wetting until it was called ready, or until now; 0 while nobody knows
 * @param ripeHours since it was called ready; 0 before
 * @param ripeDegreeHours that it had then; of no meaning before, °C·h
 */
public record Behind(double growingHours, double ripeHours, double ripeDegreeHours) {

    /** The past was as the water is now. */
    public static final Behind UNKNOWN = new Behind(0, 0, 0);

    /** A batch that grows since so many hours. */
    public static Behind growing(double hours) {
        return new Behind(hours, 0, 0);
    }

    boolean known() {
        return growingHours > 0;
    }

    double hours() {
        return growingHours + ripeHours;
    }

    /** Mean rate on the way to its harvest point, °C·h an hour. @param doneNow °C·h */
    double perHour(double doneNow) {
        return (ripeHours > 0 ? ripeDegreeHours : doneNow) / growingHours;
    }

    /** Degree-hours gained an hour then. @param agoH before now, not beyond the wetting */
    double perHourAt(double doneNow, double agoH) {
        return agoH < ripeHours ? Math.max(0, doneNow - ripeDegreeHours) / ripeHours : perHour(doneNow);
    }

    /** Degree-hours gained since then. @param agoH before now, not beyond the wetting */
    double gainedSince(double doneNow, double agoH) {
        return agoH < ripeHours ? agoH * perHourAt(doneNow, 0)
                : ripeHours * perHourAt(doneNow, 0) + (agoH - ripeHours) * perHour(doneNow);
    }
}
