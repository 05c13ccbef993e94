package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.CheckpointText;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.port.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The record in two SQLite files: the book of facts and checkpoint, small and read whole at the start, and
 * the history of all minutes, which is opened with the first one and never stops the book. Both are in WAL
 * mode with synchronous=FULL: of 10 000 crash states none lost an acknowledged commit or was damaged, where
 * NORMAL lost most (control.md §6.2). Beside each file lie {@code -wal} and {@code -shm}, which belong to it,
 * and beside the book {@code .lock} and {@code -reserve}, room for facts on a full disk ({@link Reserve}).
 *
 * <p>One thread at a time, as {@link Store} says.
 */
public final class SqliteStore implements Store {

    private static final Logger LOG = LoggerFactory.getLogger(SqliteStore.class);

    /** A fact lies for so many minutes in the journal alone (guess: written pages against exposure). */
    static final int SETTLES_AFTER_MIN = 10;

    private final Path file;
    private final Connection db;
    private final RecordLock lock;
    private final Reserve reserve;
    private final Rows rows;
    /** Minutes since the first fact that may lie in the journal alone; 0 while none does. */
    private int unsettled;
    private final History history;
    /** What was read at the start, until somebody asks for it or more is written. */
    private Optional<Kept> read;

    private SqliteStore(Path book, RecordLock lock, int together) throws StoreException {
        this.reserve = new Reserve(book.toAbsolutePath());
        Opening.Opened opened = Opening.open(book, lock, reserve);
        this.file = opened.file();
        this.db = opened.db();
        this.lock = lock;
        this.rows = new Rows(db, true);
        this.history = new History(Opening.history(file), together);
        this.read = Optional.of(opened.kept());
        reserve.fill();
    }

    /**
     * Opens the record, making it when there is none. Its folder must exist. A damaged book is kept aside,
     * and what can be read of it is gone on with ({@link Kept#damages}).
     *
     * @param file the book; the history's name is made from it
     * @throws StoreException if it cannot be used: held by another conetender, newer than this program, not
     *     writable; the message says what to do
     */
    public static SqliteStore open(Path file) throws StoreException {
        return open(file, History.TOGETHER);
    }

    /** @param together minutes of history that are written in one go */
    static SqliteStore open(Path file, int together) throws StoreException {
        return new SqliteStore(file, Opening.lock(file.toAbsolutePath()), together);
    }

    /**
     * Takes the record's lock at once, and leaves the rest of {@link #open} to the answer, which may be asked
     * on another thread: to read a year takes a while. It opens or lets the lock go, and is asked once.
     *
     * @throws StoreException if another conetender holds it, or its folder cannot be used
     */
    public static Locked lock(Path file) throws StoreException {
        RecordLock lock = Opening.lock(file.toAbsolutePath());
        return () -> new SqliteStore(file, lock, History.TOGETHER);
    }

    /** A record that nobody else has, still closed. */
    public interface Locked {
        SqliteStore open() throws StoreException;
    }

    @Override
    public Kept load() throws StoreException {
        try {
            Kept kept = read.isPresent() ? read.get() : Opening.read(db, Schema.BOOK.version());
            read = Optional.empty();
            return kept;
        } catch (SQLException e) {
            throw Trouble.of("read", file, e);
        } catch (Damaged | IllegalArgumentException e) {
            throw new StoreException("could not understand the record " + file + ": " + e.getMessage()
                    + "; it was changed while conetender ran. Restart conetender", e);
        }
    }

    @Override
    public void append(List<Fact> facts) throws StoreException {
        long left = reserve.left();
        reserve.within(() -> {
            together("keep a fact in", () -> rows.insert(facts));
            return facts;
        });
        unsettled = Math.max(1, unsettled);
        if (reserve.left() < left) {
            // Then the next ones find room in the journal.
            bringOver();
        }
    }

    /**
     * Brings what is durable from the journal into the book itself, where each fact is guarded by its sum: a
     * byte that falls over in a journal ends it there, and looks like its end. Not done, nothing is lost.
     * Some minutes are waited for, since each time pages of a card are written anew. What a reader holds back
     * is tried again with the next minute.
     */
    private void settle() {
        if (unsettled > 0 && ++unsettled > SETTLES_AFTER_MIN) {
            bringOver();
        }
    }

    private void bringOver() {
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery("PRAGMA wal_checkpoint(PASSIVE)")) {
            // Busy or not, pages in the journal, pages brought over: a reader may keep some of them back.
            if (r.next() && r.getInt(1) == 0 && r.getInt(2) == r.getInt(3)) {
                unsettled = 0;
            }
        } catch (SQLException e) {
            LOG.debug("the journal of {} stays as it is for now: {}", file, e.toString());
        }
    }

    @Override
    public void minute(Checkpoint checkpoint) throws StoreException {
        String text = CheckpointText.write(checkpoint);
        reserve.spare();
        together("keep a minute in", () -> rows.replaceCheckpoint(text));
        settle();
        reserve.fill();
    }

    @Override
    public void history(Minute minute) throws StoreException {
        history.keep(minute);
    }

    private interface Writes {
        void run() throws SQLException;
    }

    /**
     * One transaction. IMMEDIATE takes the right to write at once: a reader in the way is met before
     * anything was written, not at the commit. Where the commit fails, its end may lie in the journal already
     * and be read by a start that comes before the next write, which takes its place: the journal is made
     * durable last, after the frame that commits (sqlite3WalFrames in SQLite's wal.c). Without room for that
     * frame it is surely not kept.
     */
    private void together(String doing, Writes writes) throws StoreException {
        read = Optional.empty();
        boolean committing = false;
        try {
            run("BEGIN IMMEDIATE");
            writes.run();
            committing = true;
            run("COMMIT");
        } catch (SQLException e) {
            undo(e);
            throw Trouble.running(doing, file, e, committing && !Trouble.room(e));
        } catch (RuntimeException bug) {
            undo(bug);
            throw bug;
        }
    }

    /** Some failures (a full disk) undo the transaction by themselves; then there is none to undo. */
    private void undo(Exception cause) {
        rows.forget();
        try {
            run("ROLLBACK");
        } catch (SQLException e) {
            cause.addSuppressed(e);
        }
    }

    private void run(String sql) throws SQLException {
        try (Statement s = db.createStatement()) {
            s.execute(sql);
        }
    }

    /** For the tests. */
    History history() {
        return history;
    }

    /** For the tests, which make the disk small or read-only through it. */
    Connection connection() {
        return db;
    }

    @Override
    public void close() {
        try (lock; db; history) {
            LOG.debug("closing the record {}", file);
        } catch (SQLException | IOException e) {
            LOG.warn("the record {} did not close cleanly; nothing recorded is lost ({})", file,
                    e.toString());
        }
    }
}
