package org.conetender.app.cli;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalLong;
import org.conetender.core.hatch.RateForm;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Speed;
import org.conetender.core.unit.Units;

/**
 * What {@code forecast} has to say, before it is put into words or JSON.
 *
 * @param read the log and what was remarked about it
 * @param asked what else was asked
 * @param replay the reckoning
 */
record ForecastReport(LogReader.Result read, Asked asked, Replay replay) {

    /**
     * @param stockedMs when the cysts were wetted, ms since 1970 UTC
     * @param byMs by when the chance of being ready is asked, ms since 1970 UTC
     * @param form of the rate
     */
    record Asked(long stockedMs, OptionalLong byMs, RateForm form) {}


    private static final DateTimeFormatter DAY_AND_TIME =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    private static final DateTimeFormatter WEEKDAY =
            DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

    long stockedMs() {
        return asked.stockedMs();
    }

    OptionalLong byMs() {
        return asked.byMs();
    }

    /** The lot in this water. */
    Speed speed() {
        return replay.outlook().speed();
    }

    /** The chance that it is ready by the moment that was asked, 0..1. */
    double chance() {
        return replay.outlook().readyBy(Units.hours(byMs().orElseThrow() - read.log().lastMs()));
    }

    /** For people who know the year. */
    String dayAndTime(long ms) {
        return WEEKDAY.format(Instant.ofEpochMilli(ms).atZone(read.zone()));
    }

    /** For people, in the log's zone. */
    String time(long ms) {
        return DAY_AND_TIME.format(Instant.ofEpochMilli(ms).atZone(read.zone()));
    }

    /** For programs: ISO 8601 with its offset, to the second. */
    String iso(long ms) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
                Instant.ofEpochMilli(ms / 1000 * 1000).atZone(read.zone()).toOffsetDateTime());
    }

    /** The moment so many hours after the last reading. @param hours finite */
    long aheadMs(double hours) {
        return read.log().lastMs() + Math.round(hours * 3_600_000);
    }
}
