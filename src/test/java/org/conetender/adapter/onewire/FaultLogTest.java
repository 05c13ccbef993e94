package org.conetender.adapter.onewire;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.logging.SimpleFormatter;
import org.conetender.core.image.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The keeper reads what a fault means, the log also what a technician would ask. */
class FaultLogTest {

    private static final String A = "28-0000000000aa";

    @TempDir
    Path root;

    private final HandClock clock = new HandClock(0);

    /** Whatever is logged of that bus meanwhile. */
    private static final class Ear extends Handler implements AutoCloseable {

        private final Logger log = Logger.getLogger(OneWireBus.class.getName());
        private final List<String> lines = new ArrayList<>();

        Ear() {
            log.addHandler(this);
        }

        @Override
        public void publish(LogRecord line) {
            lines.add(new SimpleFormatter().formatMessage(line));
        }

        @Override
        public void flush() {}

        @Override
        public void close() {
            log.removeHandler(this);
        }
    }

    @Test
    void aFaultIsLoggedOnceInFullAndAgainWhenItIsAnother() throws IOException {
        Path file = Files.createDirectories(root.resolve(A)).resolve("temperature");
        OneWireProbe a = new OneWireProbe(A, root.resolve(A), clock.monoMs());
        OneWireBus bus = new OneWireBus("test", List.of(a),
                new OneWireTest.FakeBulk(BulkTrigger.Outcome.NONE), clock);
        try (Ear ear = new Ear()) {
            Files.writeString(file, "85000\n");
            bus.cycle();
            bus.cycle();
            assertThat(plain(a)).isEqualTo("the probe lost its power for a moment, as with a loose plug");
            Files.writeString(file, "");
            bus.cycle();
            assertThat(plain(a)).isEqualTo(
                    "the probe does not answer: its plug may be out, or its cable broken");

            assertThat(ear.lines).filteredOn(l -> l.contains(A)).hasSize(2)
                    .anyMatch(l -> l.endsWith("(85.000 °C is what it says before any conversion)"))
                    .anyMatch(l -> l.endsWith("(the kernel's file is empty)"));
        }
    }

    @Test
    void noFaultIsToldTheKeeperInATechniciansWords() throws IOException {
        for (String text : List.of("85000\n", "127937\n", "999000\n", "", "what (is) this")) {
            assertThat(((Reading.Faulty) W1Parser.temperature(text)).plain()).as(text)
                    .startsWith("the probe").doesNotContain("(", "kernel", "conversion");
        }
        String no = "b1 01 4b 46 7f ff 0c 10 00 : crc=15 NO\n98 01 4b 46 7f ff 08 10 9f t=27062\n";
        for (String text : List.of(no, W1ParserTest.slaveText(new byte[8], "YES", 0),
                W1ParserTest.slaveText(W1ParserTest.eight(433), "YES", 28062))) {
            assertThat(((Reading.Faulty) W1Parser.slave(text)).plain()).as(text)
                    .startsWith("the probe").doesNotContain("(", "checksum", "byte", "pull-up");
        }
        Files.createDirectories(root.resolve("28-empty"));
        assertThat(((Reading.Faulty) W1Files.reading(root.resolve("28-empty"))).plain())
                .contains("driver").doesNotContain("w1_therm");
    }

    private String plain(OneWireProbe p) {
        return ((Reading.Faulty) p.latest(clock.monoMs()).reading()).plain();
    }
}
