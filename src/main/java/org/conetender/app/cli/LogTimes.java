package org.conetender.app.cli;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.conetender.core.unit.Units;

/**
 * Times as people and loggers write them: ISO 8601, or with the day first, with an offset or without one in
 * a zone that was stated. What the text leaves open and nobody stated is refused rather than guessed.
 *
 * <p>One log, one thread: the day of the last time is remembered, since looking one up takes long.
 */
final class LogTimes {

    /** Day, month and year as spreadsheets of many countries write them, whatever follows. */
    private static final Pattern OTHER_ORDER =
            Pattern.compile("\\d{1,2}([./-])\\d{1,2}\\1(\\d{4}|\\d{2})([ T].*)?");

    /** Clocks that go back let a day's last hours come again; nowhere for longer than a day. */
    private static final long AROUND_MS = 25 * Units.HOUR_MS;
    private static final long DAY_MS = 24 * Units.HOUR_MS;

    private static final String SPREADSHEET =
            "; a spreadsheet does so when its time column has the format yyyy-mm-dd hh:mm";

    private final Optional<ZoneId> zone;
    private final boolean dayFirst;

    // The day looked up last: how it was written, when it began by UTC, and its offset if it has only one.
    private int lastDate;
    private long lastDayMs;
    private ZoneOffset lastOffset;

    /**
     * @param zone of times that carry no offset
     * @param dayFirst whether 1/3/2026 and 1-3-2026 are days of March
     */
    LogTimes(Optional<ZoneId> zone, boolean dayFirst) {
        this.zone = zone;
        this.dayFirst = dayFirst;
    }

    /** A time, in ms since 1970 UTC, and the offset it was written in. */
    record Stamp(long ms, ZoneOffset offset) {}

    /**
     * @param text such as {@code 2026-03-01T07:30+01:00}, {@code 2026-03-01 07:30:00} or
     *     {@code 01.03.2026 07:30}
     * @param afterMs the time before it in the same log; settles which of the two hours is meant when
     *     the clocks go back
     * @throws BadLog with a phrase that says what is wrong, to follow the place where it stands
     */
    Stamp read(String text, long afterMs) throws BadLog {
        WrittenTime w = WrittenTime.scan(text);
        if (w == null) {
            throw OTHER_ORDER.matcher(text).matches() && !dayFirst && text.charAt(2) != '.'
                    && text.charAt(1) != '.' ? unclear(text) : new BadLog(notATime(text));
        }
        if (w.order() == WrittenTime.Order.UNCLEAR && !dayFirst) {
            throw unclear(text);
        }
        long dayMs = dayMs(w, text);
        if (w.hasOffset()) {
            return new Stamp(dayMs + w.msOfDay() - w.offsetS() * Units.SECOND_MS,
                    ZoneOffset.ofTotalSeconds(w.offsetS()));
        }
        if (zone.isEmpty()) {
            throw BadLog.throughout("\"" + text + "\" does not say its zone; name it with --zone, such as "
                    + "--zone Europe/London, or add an offset such as +01:00");
        }
        return lastOffset != null ? new Stamp(dayMs + w.msOfDay()
                - lastOffset.getTotalSeconds() * Units.SECOND_MS, lastOffset)
                : changing(dayMs + w.msOfDay(), text, afterMs);
    }

    /** Whether it looks like a time at all, with or without an offset, even in another order. */
    static boolean looksLikeOne(String text) {
        return WrittenTime.scan(text) != null || OTHER_ORDER.matcher(text).matches();
    }

    /** When that day begins by UTC, ms since 1970; looks up its offset in the zone too. */
    private long dayMs(WrittenTime w, String text) throws BadLog {
        if (w.date() != lastDate) {
            LocalDate date;
            try {
                date = LocalDate.of(w.year(), w.month(), w.day());
            } catch (DateTimeException e) {
                throw w.order() != WrittenTime.Order.YEAR_FIRST && w.month() > 12 && w.day() <= 12
                        ? new BadLog("\"" + text + "\" has no month " + w.month() + "; does the log write "
                                + "the month first? Write it like 2026-03-01 07:30" + SPREADSHEET)
                        : new BadLog(notATime(text));
            }
            lastDate = w.date();
            lastDayMs = date.toEpochDay() * DAY_MS;
            lastOffset = zone.map(z -> only(z, date)).orElse(null);
        }
        return lastDayMs;
    }

    /** The offset of that whole day; null if the clocks are changed in it or near its end. */
    private static ZoneOffset only(ZoneId zone, LocalDate date) {
        List<ZoneOffset> first = zone.getRules().getValidOffsets(date.atStartOfDay());
        if (first.size() != 1) {
            return null;
        }
        Instant begin = date.atStartOfDay().toInstant(first.getFirst());
        ZoneOffsetTransition next = zone.getRules().nextTransition(begin.minusMillis(1));
        return next == null || next.getInstant().isAfter(begin.plusMillis(DAY_MS + AROUND_MS))
                ? first.getFirst() : null;
    }

    /** On a day when the clocks are changed. @param localMs as if the zone were UTC */
    private Stamp changing(long localMs, String text, long afterMs) throws BadLog {
        List<ZoneOffset> offsets = zone.orElseThrow().getRules().getValidOffsets(
                LocalDateTime.ofEpochSecond(Math.floorDiv(localMs, 1_000L), 0, ZoneOffset.UTC));
        if (offsets.isEmpty()) {
            throw new BadLog("\"" + text + "\" does not exist in " + zone.get()
                    + ": the clocks went forward over it; check the zone, which of a logger that knows no "
                    + "summer time is one such as +01:00");
        }
        Stamp first = stamp(localMs, offsets.getFirst());
        return first.ms > afterMs ? first : stamp(localMs, offsets.getLast());
    }

    private static Stamp stamp(long localMs, ZoneOffset offset) {
        return new Stamp(localMs - offset.getTotalSeconds() * Units.SECOND_MS, offset);
    }

    /** With / or - nobody can tell the day from the month. */
    private static BadLog unclear(String text) {
        return BadLog.throughout("\"" + text + "\" may begin with the day or with the month: say --day-first "
                + "if every date of the log begins with its day, or write it like 2026-03-01 07:30"
                + SPREADSHEET);
    }

    private static String notATime(String text) {
        return "\"" + text + "\" is not a time; write it like 2026-03-01T07:30+01:00 or, in a stated zone, "
                + "01.03.2026 07:30";
    }
}
