package org.conetender.app.plot;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import org.conetender.core.hatch.Course;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Harvest;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Speed;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.unit.Units;

/**
 * What a picture shows.
 *
 * @param log the readings  @param replay what follows from them
 * @param axis of its times
 * @param looks what people saw
 */
public record Hatch(ThermometerLog log, Replay replay, Axis axis, List<Look> looks) {

    /** @param hours from the last reading  @param share that swam, 0..1  @param words for it */
    public record Look(double hours, double share, String words) {}

    /**
     * How a picture tells its times.
     *
     * @param zone of the hours of the clock
     * @param clock whether they are known at all: else hours are counted from the left edge
     * @param breaks where a time that nobody knows is drawn as none, ms
     */
    public record Axis(ZoneId zone, boolean clock, List<Long> breaks) {
        public Axis {
            breaks = List.copyOf(breaks);
        }
    }

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    /** After the last thing of interest the picture ends so soon, h. */
    private static final double MARGIN_H = 1.5;

    /** Whose hours are all known. @param zone of every time on the picture */
    public Hatch(ThermometerLog log, Replay replay, ZoneId zone, List<Look> looks) {
        this(log, replay, new Axis(zone, true, List.of()), looks);
    }

    /** Where nobody looked. */
    public Hatch(ThermometerLog log, Replay replay, ZoneId zone) {
        this(log, replay, zone, List.of());
    }

    private ZoneId zone() {
        return axis.zone();
    }

    Speed speed() {
        return replay.outlook().speed();
    }

    Course course() {
        return replay.outlook().course();
    }

    Harvest harvest() {
        return replay.outlook().harvest();
    }

    Forecast forecast() {
        return replay.forecast();
    }

    /** When, ms since 1970 UTC. @param hours from the last reading, finite */
    long ms(double hours) {
        return log.lastMs() + Math.round(hours * Units.HOUR_MS);
    }

    /** Of that point of the course. */
    long pointMs(int i) {
        return ms(course().hours(i));
    }

    /** Where the picture begins: the wetting of the cysts. */
    long fromMs() {
        return pointMs(0);
    }

    /**
     * Where it ends: when everything about this hatch is over, whatever else the log holds. A hatch that
     * never comes is shown until the last reading.
     */
    long toMs() {
        double end = DoubleStream.of(forecast().ready().latest(), harvest().untilHours(),
                harvest().twice().map(Harvest.Twice::secondHours).orElse(Double.NaN),
                forecast().ready().announced(), course().hoursAt(speed().k90()))
                .filter(Double::isFinite).max().orElse(0) + MARGIN_H;
        double last = course().hours(course().size() - 1);
        return Math.max(ms(Math.min(end, last)), fromMs() + Units.HOUR_MS);
    }

    String clock(double hours) {
        return CLOCK.format(Instant.ofEpochMilli(ms(hours)).atZone(zone()));
    }

    String day(long atMs) {
        return DAY.format(Instant.ofEpochMilli(atMs).atZone(zone()));
    }

    String zoneName() {
        return zone() instanceof ZoneOffset o ? o.equals(ZoneOffset.UTC) ? "UTC" : "UTC" + o : zone().getId();
    }
}
