package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reader of times, held against the library's calendar. */
class LogTimesTest {

    /** A little over two years, so that every change of the clocks is met. */
    private static final long FROM_S = Instant.parse("2026-01-01T00:00:00Z").getEpochSecond();
    private static final int SPAN_S = 800 * 86_400;

    private static LogTimes in(ZoneId zone) {
        return new LogTimes(Optional.ofNullable(zone), true);
    }

    private static DateTimeFormatter pattern(String p) {
        return DateTimeFormatter.ofPattern(p, Locale.ROOT);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Europe/London", "America/New_York", "Australia/Lord_Howe", "Africa/Casablanca",
        "America/Santiago", "Asia/Kolkata", "+05:45", "UTC"})
    void everyLocalTimeIsTheLibrarys(String name) throws BadLog {
        ZoneId zone = ZoneId.of(name);
        LogTimes times = in(zone);
        Random r = new Random(17);
        for (int i = 0; i < 20_000; i++) {
            LocalDateTime t = LocalDateTime.ofEpochSecond(FROM_S + r.nextInt(SPAN_S), 0, ZoneOffset.UTC);
            if (zone.getRules().getValidOffsets(t).isEmpty()) {
                assertThatThrownBy(() -> times.read(t.toString(), 0)).hasMessageContaining("does not exist");
                continue;
            }
            long expected = t.toInstant(zone.getRules().getValidOffsets(t).getFirst()).toEpochMilli();
            assertThat(times.read(pattern("uuuu-MM-dd HH:mm:ss").format(t), 0).ms()).isEqualTo(expected);
            assertThat(times.read(pattern("dd/MM/uuuu HH:mm:ss").format(t), 0).ms()).isEqualTo(expected);
            assertThat(times.read(pattern("d.M.uu H:mm:ss").format(t), 0).ms()).isEqualTo(expected);
        }
    }

    @Test
    void everyOffsetIsTheLibrarys() throws BadLog {
        LogTimes times = in(null);
        Random r = new Random(18);
        for (int i = 0; i < 20_000; i++) {
            OffsetDateTime t = Instant.ofEpochSecond(FROM_S + r.nextInt(SPAN_S))
                    .plusMillis(r.nextInt(1_000))
                    .atOffset(ZoneOffset.ofTotalSeconds((r.nextInt(72) - 36) * 1_800));
            LogTimes.Stamp stamp = times.read(t.toString(), 0);
            assertThat(stamp.ms()).isEqualTo(t.toInstant().toEpochMilli());
            assertThat(stamp.offset()).isEqualTo(t.getOffset());
        }
    }

    /** In the hour that comes twice the time before decides, whatever the day before it was. */
    @Test
    void theSecondOfTwoHoursIsTakenAfterTheFirst() throws BadLog {
        LogTimes times = in(ZoneId.of("Europe/London"));
        long before = times.read("2026-10-25 01:50", 0).ms();
        assertThat(before).isEqualTo(Instant.parse("2026-10-25T00:50:00Z").toEpochMilli());
        assertThat(times.read("2026-10-25 01:20", before).ms())
                .isEqualTo(Instant.parse("2026-10-25T01:20:00Z").toEpochMilli());
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-02-29 07:30", "2026-3-01 07:30", "2026-03-01", "2026-03-01 24:00",
        "2026-03-01 07:60", "2026-03-01 07:30:60", "2026-03-01 07:30:", "2026-03-01 07:30:00.",
        "2026-03-01  ", "07:30", "", "2026-03-01T07:30+19:00", "2026-03-01T07:30+1", "2026-03-01T07:30 ZZ",
        "2026-03-01 7:30", "1.3.026 07:30", "1.3/2026 07:30", "31.04.2026 07:30", "1/3/2026 7:30 PM",
        "2026-03-01T07:30:00.1234567890Z", "\u0662026-03-01 07:30"})
    void whatIsNoTimeIsNotTakenForOne(String text) {
        assertThatThrownBy(() -> in(ZoneOffset.UTC).read(text, 0)).isInstanceOf(BadLog.class)
                .hasMessageContaining("is not a time");
    }
}
