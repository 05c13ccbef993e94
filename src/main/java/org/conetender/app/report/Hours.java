package org.conetender.app.report;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import org.conetender.core.unit.Moment;

/** Hours as people and programs read them, in the site's zone. */
final class Hours {

    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT);
    private static final DateTimeFormatter FULL = DateTimeFormatter.ofPattern("EEE uuuu-MM-dd HH:mm",
            Locale.ENGLISH);
    private static final DateTimeFormatter ISO = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssxxx",
            Locale.ROOT);

    /** Where something happened, but nobody knows when. */
    private static final String UNSET = "no clock";

    private final Ruler ruler;

    Hours(Ruler ruler) {
        this.ruler = ruler;
    }

    /** Eleven letters or fewer: {@code 11-26 06:45}; a dash where it never was. */
    String brief(Optional<Moment> at) {
        return at.map(m -> ruler.hour(m).map(SHORT::format).orElse(UNSET)).orElse("-");
    }

    /** With its weekday and year. */
    String full(Moment at) {
        return ruler.hour(at).map(FULL::format).orElse("(" + UNSET + ")");
    }

    String day(Moment at) {
        return ruler.hour(at).map(DAY::format).orElse(UNSET);
    }

    String year(Optional<Moment> at) {
        return at.flatMap(ruler::hour).map(ZonedDateTime::getYear).map(Object::toString).orElse("");
    }

    /** For programs; empty where it is not known. */
    Optional<String> iso(Optional<Moment> at) {
        return at.flatMap(ruler::hour).map(ISO::format);
    }
}
