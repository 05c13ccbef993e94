package org.conetender.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Temperatures lie apart: whatever becomes of them, the book is opened and written. */
@Timeout(60)
class HistoryTest {

    @TempDir
    Path folder;

    private Path book() {
        return folder.resolve("record.db");
    }

    private Path history() {
        return folder.resolve("record-history.db");
    }

    private static Checkpoint minute(String boot, long minute, double degreesC) {
        return new Checkpoint(new Moment(boot, minute * 60_000, 1_795_581_286_000L + minute * 60_000, true),
                List.of(new Checkpoint.Temperature("a", degreesC)), List.of());
    }

    private static List<String> rows(Connection db, String sql) throws Exception {
        List<String> out = new ArrayList<>();
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery(sql)) {
            while (r.next()) {
                List<String> row = new ArrayList<>();
                for (int i = 1; i <= r.getMetaData().getColumnCount(); i++) {
                    row.add(r.getString(i));
                }
                out.add(String.join(" ", row));
            }
        }
        return out;
    }

    private static void eventually(BooleanSupplier what) {
        for (int i = 0; i < 400 && !what.getAsBoolean(); i++) {
            LockSupport.parkNanos(50_000_000);
        }
        assertThat(what.getAsBoolean()).isTrue();
    }

    private boolean keptAside() {
        try (var files = Files.list(folder)) {
            return files.anyMatch(f -> f.getFileName().toString().matches("damaged-.*-record-history.db"));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void theStartDoesNotTouchIt() throws Exception {
        SqliteStore.open(book()).close();
        Files.writeString(history(), "pencil\n".repeat(5_000));
        try (SqliteStore store = SqliteStore.open(book())) {
            store.append(List.of(RecordWriter.fact(1)));
            store.minute(RecordWriter.minute(1));
            assertThat(store.load().facts()).hasSize(1);
            assertThat(Files.readString(history())).startsWith("pencil");
        }
    }

    @Test
    void oneThatIsNoDatabaseIsKeptAsideAndBegunAnew() throws Exception {
        SqliteStore.open(book()).close();
        Files.writeString(history(), "pencil\n".repeat(5_000));
        try (SqliteStore store = SqliteStore.open(book())) {
            store.history(minute("b", 1, 27));
            assertThat(keptAside()).isTrue();
            store.history(minute("b", 2, 27));
            assertThat(rows(store.historyConnection(), "SELECT mono_ms FROM temperature"))
                    .containsExactly("120000");
            assertThat(store.load().damages()).as("no heater is locked for it").isEmpty();
        }
    }

    /** The page is in the middle of what nobody reads: only the look through all of it finds it. */
    @Test
    void aDamageInTheMiddleIsFoundMeanwhileAndTheBookNeverWaits() throws Exception {
        try (SqliteStore store = SqliteStore.open(book())) {
            for (int m = 1; m < 900; m++) {
                store.history(minute("b", m, 27));
            }
        }
        byte[] spoilt = Files.readAllBytes(history());
        java.util.Arrays.fill(spoilt, 6 * 4096, 7 * 4096, (byte) 0x5a);
        Files.write(history(), spoilt);
        try (SqliteStore store = SqliteStore.open(book())) {
            long[] m = {1_000};
            eventually(() -> {
                try {
                    store.append(List.of(RecordWriter.fact(m[0])));
                    store.history(minute("b", m[0]++, 27));
                    return keptAside();
                } catch (StoreException e) {
                    throw new AssertionError(e);
                }
            });
            assertThat(store.load().facts()).hasSize((int) m[0] - 1_000);
        }
    }

    @Test
    void oneOfANewerVersionIsLeftAlone() throws Exception {
        try (SqliteStore store = SqliteStore.open(book())) {
            store.history(minute("b", 1, 27));
        }
        try (Connection db = Opening.plain(history()); Statement s = db.createStatement()) {
            s.execute("PRAGMA user_version = 99");
        }
        try (SqliteStore store = SqliteStore.open(book())) {
            assertThatThrownBy(() -> store.history(minute("b", 2, 27))).isInstanceOf(StoreException.class)
                    .hasMessageContaining("newer conetender");
            assertThat(keptAside()).isFalse();
        }
    }

    @Test
    void oneThatCannotBeWrittenIsToldAndTheBookGoesOn() throws Exception {
        SqliteStore.open(book()).close();
        Files.createDirectory(history());
        try (SqliteStore store = SqliteStore.open(book())) {
            assertThatThrownBy(() -> store.history(minute("b", 1, 27))).isInstanceOf(StoreException.class)
                    .hasMessageContaining("record-history.db").hasMessageContaining("cannot be opened");
            store.append(List.of(RecordWriter.fact(1)));
            store.minute(RecordWriter.minute(1));
            Files.delete(history());
            store.history(minute("b", 2, 27));
            assertThat(rows(store.historyConnection(), "SELECT count(*) FROM temperature"))
                    .containsExactly("1");
        }
    }

    @Test
    void oldMinutesBecomeTenMinuteMeansOfTheirOwnBoot() throws Exception {
        try (SqliteStore store = SqliteStore.open(book())) {
            store.history(minute("b0", 0, 20));
            Connection db = store.historyConnection();
            Thinning thinning = new Thinning(db, 30);
            thinning.minute();
            for (int m = 1; m <= 91; m++) {
                store.history(minute(m < 25 ? "b0" : "b1", m, m));
                thinning.minute();
            }
            assertThat(rows(db, "SELECT min(degrees_c), max(degrees_c), count(*) FROM temperature"))
                    .as("thirty stay, and those that wait for the next time").containsExactly("60.0 91.0 32");
            assertThat(rows(db, "SELECT boot, mono_ms / 60000, degrees_c, minutes, wall_ms - 1795581286000"
                    + " FROM mean")).startsWith("1 0 " + 65.0 / 10 + " 10 0", "1 10 14.5 10 600000",
                    "1 20 22.0 5 1200000", "2 20 27.0 5 1500000").endsWith("2 50 54.5 10 3000000")
                    .hasSize(7);
        }
    }

    /** Made by the version before, statement by statement: facts, checkpoint and temperatures in one file. */
    @Test
    void aRecordInWhichAllLayTogetherIsParted() throws Exception {
        List<Fact> facts = List.of(RecordWriter.fact(1), RecordWriter.fact(2));
        try (Connection db = Opening.connect(book()); Statement s = db.createStatement()) {
            Together.make(db);
            Together.insert(db, facts, RecordWriter.minute(2));
            s.execute("PRAGMA wal_autocheckpoint = 0");
        }
        try (SqliteStore store = SqliteStore.open(book())) {
            assertThat(store.load().facts()).isEqualTo(facts);
            assertThat(store.load().checkpoint()).contains(RecordWriter.minute(2));
            assertThat(store.load().damages()).isEmpty();
            assertThat(rows(store.connection(), "SELECT name FROM sqlite_schema WHERE type = 'table'"))
                    .doesNotContain("temperature");
            store.append(List.of(RecordWriter.fact(3)));
            store.history(RecordWriter.minute(3));
            assertThat(rows(store.historyConnection(), "SELECT mono_ms, series FROM temperature"))
                    .containsExactly("2 a", "2 b", "3 a", "3 b");
            assertThat(rows(store.historyConnection(), "SELECT name FROM sqlite_schema WHERE type = 'table'"))
                    .contains("mean").doesNotContain("fact", "checkpoint");
        }
        try (SqliteStore store = SqliteStore.open(book())) {
            assertThat(store.load().facts()).hasSize(3);
        }
        assertThat(keptAside()).isFalse();
    }
}
