package org.conetender.app.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.conetender.core.hatch.ThermometerLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Axes and traces. */
class TicksTest {

    @ParameterizedTest
    @CsvSource({"10, 5, 2", "4, 5, 1", "400, 5, 100", "0.9, 5, 0.2", "11, 5, 5", "100, 5, 20"})
    void numbersAreRound(double range, int most, double step) {
        assertThat(Ticks.step(range, most)).isEqualTo(step);
        assertThat(Ticks.between(-range, 0, Ticks.step(range, most))).hasSizeLessThanOrEqualTo(most + 1);
    }

    private static List<String> hours(String from, String to, int most) {
        return Ticks.hours(Instant.parse(from).toEpochMilli(), Instant.parse(to).toEpochMilli(),
                ZoneId.of("Europe/London"), most).stream().map(t -> t.toLocalTime().toString()).toList();
    }

    /** Round on the clock of the zone, also over the night when the clocks go forward. */
    @Test
    void hoursAreThoseOfTheClockOnTheWall() {
        assertThat(hours("2026-07-01T18:10:00Z", "2026-07-02T18:10:00Z", 8))
                .containsExactly("21:00", "00:00", "03:00", "06:00", "09:00", "12:00", "15:00",
                        "18:00");
        assertThat(hours("2026-03-28T23:30:00Z", "2026-03-29T05:00:00Z", 8))
                .containsExactly("00:00", "02:00", "03:00", "04:00", "05:00", "06:00");
        assertThat(hours("2026-03-01T00:00:00Z", "2026-03-11T00:00:00Z", 8)).hasSize(6);
    }

    /** A million readings become a few thousand points, and the one that was hot is among them. */
    @Test
    void noSpikeIsLostAmongAMillionReadings() {
        int n = 1_000_000;
        long[] ms = new long[n];
        double[] c = new double[n];
        for (int i = 0; i < n; i++) {
            ms[i] = i * 1_000L;
            c[i] = 26 + 0.01 * (i % 7);
        }
        c[654_321] = 36;
        Frame frame = new Frame(new Frame.Place(0, 0, 600, 100), 0, ms[n - 1], new Frame.Range(20, 40));
        List<List<Pen.Point>> lines = Trace.of(ThermometerLog.of(ms, c), frame);
        assertThat(lines).hasSize(1);
        assertThat(lines.getFirst()).hasSizeLessThan(4 * 601);
        assertThat(lines.getFirst().stream().mapToDouble(Pen.Point::y).min().orElseThrow())
                .isEqualTo(frame.y(36));
    }
}
