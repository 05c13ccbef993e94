package org.conetender.core.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HourTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    @ParameterizedTest
    @CsvSource({"07:30, 07:30", "' 7:30 ', 07:30", "fri 07:30, fri 07:30", "Friday  7:30, fri 07:30",
        "SUN 23:59, sun 23:59", "2026-11-27 07:30, 2026-11-27 07:30", "2026-11-27T07:30, 2026-11-27 07:30",
        "00:00, 00:00"})
    void anHourIsUnderstoodAsItIsSaidAndCanBeSaidAgain(String said, String text) {
        Hour h = Hour.parse(said);
        assertThat(h.text()).isEqualTo(text);
        assertThat(Hour.parse(h.text())).isEqualTo(h);
    }

    @Test
    void aDateIsToldWithItsWeekday() {
        assertThat(Hour.parse("2026-11-27 07:30").withWeekday()).isEqualTo("2026-11-27 07:30 (Fri)");
        assertThat(Hour.parse("07:30").withWeekday()).isEqualTo("07:30");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "soon", "7", "7:3", "24:00", "12:60", "frid 07:30", "xyz 07:30", "07:30 fri",
        "2026-02-30 07:30", "2026-13-01 07:30", "99999-01-01 07:30", "-1:30", "07:30:15", "07:30 pm",
        "fri 2026-11-27 07:30"})
    void whatIsNoHourIsAnsweredWithOneThatIs(String said) {
        assertThatThrownBy(() -> Hour.parse(said)).isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("fri 07:30").hasMessageContaining("'" + said.strip() + "'");
    }

    @ParameterizedTest
    @CsvSource({"2026-11-26T06:00, 07:30, 2026-11-26", "2026-11-26T07:29, 07:30, 2026-11-26",
        "2026-11-26T07:30, 07:30, 2026-11-27", "2026-11-26T09:00, 07:30, 2026-11-27",
        "2026-11-26T09:00, fri 07:30, 2026-11-27", "2026-11-26T06:00, thu 07:30, 2026-11-26",
        "2026-11-26T09:00, thu 07:30, 2026-12-03", "2026-12-31T09:00, 07:30, 2027-01-01",
        "2026-11-26T09:00, 2026-11-20 07:30, 2026-11-20"})
    void anHourWithoutADateIsTheNextSuchHour(String now, String said, LocalDate date) {
        ZonedDateTime at = ZonedDateTime.of(LocalDate.parse(now.substring(0, 10)),
                LocalTime.parse(now.substring(11)), BERLIN);
        assertThat(Hour.parse(said).dated(at)).isEqualTo(Hour.of(date, LocalTime.of(7, 30)));
    }

    @Test
    void theNightsOnWhichTheClocksChangeAreKnown() {
        long before = Hour.parse("2026-03-28 07:30").wallMs(BERLIN);
        long after = Hour.parse("2026-03-29 07:30").wallMs(BERLIN);
        assertThat(Duration.ofMillis(after - before)).isEqualTo(Duration.ofHours(23));
        assertThat(Hour.parse("2026-03-29 02:30").wallMs(BERLIN)).as("left out: an hour later")
                .isEqualTo(Instant.parse("2026-03-29T01:30:00Z").toEpochMilli());
        assertThat(Hour.parse("2026-10-25 02:30").wallMs(BERLIN)).as("twice: the first")
                .isEqualTo(Instant.parse("2026-10-25T00:30:00Z").toEpochMilli());
    }

    /** Seeded: at any time of any year the next hour lies ahead, no further than it must. */
    @Test
    void theNextHourIsAlwaysAheadAndNeverFurtherThanADayOrAWeek() {
        Random r = new Random(11);
        for (int i = 0; i < 20_000; i++) {
            ZonedDateTime now = Instant.ofEpochSecond(1_700_000_000L + r.nextInt(200_000_000)).atZone(BERLIN);
            Hour time = Hour.parse(r.nextInt(24) + ":" + (10 + r.nextInt(50)));
            long ahead = time.dated(now).wallMs(BERLIN) - now.toInstant().toEpochMilli();
            assertThat(ahead).as(now + " " + time.text()).isPositive()
                    .isLessThanOrEqualTo(Duration.ofHours(25).toMillis());
            Hour day = Hour.parse("wed " + time.text());
            ahead = day.dated(now).wallMs(BERLIN) - now.toInstant().toEpochMilli();
            assertThat(ahead).as(now + " " + day.text()).isPositive()
                    .isLessThanOrEqualTo(Duration.ofHours(7 * 24 + 1).toMillis());
        }
    }
}
