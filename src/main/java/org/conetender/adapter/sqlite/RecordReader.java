package org.conetender.adapter.sqlite;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import org.conetender.port.Store;
import org.conetender.port.Store.StoreException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * Reads the record without ever changing it, also while the daemon writes: it takes no lock of the daemon's,
 * makes no record, lifts no version and mends nothing. Where nobody has the record open, SQLite leaves an
 * empty {@code -wal} and a {@code -shm} beside it. What is read is one moment of each file.
 */
public final class RecordReader {

    /** The daemon's writes keep nobody waiting in this journal mode; only a checkpoint may, ms (guess). */
    private static final int BUSY_MS = 2_000;

    private final Path book;

    private RecordReader(Path book) {
        this.book = book;
    }

    /** @param book its file, as {@link SqliteStore#open} takes it */
    public static RecordReader of(Path book) {
        return new RecordReader(book.toAbsolutePath());
    }

    /**
     * Facts, checkpoint and damages.
     *
     * @throws StoreException with what to do, where there is no record, or one that this program cannot read
     */
    public Store.Kept kept() throws StoreException {
        if (Files.notExists(book)) {
            throw new StoreException("there is no record " + book + " yet; it begins when the daemon first "
                    + "runs. If it lies elsewhere, name the site's configuration", null);
        }
        try (Connection db = connect(book); Statement s = db.createStatement()) {
            s.execute("BEGIN");
            int version = checked(db, Schema.BOOK);
            if (version == 0) {
                return new Store.Kept(List.of(), Optional.empty(), List.of());
            }
            return Opening.read(db, version);
        } catch (SQLException e) {
            throw trouble("read", book, e);
        } catch (Schema.Refused e) {
            throw new StoreException("the record " + book + " " + e.getMessage(), e);
        } catch (Damaged e) {
            throw new StoreException("the record " + book + " is damaged (" + e.getMessage() + "); nothing "
                    + "was changed. Start conetender: it keeps the damaged one aside and goes on with what "
                    + "can be read", e);
        } catch (IllegalArgumentException e) {
            throw new StoreException("could not understand the record " + book + ": " + e.getMessage()
                    + "; it was written by another version or changed by hand", e);
        }
    }

    /** What was kept of all minutes. */
    public HistoryReader history() throws StoreException {
        return new HistoryReader(minutes());
    }

    /** The file in which minutes are: the book itself where all lies together. */
    private Path minutes() throws StoreException {
        Path apart = Opening.history(book);
        if (Files.exists(apart) || !Files.exists(book)) {
            return apart;
        }
        try (Connection db = connect(book)) {
            return Schema.number(db, "PRAGMA user_version") == Schema.TOGETHER ? book : apart;
        } catch (SQLException e) {
            throw trouble("read", book, e);
        }
    }

    /** A reader meets the daemon by files beside the record, which it must be able to write. */
    static StoreException trouble(String doing, Path file, SQLException e) {
        int whole = e instanceof SQLiteException s ? s.getResultCode().code : 0;
        int code = whole & Trouble.PRIMARY;
        if (whole == SQLiteErrorCode.SQLITE_READONLY_ROLLBACK.code
                || whole == SQLiteErrorCode.SQLITE_READONLY_RECOVERY.code) {
            return new StoreException("could not " + doing + " the record " + file + ": a power cut came "
                    + "while it was written, and the daemon has not mended it yet. It does so with the next "
                    + "minutes that it keeps: start it, and ask again then", e);
        }
        boolean rights = code == SQLiteErrorCode.SQLITE_READONLY.code
                || code == SQLiteErrorCode.SQLITE_CANTOPEN.code;
        return !rights || Disk.trouble(file.getParent()).isPresent() ? Trouble.of(doing, file, e)
                : new StoreException("could not " + doing + " the record " + file + ": this user has not the "
                        + "right to use its folder; try it as the daemon's user (sudo -u conetender "
                        + "conetender report)", e);
    }

    /** The version of a file that this program can read; 0 where nothing was written into it yet. */
    static int checked(Connection db, Schema schema) throws SQLException, Schema.Refused {
        int version = Schema.number(db, "PRAGMA user_version");
        boolean empty = Schema.number(db, "SELECT count(*) FROM sqlite_schema") == 0;
        schema.admit(db);
        return empty ? 0 : version;
    }

    static Connection connect(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(BUSY_MS);
        return config.createConnection("jdbc:sqlite:" + file);
    }
}
