package org.conetender.app.cli;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import org.conetender.core.face.LotWords;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.RateForm;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Slip;
import org.conetender.core.hatch.Speed;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * What {@code forecast} has to say, before it is put into words or JSON.
 *
 * @param read the log and what was remarked about it
 * @param asked what else was asked
 * @param replay the reckoning
 * @param seen what people saw of the batch
 */
record ForecastReport(LogReader.Result read, Asked asked, Replay replay, Seen seen) {

    /** @param looks at it and verdicts on it  @param slips those among them that can hardly be */
    record Seen(List<Lesson> looks, List<Slip> slips) {}

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

    /** What was remarked about the log, then about the rest; whole sentences. */
    List<String> notes() {
        List<String> notes = new ArrayList<>(read.remarks());
        replay.holes().stream().filter(h -> h.untilMs() == read.log().firstMs()).findFirst().ifPresent(h ->
                notes.add(Text.of("the cysts were wetted %s before the first reading: the water is taken to "
                        + "have been between the room and that reading, which gave %s.", span(h.ms()),
                        interval(h.development()))));
        for (Slip s : seen.slips()) {
            notes.add((s.lesson().sight() instanceof Lesson.Sight.Counted c
                    ? Text.of("the count of %d nauplii, %d umbrella stages and %d unhatched ", c.nauplii(),
                    c.umbrella(), c.unhatched()) : "that nauplii were seen then ") + LotWords.slip(s));
        }
        return notes;
    }

    /** What all hours without readings gave, in words; empty where there is none. */
    Optional<String> unmeasured() {
        List<Replay.Hole> holes = replay.holes();
        return holes.isEmpty() ? Optional.empty() : Optional.of(Text.of("%s without readings gave %s of them",
                span(holes.stream().mapToLong(Replay.Hole::ms).sum()), interval(holes.stream()
                        .map(Replay.Hole::development).reduce(Development.NONE, Development::plus))));
    }

    private static String interval(Development d) {
        return Text.of("%.1f to %.1f °C·h", d.leastDegreeHours(), d.mostDegreeHours());
    }

    private static String span(long ms) {
        long minutes = Math.round(Units.minutes(ms));
        return Text.of("%d h %02d min", minutes / 60, minutes % 60);
    }

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
