package org.conetender.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.RandomFacts;
import org.conetender.core.batch.Minute;
import org.conetender.port.Store;
import org.conetender.port.Store.StoreException;
import org.conetender.port.StoreContract;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteStoreTest extends StoreContract {

    @TempDir
    Path folder;

    private int crashes;

    private Path record() {
        return folder.resolve("life-" + crashes).resolve("record.db");
    }

    @Override
    protected Store open() throws Exception {
        Files.createDirectories(record().getParent());
        return SqliteStore.open(record());
    }

    /** The files as they lie at this moment, with nobody having closed them, are the next life's. */
    @Override
    protected void crash(Store store) throws Exception {
        Path from = record().getParent();
        crashes++;
        Path to = Files.createDirectories(record().getParent());
        try (var files = Files.list(from)) {
            for (Path f : files.toList()) {
                Files.copy(f, to.resolve(f.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
        store.close();
    }

    private Path other() {
        return folder.resolve("other.db");
    }

    private static Object ask(Connection db, String sql) throws Exception {
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery(sql)) {
            return r.next() ? r.getObject(1) : null;
        }
    }

    private static void tell(Connection db, String sql) throws Exception {
        try (Statement s = db.createStatement()) {
            s.execute(sql);
        }
    }

    @Test
    void theRecordIsSetUpToOutliveAPowerCut() throws Exception {
        try (SqliteStore store = SqliteStore.open(other())) {
            Connection db = store.connection();
            assertThat(ask(db, "PRAGMA journal_mode")).isEqualTo("wal");
            assertThat(ask(db, "PRAGMA synchronous")).as("2 is FULL").isEqualTo(2);
            assertThat(ask(db, "PRAGMA foreign_keys")).isEqualTo(1);
            assertThat((Integer) ask(db, "PRAGMA journal_size_limit")).isPositive();
            assertThat((Integer) ask(db, "PRAGMA busy_timeout")).isPositive();
            assertThat(ask(db, "PRAGMA user_version")).isEqualTo(Schema.BOOK.version());
            assertThat(ask(db, "SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND strict = 0"
                    + " AND name NOT LIKE 'sqlite%'")).isEqualTo(0);
        }
    }

    @Test
    void temperaturesLieInOrderOfTimeWhateverTheWallClockSays() throws Exception {
        try (SqliteStore store = SqliteStore.open(other(), 1)) {
            store.history(Minute.of(checkpoint(60_000, 1)));
            store.history(Minute.of(checkpoint(120_000, 1)));
            try (Statement s = store.history().connection().createStatement(); ResultSet r = s.executeQuery(
                    "SELECT mono_ms, series, degrees_c FROM temperature")) {
                List<String> rows = new ArrayList<>();
                while (r.next()) {
                    rows.add(r.getLong(1) + " " + r.getString(2) + " " + r.getDouble(3));
                }
                assertThat(rows).containsExactly("60000 a 27.0625", "60000 room 19.5", "120000 a 27.0625",
                        "120000 room 19.5");
            }
        }
    }

    @Test
    void aReportMayReadWhileTheDaemonWrites() throws Exception {
        try (SqliteStore store = SqliteStore.open(other());
                Connection report = DriverManager.getConnection("jdbc:sqlite:" + other())) {
            store.append(List.of(fact(1)));
            tell(report, "BEGIN");
            assertThat(ask(report, "SELECT count(*) FROM fact")).isEqualTo(1);
            store.append(List.of(fact(2)));
            assertThat(ask(report, "SELECT count(*) FROM fact")).as("its own moment").isEqualTo(1);
            tell(report, "COMMIT");
            assertThat(ask(report, "SELECT count(*) FROM fact")).isEqualTo(2);
        }
    }

    /** A report that reads for long keeps facts in the journal: they are brought over once it has ended. */
    @Test
    void whatAReaderKeptInTheJournalGoesIntoTheBookAMinuteAfterIt() throws Exception {
        Path alone = folder.resolve("alone.db");
        SqliteStore.open(other()).close();
        try (SqliteStore store = SqliteStore.open(other());
                Connection report = DriverManager.getConnection("jdbc:sqlite:" + other())) {
            tell(report, "BEGIN");
            assertThat(ask(report, "SELECT count(*) FROM fact")).isEqualTo(0);
            store.append(List.of(fact(1)));
            for (int m = 1; m <= SqliteStore.SETTLES_AFTER_MIN; m++) {
                store.minute(checkpoint(m * 60_000L, 1));
            }
            Files.copy(other(), alone);
            assertThat(RecordReader.of(alone).kept().facts()).as("the report is in the way").isEmpty();
            tell(report, "COMMIT");
            store.minute(checkpoint(1_200_000, 1));
            Files.copy(other(), alone, StandardCopyOption.REPLACE_EXISTING);
            assertThat(RecordReader.of(alone).kept().facts()).containsExactly(fact(1));
        }
    }

    @Test
    void aNewerRecordIsRefusedAndLeftAlone() throws Exception {
        SqliteStore.open(other()).close();
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + other())) {
            tell(db, "PRAGMA user_version = 99");
        }
        assertThatThrownBy(() -> SqliteStore.open(other())).isInstanceOf(StoreException.class)
                .hasMessageContaining("newer conetender").hasMessageContaining("99")
                .hasMessageContaining("install that newer version");
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + other())) {
            assertThat(ask(db, "PRAGMA user_version")).isEqualTo(99);
        }
    }

    @Test
    void anOlderRecordIsLiftedStepByStep() throws Exception {
        Schema later = new Schema(Schema.BOOK.base(), Schema.BOOK.first(), List.of(
                List.of("CREATE TABLE lot (label TEXT PRIMARY KEY) STRICT"),
                List.of("ALTER TABLE lot ADD COLUMN opened_ms INTEGER")));
        try (SqliteStore store = SqliteStore.open(other())) {
            store.append(List.of(fact(1)));
            later.bring(store.connection());
            assertThat(ask(store.connection(), "PRAGMA user_version")).isEqualTo(later.version());
            assertThat(ask(store.connection(), "SELECT count(opened_ms) FROM lot")).isEqualTo(0);
            assertThat(store.load().facts()).containsExactly(fact(1));
        }
    }

    @Test
    void aDatabaseOfAnotherProgramIsNotWrittenInto() throws Exception {
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + other())) {
            tell(db, "CREATE TABLE letters (a)");
        }
        assertThatThrownBy(() -> SqliteStore.open(other())).isInstanceOf(StoreException.class)
                .hasMessageContaining("another program");
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + other())) {
            assertThat(ask(db, "SELECT group_concat(name) FROM sqlite_schema")).isEqualTo("letters");
        }
    }

    @Test
    void aFullDiskIsToldAndRecordingGoesOnOnceThereIsRoom() throws Exception {
        try (SqliteStore store = SqliteStore.open(other())) {
            store.append(List.of(fact(1)));
            Integer pages = (Integer) ask(store.connection(), "PRAGMA page_count");
            tell(store.connection(), "PRAGMA max_page_count = " + pages);
            Random random = new Random(7);
            List<Fact> many = new ArrayList<>();
            for (long seq = 2; seq < 2_000; seq++) {
                many.add(RandomFacts.fact(random, seq));
            }
            assertThatThrownBy(() -> store.append(many)).isInstanceOf(StoreException.class)
                    .hasMessageContaining("the disk of " + other().getParent() + " is full");
            assertThat(store.load().facts()).containsExactly(fact(1));
            tell(store.connection(), "PRAGMA max_page_count = 1000000");
            store.append(many);
            assertThat(store.load().facts()).hasSize(1 + many.size());
        }
    }

    @Test
    void aFileThatCannotBeWrittenIsTold() throws Exception {
        try (SqliteStore store = SqliteStore.open(other())) {
            tell(store.connection(), "PRAGMA query_only = 1");
            assertThatThrownBy(() -> store.append(List.of(fact(1)))).isInstanceOf(StoreException.class)
                    .hasMessageContaining("cannot be written")
                    .hasMessageContaining("must belong to the user conetender");
        }
    }

    @Test
    void aWriterInTheWayIsToldAfterAWait() throws Exception {
        try (SqliteStore store = SqliteStore.open(other());
                Connection intruder = DriverManager.getConnection("jdbc:sqlite:" + other())) {
            tell(store.connection(), "PRAGMA busy_timeout = 10");
            tell(intruder, "BEGIN IMMEDIATE");
            assertThatThrownBy(() -> store.append(List.of(fact(1)))).isInstanceOf(StoreException.class)
                    .hasMessageContaining("another program holds it");
            tell(intruder, "COMMIT");
            store.append(List.of(fact(1)));
        }
    }

    @Test
    void aMissingFolderIsNamed() {
        Path file = folder.resolve("nowhere").resolve("record.db");
        assertThatThrownBy(() -> SqliteStore.open(file)).isInstanceOf(StoreException.class)
                .hasMessageContaining("folder for the record").hasMessageContaining("does not exist");
    }

    @Test
    void aRefusedOpeningLetsGoOfTheLock() throws Exception {
        aDatabaseOfAnotherProgramIsNotWrittenInto();
        Files.delete(other());
        SqliteStore.open(other()).close();
    }
}
