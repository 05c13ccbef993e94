package org.conetender.core.hatch;

import java.util.List;

/**
 * The room around the cone, as far as it can be foreseen: one temperature, or a daily pattern.
 *
 * @param byHourC temperatures at the start of equal parts of a day, from midnight, °C; one for a
 *     constant room, 24 for an hourly pattern
 * @param hourOfDay hour of the day now, 0..24, in the zone of the pattern
 */
public record Room(List<Double> byHourC, double hourOfDay) {

    public Room {
        byHourC = List.copyOf(byHourC);
        if (byHourC.isEmpty()) {
            throw new IllegalArgumentException("a room needs at least one temperature");
        }
    }

    /** A room that stays as it is. */
    public static Room constant(double degreesC) {
        return new Room(List.of(degreesC), 0);
    }

    /** Its temperature so many hours from now, on straight lines between the pattern's points. */
    double aheadC(double hours) {
        int n = byHourC.size();
        if (n == 1) {
            return byHourC.getFirst();
        }
        double place = (hourOfDay + hours) / 24 * n;
        int i = (int) Math.floor(place);
        double a = byHourC.get(Math.floorMod(i, n));
        double b = byHourC.get(Math.floorMod(i + 1, n));
        return a + (b - a) * (place - i);
    }
}
