package org.conetender.adapter.sqlite;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.conetender.core.batch.Fact;
import org.conetender.port.Store;
import org.conetender.port.Store.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Kills a real process that writes a real record, again and again over one and the same file. */
@Timeout(120)
class RecordCrashTest {

    private static final int KILLS = 12;

    @TempDir
    Path folder;

    private long lastFact;
    private long lastMinute;

    @Test
    void everyAcknowledgedFactSurvivesKillNine() throws Exception {
        Random random = new Random(20);
        Path record = folder.resolve("record.db");
        for (int kill = 0; kill < KILLS; kill++) {
            long before = lastFact;
            killAfter(1 + random.nextInt(400), random.nextInt(3_000_000), writer(record));
            assertThat(lastFact).as("kill %d: the writer got to work", kill).isGreaterThan(before);
            try (SqliteStore store = SqliteStore.open(record, 1)) {
                check(store);
            }
        }
    }

    @Test
    void aRecordHeldByAnotherProcessIsRefused() throws Exception {
        Path record = folder.resolve("record.db");
        Process writer = writer(record);
        try {
            assertThat(writer.inputReader().readLine()).startsWith("fact");
            assertThatThrownBy(() -> SqliteStore.open(record)).isInstanceOf(StoreException.class)
                    .hasMessageContaining("in use by another conetender");
        } finally {
            writer.destroyForcibly().waitFor();
        }
        SqliteStore.open(record).close();
    }

    private static Process writer(Path record) throws Exception {
        return new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED", "-XX:TieredStopAtLevel=1", "-Xmx64m", "-cp",
                System.getProperty("java.class.path"), RecordWriter.class.getName(), record.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT).start();
    }

    /** Lets it print some lines and work on for a random moment more, so that the kill falls anywhere. */
    private void killAfter(int lines, int spins, Process writer) throws Exception {
        try (BufferedReader out = new BufferedReader(new InputStreamReader(writer.getInputStream(), UTF_8))) {
            for (int i = 0; i < lines; i++) {
                note(out.readLine());
            }
            for (int i = 0; i < spins; i++) {
                Thread.onSpinWait();
            }
            writer.toHandle().destroyForcibly(); // the process itself would close our end of the pipe
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                note(line);
            }
        }
        assertThat(writer.waitFor(20, TimeUnit.SECONDS)).isTrue();
        assertThat(writer.exitValue()).as("died of SIGKILL").isEqualTo(128 + 9);
    }

    private void note(String line) {
        assertThat(line).as("the writer ended by itself").isNotNull();
        if (line.matches("fact \\d+")) {
            lastFact = Math.max(lastFact, Long.parseLong(line.substring(5)));
        } else if (line.matches("minute \\d+")) {
            lastMinute = Math.max(lastMinute, Long.parseLong(line.substring(7)));
        }
    }

    private void check(SqliteStore store) throws Exception {
        Store.Kept kept = store.load();
        assertThat((long) kept.facts().size()).isBetween(lastFact, lastFact + 3);
        long expected = 1;
        for (Fact f : kept.facts()) {
            assertThat(f).isEqualTo(RecordWriter.fact(expected++));
        }
        if (lastMinute > 0) {
            long at = kept.checkpoint().orElseThrow().at().monoMs();
            assertThat(at).isGreaterThanOrEqualTo(lastMinute);
            assertThat(kept.checkpoint()).contains(RecordWriter.minute(at));
            store.history(RecordWriter.history(at));
            for (String table : List.of("temperature", "output")) {
                assertThat(rowsAt(store, table, lastMinute)).as("of the last that was kept").isEqualTo(2);
            }
        }
        lastFact = kept.facts().size();
    }

    private static int rowsAt(SqliteStore store, String table, long monoMs) throws Exception {
        try (Statement s = store.history().connection().createStatement(); ResultSet r = s.executeQuery(
                "SELECT count(*) FROM " + table + " WHERE mono_ms = " + monoMs)) {
            r.next();
            return r.getInt(1);
        }
    }
}
