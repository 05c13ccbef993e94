package org.conetender.app.cli;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.TemporalAccessor;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Times as people and loggers write them: ISO 8601 with an offset, or without one in a zone that was
 * stated. A time without either is refused rather than guessed.
 *
 * @param zone the zone of times that carry no offset
 */
record LogTimes(Optional<ZoneId> zone) {

    private static final DateTimeFormatter ISO = new DateTimeFormatterBuilder()
            .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
            .appendPattern("[XXX][XX][X]")
            .toFormatter();

    /** Day, month and year in the orders that spreadsheets of many countries write, and what follows. */
    private static final Pattern OTHER_ORDER =
            Pattern.compile("(\\d{1,2})([./-])(\\d{1,2})\\2(\\d{4}|\\d{2})((?:[ T].*)?)");

    /** A time, in ms since 1970 UTC, and the offset it was written in. */
    record Stamp(long ms, ZoneOffset offset) {}

    /**
     * @param text such as {@code 2026-03-01T07:30+01:00} or {@code 2026-03-01 07:30:00}
     * @param afterMs the time before it in the same log; settles which of the two hours is meant when
     *     the clocks go back
     * @throws BadLog with a phrase that says what is wrong, to follow the place where it stands
     */
    Stamp read(String text, long afterMs) throws BadLog {
        return switch (parse(text)) {
            case OffsetDateTime t -> new Stamp(t.toInstant().toEpochMilli(), t.getOffset());
            case LocalDateTime t -> local(t, text, afterMs);
            default -> throw new BadLog(notATime(text));
        };
    }

    /** Whether it looks like a time at all, with or without an offset, even in another order. */
    static boolean looksLikeOne(String text) {
        try {
            parse(text);
            return true;
        } catch (BadLog e) {
            return e.throughout();
        }
    }

    private static TemporalAccessor parse(String text) throws BadLog {
        String iso = text.length() > 10 && text.charAt(10) == ' ' ? text.substring(0, 10) + 'T'
                + text.substring(11).replace(" ", "") : text;
        try {
            return ISO.parseBest(iso, OffsetDateTime::from, LocalDateTime::from);
        } catch (DateTimeException e) {
            Matcher m = OTHER_ORDER.matcher(text);
            throw m.matches() ? otherOrder(text, m) : new BadLog(notATime(text));
        }
    }

    /** Points put the day first everywhere; with / or - nobody can tell the day from the month. */
    private static BadLog otherOrder(String text, Matcher m) {
        boolean points = m.group(2).equals(".");
        String year = m.group(4).length() == 2 ? "20" + m.group(4) : m.group(4);
        return BadLog.throughout("\"" + text + "\" must begin with the year, then month and day: "
                + (points ? "write " + year + "-" + two(m.group(3)) + "-" + two(m.group(1)) + m.group(5)
                        : "write it like 2026-03-01 07:30, since " + m.group(1) + m.group(2) + m.group(3)
                                + " may be day or month first")
                + "; a spreadsheet does so when its time column has the format yyyy-mm-dd hh:mm");
    }

    private static String two(String digits) {
        return digits.length() == 1 ? "0" + digits : digits;
    }

    private static String notATime(String text) {
        return "\"" + text + "\" is not a time; write it like 2026-03-01T07:30+01:00";
    }

    private Stamp local(LocalDateTime t, String text, long afterMs) throws BadLog {
        if (zone.isEmpty()) {
            throw BadLog.throughout("\"" + text + "\" does not say its zone; name it with --zone, such as "
                    + "--zone Europe/London, or add an offset such as +01:00");
        }
        List<ZoneOffset> offsets = zone.get().getRules().getValidOffsets(t);
        if (offsets.isEmpty()) {
            throw new BadLog("\"" + text + "\" does not exist in " + zone.get()
                    + ": the clocks went forward over it; check the zone");
        }
        Stamp first = stamp(t, offsets.getFirst());
        return first.ms > afterMs ? first : stamp(t, offsets.getLast());
    }

    private static Stamp stamp(LocalDateTime t, ZoneOffset offset) {
        return new Stamp(t.toInstant(offset).toEpochMilli(), offset);
    }
}
