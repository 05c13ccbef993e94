package org.conetender.core.image;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAdjusters;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An hour as a person says it: {@code 07:30}, {@code fri 07:30} or {@code 2026-11-27 07:30}. It is an hour
 * of the site's own clock; which moment that is depends on the site's zone, summer time included.
 *
 * @param date its day, where one was named by its date
 * @param day its day, where one was named by its weekday; never both
 * @param time of the day, to the minute
 */
public record Hour(Optional<LocalDate> date, Optional<DayOfWeek> day, LocalTime time) {

    /** What an hour may look like, for whoever did not say one. */
    public static final String FORMS = "07:30, fri 07:30 or 2026-11-27 07:30";

    private static final Pattern SAID = Pattern.compile(
            "(?:(\\d{4}-\\d{2}-\\d{2})[ t]+|([a-z]{3,9}) +)?(\\d{1,2}):(\\d{2})");
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEE", Locale.ENGLISH);
    private static final int SHORT_DAY = 3;

    /** An hour of that day. */
    public static Hour of(LocalDate date, LocalTime time) {
        return new Hour(Optional.of(date), Optional.empty(), time);
    }

    /** @throws IllegalArgumentException if that is no hour, with words for whoever said it */
    public static Hour parse(String said) {
        Matcher m = SAID.matcher(said.strip().toLowerCase(Locale.ROOT));
        try {
            if (m.matches()) {
                return new Hour(Optional.ofNullable(m.group(1)).map(LocalDate::parse),
                        Optional.ofNullable(m.group(2)).map(Hour::weekday),
                        LocalTime.of(Integer.parseInt(m.group(3)), Integer.parseInt(m.group(4))));
            }
        } catch (DateTimeException noSuchDay) {
            throw new IllegalArgumentException("there is no such day or hour as '" + said.strip() + "'; say "
                    + FORMS, noSuchDay);
        }
        throw new IllegalArgumentException("an hour reads " + FORMS + ", not '" + said.strip() + "'");
    }

    private static DayOfWeek weekday(String word) {
        for (DayOfWeek d : DayOfWeek.values()) {
            String name = d.name().toLowerCase(Locale.ROOT);
            if (word.equals(name) || word.equals(name.substring(0, SHORT_DAY))) {
                return d;
            }
        }
        throw new DateTimeException(word);
    }

    /** The same with its date: where none was named, the next such hour after now. */
    public Hour dated(ZonedDateTime now) {
        if (date.isPresent()) {
            return this;
        }
        LocalDate next = day.map(d -> now.toLocalDate().with(TemporalAdjusters.nextOrSame(d)))
                .orElse(now.toLocalDate());
        while (!next.atTime(time).atZone(now.getZone()).isAfter(now)) {
            next = next.plusDays(day.isPresent() ? DayOfWeek.values().length : 1);
        }
        return of(next, time);
    }

    /**
     * The moment, ms since 1970 UTC. An hour that a change to summer time leaves out comes that much later;
     * of two alike the first counts.
     *
     * @throws java.util.NoSuchElementException while no date is known
     */
    public long wallMs(ZoneId zone) {
        return date.orElseThrow().atTime(time).atZone(zone).toInstant().toEpochMilli();
    }

    /** With the weekday beside its date, to be checked by eye. */
    public String withWeekday() {
        return text() + date.map(d -> " (" + WEEKDAY.format(d) + ")").orElse("");
    }

    /** As it can be said again. */
    public String text() {
        String on = date.map(LocalDate::toString).or(() -> day.map(d -> d.name().toLowerCase(Locale.ROOT)
                .substring(0, SHORT_DAY))).map(d -> d + " ").orElse("");
        return on + time.format(TIME);
    }
}
