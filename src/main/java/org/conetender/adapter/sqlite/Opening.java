package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.conetender.core.batch.Fact;
import org.conetender.port.Store;
import org.conetender.port.Store.StoreException;
import org.sqlite.SQLiteConfig;

/**
 * Everything that must be so before the first fact is acted on: lock, settings, version, soundness. The book
 * is read whole here; it is small, and a damage in it must be known before any heat.
 */
final class Opening {

    /** How long a write waits for a reader that is in its way, ms: guess, a report takes less. */
    private static final int BUSY_MS = 2_000;

    /** The journal is cut back to this after a checkpoint; the default never does (dependencies.md §4). */
    private static final int JOURNAL_BYTES = 4 << 20;

    /**
     * Size of a page in a file that is made new; said before the journal mode, after which it is fixed. A
     * commit writes whole pages into the journal, however little it adds, and a checkpoint of eight cones
     * fits into one of these: 19.2 MB a day (mean of a year, YearTest); pages of 4096 bytes took 22 when
     * these took 17.9.
     */
    private static final int PAGE_BYTES = 2_048;

    /** A book that can be used. @param kept what it holds */
    record Opened(Path file, Connection db, Store.Kept kept) {}

    private Opening() {}

    /** Where the history of that book lies. */
    static Path history(Path book) {
        String name = book.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return book.resolveSibling(dot < 0 ? name + "-history"
                : name.substring(0, dot) + "-history" + name.substring(dot));
    }

    /**
     * Opens or makes the book, whose lock is had, on a full disk in the room of the reserve. What was opened
     * before a failure is closed again, lock and all, so that the next try, a second later under the service
     * manager, finds the lock free.
     */
    static Opened open(Path file, RecordLock lock, Reserve reserve) throws StoreException {
        Path book = file.toAbsolutePath();
        try {
            reserve.begin(Disk.block(book.getParent()));
            return reserve.within(() -> told(book));
        } catch (StoreException e) {
            close(lock, e);
            throw e;
        }
    }

    private static Opened told(Path book) throws StoreException {
        try {
            Swap.finish(book);
            return opened(book);
        } catch (SQLException e) {
            throw Trouble.of("open", book, e);
        } catch (Schema.Refused e) {
            throw new StoreException(book + " " + e.getMessage(), e);
        } catch (Damaged e) {
            throw new StoreException("the record " + book + " is damaged (" + e.getMessage()
                    + ") again after it was made anew: change the card or disk", e);
        } catch (IllegalArgumentException e) {
            throw new StoreException("could not understand the record " + book + ": "
                    + e.getMessage() + "; it was written by another version or changed by hand. Install that"
                    + " version again, put back a backup, or move the record away to begin a new one", e);
        } catch (IOException e) {
            throw new StoreException("could not make sure that the record " + book
                    + " outlives a power cut: " + Disk.trouble(book.getParent()).orElse("see that its folder"
                    + " can be read and written, and that its disk is healthy") + " (" + e + ")", e);
        }
    }

    private static Opened opened(Path book) throws SQLException, Schema.Refused, Damaged, IOException {
        boolean lost = (!Files.exists(book) || Files.size(book) == 0) && Files.exists(history(book));
        try {
            if (lost) {
                throw new Damaged("it is gone, and only its history is there", null);
            }
            return sound(book);
        } catch (Damaged e) {
            Salvage.of(book, e.getMessage());
            return sound(book);
        }
    }

    private static Opened sound(Path book) throws SQLException, Schema.Refused, Damaged, IOException {
        Connection db = null;
        try {
            db = connect(book);
            if (Schema.number(db, "PRAGMA user_version") == Schema.TOGETHER
                    && Schema.number(db, "PRAGMA application_id") == Schema.APPLICATION_ID) {
                check(db, "'fact'");
                Salvage.part(book, history(book), db);
                db = connect(book);
            }
            Schema.BOOK.bring(db);
            check(db, "");
            Swap.syncFolder(book.getParent());
            return new Opened(book, db, read(db, Schema.BOOK.version()));
        } catch (SQLException e) {
            close(db, e);
            if (Trouble.damaged(e)) {
                throw new Damaged(e.getMessage(), e);
            }
            throw e;
        } catch (Schema.Refused | Damaged | IOException | RuntimeException e) {
            close(db, e);
            throw e;
        }
    }

    /** All that the book holds. @param version of it */
    static Store.Kept read(Connection db, int version) throws SQLException, Damaged {
        Rows rows = new Rows(db, version != Schema.TOGETHER);
        List<Fact> facts = new ArrayList<>();
        rows.facts(facts);
        return new Store.Kept(facts, rows.checkpoint(), rows.damages());
    }

    /** The lock comes first: without it even looking at the version could race with a migration. */
    static RecordLock lock(Path record) throws StoreException {
        if (!Files.isDirectory(record.getParent())) {
            throw new StoreException("the folder for the record, " + record.getParent()
                    + ", does not exist; make it, or correct the record's path in the configuration", null);
        }
        try {
            return RecordLock.take(record).orElseThrow(() -> new StoreException("the record " + record
                    + " is in use by another conetender; stop that one first (systemctl stop conetender),"
                    + " or give this one a record of its own", null));
        } catch (IOException e) {
            throw new StoreException("could not lock the record " + record + ": "
                    + Disk.trouble(record.getParent()).orElse("see that its folder belongs to the user"
                    + " conetender and can be written") + " (" + e + ")", e);
        }
    }

    /** Settings of a connection are not kept in the file, but page size and journal mode. */
    static Connection connect(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setJournalSizeLimit(JOURNAL_BYTES);
        config.setBusyTimeout(BUSY_MS);
        config.enforceForeignKeys(true);
        Connection db = config.createConnection("jdbc:sqlite:" + file);
        try (Statement s = db.createStatement()) {
            s.execute("PRAGMA page_size = " + PAGE_BYTES);
            s.execute("PRAGMA journal_mode = WAL");
            return db;
        } catch (SQLException e) {
            close(db, e);
            throw e;
        }
    }

    /** A connection that changes no setting of the file. */
    static Connection plain(Path file) throws SQLException {
        return new SQLiteConfig().createConnection("jdbc:sqlite:" + file);
    }

    /** @param of the table, in quotes; empty for all of them */
    static void check(Connection db, String of) throws SQLException, Damaged {
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery("PRAGMA quick_check"
                + (of.isEmpty() ? "" : "(" + of + ")"))) {
            if (r.next() && !r.getString(1).equals("ok")) {
                throw new Damaged(r.getString(1).strip().replaceAll("\\s+", " "), null);
            }
        }
    }

    private static void close(AutoCloseable c, Exception why) {
        try {
            if (c != null) {
                c.close();
            }
        } catch (Exception e) {
            why.addSuppressed(e);
        }
    }
}
