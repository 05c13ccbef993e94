package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.conetender.core.hatch.ThermometerLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many readings: order, numbers, limits and progress. */
class LogRowsTest {

    @TempDir
    private Path dir;

    /** Shuffled, half of them at a time that another has too. */
    @Test
    void readingsInAnyOrderComeOutByTimeAndThenByLine() throws BadLog {
        int n = 20_000;
        LogRows rows = new LogRows(n);
        Random r = new Random(5);
        long start = -3_000_000_000L;
        int[] firstLine = new int[n];
        for (int line = 1; line <= n; line++) {
            int place = r.nextInt(n);
            firstLine[place] = firstLine[place] == 0 ? line : firstLine[place];
            rows.add(start + place * 1_000L, line, line);
        }
        rows.sort();
        Sentences remarks = new Sentences();
        rows.dropRepeats(remarks);
        ThermometerLog log = rows.log();
        int i = 0;
        for (int place = 0; place < n; place++) {
            if (firstLine[place] != 0) {
                assertThat(log.timeMs(i)).isEqualTo(start + place * 1_000L);
                assertThat(log.waterC(i)).isEqualTo(firstLine[place]);
                assertThat(rows.line(i++)).isEqualTo(firstLine[place]);
            }
        }
        assertThat(log.size()).isEqualTo(i);
        assertThat(remarks.list("more")).hasSize(21).last().asString()
                .isEqualTo("and " + (n - i - 20) + " more more.");
    }

    @Test
    void moreReadingsThanMemoryHoldsAreRefusedInASentence() throws BadLog {
        LogRows rows = new LogRows(2);
        rows.add(1, 20, 1);
        rows.add(2, 20, 2);
        assertThatThrownBy(() -> rows.add(3, 20, 3))
                .hasMessageContaining("more than 2 readings; thin it out");
    }

    @Test
    void everyNumberIsTheLibrarys() throws BadLog {
        Random r = new Random(6);
        LogColumns columns = LogColumns.of("time,water", false);
        for (int i = 0; i < 20_000; i++) {
            String text = String.format(Locale.ROOT, "%s%." + r.nextInt(10) + "f", r.nextBoolean() ? "+" : "",
                    0.6 + 59 * r.nextDouble());
            assertThat(columns.celsius(text)).isEqualTo(Double.parseDouble(text));
        }
    }

    @Test
    void aLongFileShowsHowMuchOfItWasRead() throws Exception {
        Path file = Files.writeString(dir.resolve("long.csv"), "2026-03-01T07:30:00Z,26\n".repeat(70_000));
        List<Integer> told = new ArrayList<>();
        LogReader.read(file, new LogReader.Format(Optional.empty(), false, false, told::add));
        assertThat(told).containsExactly(23, 46, 70, 93);
        StringWriter screen = new StringWriter();
        Progress progress = new Progress(new PrintWriter(screen), "reading long.csv");
        progress.wipe();
        assertThat(screen.toString()).isEmpty();
        told.forEach(progress::accept);
        progress.accept(93);
        progress.wipe();
        assertThat(screen.toString()).isEqualTo("\rreading long.csv: 23 %\rreading long.csv: 46 %"
                + "\rreading long.csv: 70 %\rreading long.csv: 93 %\r\u001b[K");
    }
}
