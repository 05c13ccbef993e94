package org.conetender.app.plot;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** Round numbers and round hours for an axis. */
final class Ticks {

    private static final int[] HOURS = {1, 2, 3, 4, 6, 12, 24, 48, 96, 240};

    private Ticks() {}

    /** The step, 1, 2 or 5 times a power of ten, that parts a range into at most so many. */
    static double step(double range, int most) {
        double least = range / most;
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double f : new double[] {1, 2, 5}) {
            if (f * power >= least * (1 - 1e-9)) {
                return f * power;
            }
        }
        return 10 * power;
    }

    /** The multiples of a step between two numbers. */
    static List<Double> between(double low, double high, double step) {
        List<Double> ticks = new ArrayList<>();
        for (long i = (long) Math.ceil(low / step - 1e-9); i * step <= high + 1e-9 * step; i++) {
            ticks.add(i * step);
        }
        return ticks;
    }

    /** The step in whole hours that parts so many into at most {@code most}. */
    static int hours(double hours, int most) {
        int step = HOURS[HOURS.length - 1];
        for (int i = HOURS.length - 1; i >= 0; i--) {
            step = hours / HOURS[i] <= most ? HOURS[i] : step;
        }
        return step;
    }

    /** Hours of the day on the clocks of that zone, as many as fit, at most {@code most}. */
    static List<ZonedDateTime> hours(long fromMs, long toMs, ZoneId zone, int most) {
        int step = hours((toMs - fromMs) / 3_600_000.0, most);
        List<ZonedDateTime> ticks = new ArrayList<>();
        LocalDateTime local = Instant.ofEpochMilli(fromMs).atZone(zone).toLocalDateTime()
                .truncatedTo(ChronoUnit.DAYS);
        // Summer time moves the instants, not the hours that are written: steps are those of the clock.
        for (ZonedDateTime t = local.atZone(zone); t.toInstant().toEpochMilli() <= toMs;
                local = local.plusHours(step), t = local.atZone(zone)) {
            if (t.toInstant().toEpochMilli() >= fromMs && t.toLocalDateTime().equals(local)) {
                ticks.add(t);
            }
        }
        return ticks;
    }
}
