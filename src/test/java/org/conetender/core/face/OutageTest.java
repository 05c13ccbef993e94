package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.conetender.core.unit.Span;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OutageTest {

    private static final long MINUTE = 60_000;

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "0 | 1 | ",
        "3 | 3 | for about 3 min",
        "603 | 604 | for about 10 h 04 min",
        "40 | 190 | for between 40 min and 3 h 10 min",
        "4000 | 4000 | for about 2 days 18 h",
        "1 | -1 | for 1 min or longer: no clock tells how long"})
    void howLongItWasIsSaidAsWellAsItIsKnown(long least, long most, String words) {
        Span away = new Span(least * MINUTE, most < 0 ? Long.MAX_VALUE : most * MINUTE);
        assertThat(Outage.words(away).orElse(null)).isEqualTo(words == null ? null
                : "nobody minded the cones " + words);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "true | 40 | 190 | The power was away for between 40 min and 3 h 10 min.",
        "true | 9 | -1 | The power was away for 9 min or longer; no clock tells yet how long. You will be "
            + "told when one does.",
        "false | 603 | 604 | The daemon stood still for about 10 h 04 min."})
    void whatPeopleAreToldBeforeItsHoursAreKnown(boolean off, long least, long most, String words) {
        assertThat(Outage.sentence(off, new Span(least * MINUTE, most < 0 ? Long.MAX_VALUE : most * MINUTE)))
                .isEqualTo(words);
    }

    @Test
    void itsHoursAreThoseOfThePeopleAndHaveADayWhereItIsAnother() {
        long to = Instant.parse("2026-03-02T04:40:00Z").toEpochMilli();
        assertThat(Outage.sentence(true, new Outage.Hours(to - 210 * MINUTE, to, ZoneId.of("Europe/Paris")),
                Span.exactly(210 * MINUTE))).isEqualTo("The power was away from 02:10 to 05:40, about 3 h 30 "
                + "min.");
        assertThat(Outage.sentence(true, new Outage.Hours(to - 510 * MINUTE, to, ZoneId.of("Europe/Paris")),
                Span.exactly(510 * MINUTE))).contains("from Sun 21:10 to 05:40");
    }
}
