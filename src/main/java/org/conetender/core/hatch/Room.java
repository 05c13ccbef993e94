package org.conetender.core.hatch;

import java.util.List;

/**
 * The room around the cone, as far as it can be foreseen: one temperature, or a daily pattern.
 *
 * @param byHourC temperatures at the start of equal parts of a day, from midnight, °C; one for a
 *     constant room, 24 for an hourly pattern
 * @param hourOfDay hour of the day now, 0..24, in the zone of the pattern
 * @param offK by which it is warmer now than the pattern has it, K; by tomorrow it is not any more
 */
public record Room(List<Double> byHourC, double hourOfDay, double offK) {

    /** Weather and doors that make a day unlike the last ones are over after so long, h (*guess*). */
    private static final double OVER_H = 24;

    public Room {
        byHourC = List.copyOf(byHourC);
        if (byHourC.isEmpty()) {
            throw new IllegalArgumentException("a room needs at least one temperature");
        }
    }

    /** One that is now as its pattern has it. */
    public Room(List<Double> byHourC, double hourOfDay) {
        this(byHourC, hourOfDay, 0);
    }

    /** A room that stays as it is. */
    public static Room constant(double degreesC) {
        return new Room(List.of(degreesC), 0);
    }

    /** The same, but now it is that warm. */
    Room from(double nowC) {
        return new Room(byHourC, hourOfDay, nowC - new Room(byHourC, hourOfDay).aheadC(0));
    }

    /** The same, its hours counted from so long ago. @param hours 0 or more */
    public Room since(double hours) {
        return new Room(byHourC, hourOfDay - hours, offK);
    }

    /** A room that is always so much warmer. */
    Room plus(double kelvin) {
        return new Room(byHourC.stream().map(c -> c + kelvin).toList(), hourOfDay, offK);
    }

    /** Its temperature so many hours from now, on straight lines between the pattern's points. */
    double aheadC(double hours) {
        int n = byHourC.size();
        double off = offK * Math.max(0, 1 - hours / OVER_H);
        if (n == 1) {
            return byHourC.getFirst() + off;
        }
        double place = (hourOfDay + hours) / 24 * n;
        double i = Math.floor(place);
        int at = Math.floorMod((int) i, n);
        double a = byHourC.get(at);
        double b = byHourC.get(at + 1 == n ? 0 : at + 1);
        return a + (b - a) * (place - i) + off;
    }
}
