package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.conetender.port.Store.StoreException;
import org.sqlite.SQLiteConfig;

/** Everything that must be so before the first fact is read: lock, settings, version, soundness. */
final class Opening {

    /** How long a write waits for a reader that is in its way, ms: guess, a report takes less. */
    private static final int BUSY_MS = 2_000;

    /** The journal is cut back to this after a checkpoint; the default never does (dependencies.md §4). */
    private static final int JOURNAL_BYTES = 4 << 20;

    /** A record that can be used. */
    record Opened(Path file, Connection db, RecordLock lock) {}

    private Opening() {}

    /**
     * Opens or makes the record. What was opened before a failure is closed again, so that the next try,
     * a second later under the service manager, finds the lock free.
     */
    static Opened open(Path file) throws StoreException {
        Path record = file.toAbsolutePath();
        List<AutoCloseable> held = new ArrayList<>();
        try {
            RecordLock lock = lock(record);
            held.add(lock);
            boolean fresh = !Files.exists(record);
            Connection db = connect(record);
            held.add(0, db);
            Schema.bring(db, Schema.STEPS);
            check(db);
            if (fresh) {
                syncFolder(record.getParent());
            }
            return new Opened(record, db, lock);
        } catch (SQLException e) {
            throw letGo(held, Trouble.of("open", record, e));
        } catch (Schema.Refused e) {
            throw letGo(held, new StoreException(record + " " + e.getMessage(), e));
        } catch (IOException e) {
            throw letGo(held, new StoreException("could not make sure that the new record " + record
                    + " outlives a power cut; see that its folder can be read and its disk is healthy ("
                    + e + ")", e));
        }
    }

    /** The lock comes first: without it even looking at the version could race with a migration. */
    private static RecordLock lock(Path record) throws StoreException {
        if (!Files.isDirectory(record.getParent())) {
            throw new StoreException("the folder for the record, " + record.getParent()
                    + ", does not exist; make it, or correct the record's path in the configuration", null);
        }
        try {
            return RecordLock.take(record).orElseThrow(() -> new StoreException("the record " + record
                    + " is in use by another conetender; stop that one first (systemctl stop conetender),"
                    + " or give this one a record of its own", null));
        } catch (IOException e) {
            throw new StoreException("could not lock the record " + record + "; see that its folder belongs"
                    + " to the user conetender and can be written (" + e + ")", e);
        }
    }

    /** Settings of a connection are not kept in the file: all but the journal mode are set each time. */
    private static Connection connect(Path record) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setJournalSizeLimit(JOURNAL_BYTES);
        config.setBusyTimeout(BUSY_MS);
        config.enforceForeignKeys(true);
        return config.createConnection("jdbc:sqlite:" + record);
    }

    /** Only the facts: a year of temperatures would take minutes to check on a card. */
    private static void check(Connection db) throws SQLException, Schema.Refused {
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery("PRAGMA quick_check('fact')")) {
            if (r.next() && !r.getString(1).equals("ok")) {
                throw new Schema.Refused("is damaged (" + r.getString(1).strip() + "); keep a copy of it and"
                        + " of the files beside it, then put back a backup or move it away to begin a new"
                        + " record");
            }
        }
    }

    /** SQLite syncs its files; the name of a new file lives in the folder and is synced here. */
    private static void syncFolder(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private static StoreException letGo(List<AutoCloseable> held, StoreException why) {
        for (AutoCloseable c : held) {
            try {
                c.close();
            } catch (Exception e) {
                why.addSuppressed(e);
            }
        }
        return why;
    }
}
