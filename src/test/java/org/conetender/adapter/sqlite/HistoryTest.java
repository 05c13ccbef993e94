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
import java.util.OptionalDouble;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Temperatures lie apart: whatever becomes of them, the book is opened and written. */
@Timeout(60)
class HistoryTest {

    /** So many minutes are thinned together here. */
    private static final int AT_ONCE = 60;

    @TempDir
    Path folder;

    private Path book() {
        return folder.resolve("record.db");
    }

    private Path history() {
        return folder.resolve("record-history.db");
    }

    private static Moment at(String boot, long minute) {
        return new Moment(boot, minute * 60_000, 1_795_581_286_000L + minute * 60_000, true);
    }

    /** At an even temperature the heater had as many per cent of power. */
    private static Minute minute(String boot, long minute, double degreesC, Minute.AlarmTurn... turns) {
        return new Minute(new Checkpoint(at(boot, minute), List.of(new Checkpoint.Temperature("a", degreesC)),
                List.of()), List.of(new Minute.Outputs("a", degreesC / 100, 1, minute % 2, 0,
                OptionalDouble.of(26.54))), List.of(turns));
    }

    private static Minute.AlarmTurn turn(long minute, Minute.Turn turn) {
        return new Minute.AlarmTurn(at("b", minute), "a", "dry", turn, turn == Minute.Turn.RAISED
                ? "the level is low" : "");
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
        SqliteStore.open(book(), 1).close();
        Files.writeString(history(), "pencil\n".repeat(5_000));
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            store.append(List.of(RecordWriter.fact(1)));
            store.minute(RecordWriter.minute(1));
            assertThat(store.load().facts()).hasSize(1);
            assertThat(Files.readString(history())).startsWith("pencil");
        }
    }

    @Test
    void oneThatIsNoDatabaseIsKeptAsideAndBegunAnew() throws Exception {
        SqliteStore.open(book(), 1).close();
        Files.writeString(history(), "pencil\n".repeat(5_000));
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            store.history(minute("b", 1, 27));
            assertThat(keptAside()).isTrue();
            store.history(minute("b", 2, 27));
            assertThat(rows(store.history().connection(), "SELECT mono_ms FROM temperature"))
                    .containsExactly("60000", "120000");
            assertThat(store.load().damages()).as("no heater is locked for it").isEmpty();
        }
    }

    /** The page is in the middle of what nobody reads: only the look through all of it finds it. */
    @Test
    void aDamageInTheMiddleIsFoundMeanwhileAndTheBookNeverWaits() throws Exception {
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            for (int m = 1; m < 900; m++) {
                store.history(minute("b", m, 27));
            }
        }
        byte[] spoilt = Files.readAllBytes(history());
        java.util.Arrays.fill(spoilt, 6 * 4096, 7 * 4096, (byte) 0x5a);
        Files.write(history(), spoilt);
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
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
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            store.history(minute("b", 1, 27));
        }
        try (Connection db = Opening.plain(history()); Statement s = db.createStatement()) {
            s.execute("PRAGMA user_version = 99");
        }
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            assertThatThrownBy(() -> store.history(minute("b", 2, 27))).isInstanceOf(StoreException.class)
                    .hasMessageContaining("newer conetender");
            assertThat(keptAside()).isFalse();
        }
    }

    @Test
    void oneThatCannotBeWrittenIsToldAndTheBookGoesOn() throws Exception {
        SqliteStore.open(book(), 1).close();
        Files.createDirectory(history());
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            assertThatThrownBy(() -> store.history(minute("b", 1, 27))).isInstanceOf(StoreException.class)
                    .hasMessageContaining("record-history.db").hasMessageContaining("cannot be opened");
            store.append(List.of(RecordWriter.fact(1)));
            store.minute(RecordWriter.minute(1));
            Files.delete(history());
            store.history(minute("b", 2, 27));
            assertThat(rows(store.history().connection(), "SELECT count(*) FROM temperature"))
                    .as("what could not be written then waits").containsExactly("2");
        }
    }

    @Test
    void theLastOfTheDiskIsLeftToTheBook() throws Exception {
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            store.history().reserve(Long.MAX_VALUE);
            assertThatThrownBy(() -> store.history(minute("b", 1, 27))).isInstanceOf(StoreException.class)
                    .hasMessageContaining("MB are free").hasMessageContaining("left to what is reported");
            store.append(List.of(RecordWriter.fact(1)));
            store.minute(RecordWriter.minute(1));
            store.history().reserve(0);
            store.history(minute("b", 2, 27));
            assertThat(rows(store.history().connection(), "SELECT count(*) FROM temperature"))
                    .as("what waited is written too").containsExactly("2");
        }
    }

    @Test
    void minutesAreWrittenTogetherAndAllOfThemByTheEnd() throws Exception {
        try (SqliteStore store = SqliteStore.open(book())) {
            for (int m = 1; m <= 14; m++) {
                store.history(minute("b", m, 27));
                assertThat(rows(store.history().connection(), "SELECT count(*) FROM temperature"))
                        .containsExactly(m < 11 ? "1" : "11");
            }
        }
        try (Connection db = Opening.plain(history())) {
            assertThat(rows(db, "SELECT count(*) FROM temperature")).containsExactly("14");
        }
    }

    @Test
    void oldMinutesBecomeTenMinuteMeansOfTheirOwnBoot() throws Exception {
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            store.history(minute("b0", 0, 20));
            Connection db = store.history().connection();
            Thinning thinning = new Thinning(db, 30, AT_ONCE);
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

    @Test
    void whatWasSwitchedBecomesMeansAsWell() throws Exception {
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            store.history(minute("b", 0, 20));
            Connection db = store.history().connection();
            Thinning thinning = new Thinning(db, 30, AT_ONCE);
            for (int m = 1; m < 30 + AT_ONCE; m++) {
                store.history(minute("b", m, m % 10 * 10));
                thinning.minute();
            }
            assertThat(rows(db, "SELECT count(*), min(mono_ms) / 60000 FROM output"))
                    .containsExactly("30 " + AT_ONCE);
            assertThat(rows(db, "SELECT mono_ms / 60000, cone, heat, cut_out, air, lamp, set_hundredths,"
                    + " minutes FROM output_mean")).startsWith("0 a 47 100 50 0 2654 10",
                    "10 a 45 100 50 0 2654 10").hasSize(AT_ONCE / 10);
        }
        List<HistoryReader.Switched> read = new ArrayList<>();
        RecordReader.of(book()).history().outputs(at("b", 5), read::add);
        assertThat(read).hasSize(AT_ONCE / 10 - 1 + 30);
        assertThat(read.getFirst()).isEqualTo(new HistoryReader.Switched(new Moment("b", 540_000, 0, false),
                10, new Minute.Outputs("a", 0.45, 1, 0.5, 0, OptionalDouble.of(26.54))));
        assertThat(read.getLast().from().monoMs()).isEqualTo((28 + AT_ONCE) * 60_000L);
    }

    /** Thinned in two goes, one mean is made of what both bring. */
    @Test
    void aMeanThatLiesThereIsJoined() throws Exception {
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            store.history(minute("b", 3, 20));
            Connection db = store.history().connection();
            Thinning thinning = new Thinning(db, 0, AT_ONCE);
            for (int m = 4; m < 3 + 2 * AT_ONCE; m++) {
                store.history(minute("b", m, m < 3 + AT_ONCE ? 20 : 50));
                thinning.minute();
            }
            assertThat(rows(db, "SELECT degrees_c, minutes FROM mean WHERE mono_ms = 3600000"))
                    .containsExactly("41.0 10");
            assertThat(rows(db, "SELECT heat, minutes FROM output_mean WHERE mono_ms = 3600000"))
                    .containsExactly("41 10");
        }
    }

    @Test
    void whatBecameOfAlarmsIsWrittenAtOnceAndForEver() throws Exception {
        List<Minute.AlarmTurn> turns = List.of(turn(3, Minute.Turn.RAISED), turn(4, Minute.Turn.SEEN),
                turn(6, Minute.Turn.OVER));
        try (SqliteStore store = SqliteStore.open(book())) {
            store.history(minute("b", 1, 27));
            store.history(minute("b", 2, 27));
            for (Minute.AlarmTurn t : turns) {
                store.history(minute("b", t.at().monoMs() / 60_000, 27, t));
                assertThat(RecordReader.of(book()).history().alarms()).last().isEqualTo(t);
            }
            assertThat(rows(store.history().connection(), "SELECT count(*) FROM temperature"))
                    .containsExactly("5");
        }
        assertThat(RecordReader.of(book()).history().alarms()).isEqualTo(turns);
    }

    private static Minute flutter(int m) {
        return minute("b", m, 27, turn(m, m % 2 == 0 ? Minute.Turn.OVER : Minute.Turn.RAISED));
    }

    /** One that flutters each minute for three days. */
    @Test
    void aStormOfAlarmsIsKeptWithinBoundsAndSaysSo() throws Exception {
        try (SqliteStore store = SqliteStore.open(book())) {
            for (int m = 1; m <= 3 * 1_440; m++) {
                store.history(flutter(m));
            }
            Connection db = store.history().connection();
            assertThat(rows(db, "SELECT max(n) FROM (SELECT count(*) AS n FROM alarm GROUP BY"
                    + " mono_ms / 86400000)").getFirst()).as("of each day").satisfies(n ->
                    assertThat(Integer.parseInt(n)).isBetween(AlarmRows.MOST_A_DAY - 1,
                            AlarmRows.MOST_A_DAY));
            assertThat(rows(db, "SELECT number FROM alarm WHERE turn = 'unkept' LIMIT 1"))
                    .containsExactly("" + AlarmRows.MOST_A_DAY);
            assertThat(rows(db, "SELECT count(*) FROM temperature").getFirst()).as("ten by ten again")
                    .isNotEqualTo("4320").startsWith("431");
            for (int m = 6 * 1_440; m < 6 * 1_440 + 9; m++) {
                store.history(flutter(m));
                store.history(flutter(m));
            }
        }
        assertThat(RecordReader.of(book()).history().alarms()).last().satisfies(t -> {
            assertThat(t.turn()).as("once it is over all are kept").isNotEqualTo(Minute.Turn.UNKEPT);
            assertThat(t.at().monoMs()).isEqualTo((6 * 1_440 + 8) * 60_000L);
        });
    }

    /** As version 2 made it, statement by statement; what is in it stays, the new tables come beside it. */
    @Test
    void oneOfTheVersionBeforeIsLiftedAndANewerDaemonReadsItBeforeToo() throws Exception {
        SqliteStore.open(book(), 1).close();
        try (Connection db = Opening.connect(history()); Statement s = db.createStatement()) {
            for (String sql : Together.HISTORY_2) {
                s.execute(sql);
            }
        }
        List<HistoryReader.Reading> read = new ArrayList<>();
        HistoryReader before = RecordReader.of(book()).history();
        before.temperatures(at("?", 0), (_, r) -> read.add(r));
        before.outputs(at("?", 0), s -> read.add(null));
        assertThat(read).extracting(HistoryReader.Reading::degreesC).containsExactly(24.0, 25.5);
        assertThat(before.alarms()).isEmpty();
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            store.history(minute("boot-1", 12, 27, turn(12, Minute.Turn.RAISED)));
            assertThat(rows(store.history().connection(), "PRAGMA user_version")).containsExactly("3");
            assertThat(rows(store.history().connection(), "SELECT mono_ms, degrees_c FROM temperature"))
                    .containsExactly("660000 25.5", "720000 27.0");
            assertThat(rows(store.history().connection(), "SELECT degrees_c, minutes FROM mean"))
                    .containsExactly("24.0 10");
        }
        List<HistoryReader.Switched> switched = new ArrayList<>();
        RecordReader.of(book()).history().outputs(at("?", 0), switched::add);
        assertThat(switched).hasSize(1);
        assertThat(RecordReader.of(book()).history().alarms()).hasSize(1);
        assertThat(keptAside()).isFalse();
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
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            assertThat(store.load().facts()).isEqualTo(facts);
            assertThat(store.load().checkpoint()).contains(RecordWriter.minute(2));
            assertThat(store.load().damages()).isEmpty();
            assertThat(rows(store.connection(), "SELECT name FROM sqlite_schema WHERE type = 'table'"))
                    .doesNotContain("temperature");
            store.append(List.of(RecordWriter.fact(3)));
            store.history(RecordWriter.history(3));
            assertThat(rows(store.history().connection(), "SELECT mono_ms, series FROM temperature"))
                    .containsExactly("2 a", "2 b", "3 a", "3 b");
            assertThat(rows(store.history().connection(),
                    "SELECT name FROM sqlite_schema WHERE type = 'table'"))
                    .contains("mean").doesNotContain("fact", "checkpoint");
        }
        try (SqliteStore store = SqliteStore.open(book(), 1)) {
            assertThat(store.load().facts()).hasSize(3);
        }
        assertThat(keptAside()).isFalse();
    }

    /** A reader may mend nothing; the next that is kept does. */
    @Test
    void aFileThatACutLeftHalfWrittenIsNotTakenForMissingRights() throws Exception {
        Path torn = Files.createDirectories(folder.resolve("torn")).resolve("record-history.db");
        Path whole = folder.resolve("whole.db");
        try (Connection db = Opening.plain(whole); Statement s = db.createStatement()) {
            Schema.HISTORY.bring(db);
            s.execute("INSERT INTO boot (id) VALUES ('boot-1')");
            s.execute("PRAGMA cache_size = 1");
            s.execute("BEGIN IMMEDIATE");
            s.execute("WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 5000)"
                    + " INSERT INTO temperature SELECT 1, i, 'a', 0, 0, 21 FROM n");
            Files.copy(whole, torn);
            Files.copy(Swap.beside(whole, "-journal"), Swap.beside(torn, "-journal"));
        }
        HistoryReader reader = new HistoryReader(torn);
        assertThatThrownBy(() -> reader.alarms())
                .hasMessageContaining("a power cut came while it was written")
                .hasMessageContaining("start it, and ask again").hasMessageNotContaining("sudo");
        try (History next = new History(torn, 1)) {
            next.keep(RecordWriter.history(7));
        }
        assertThat(reader.alarms()).isEmpty();
    }
}
