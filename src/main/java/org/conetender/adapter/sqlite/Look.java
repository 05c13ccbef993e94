package org.conetender.adapter.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConnection;

/** Looks through a whole file for damage, on a thread and a connection of its own that nobody waits for. */
final class Look implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Look.class);

    /** A page is read between two looks whether it was called off: this is soon over, ms. */
    private static final long CALLED_OFF_MS = 2_000;

    private final Connection db;
    private final Thread thread;
    private volatile Optional<String> found = Optional.empty();

    private Look(Connection db) {
        this.db = db;
        this.thread = new Thread(this::look, "conetender-look");
    }

    static Look at(Path file) throws SQLException {
        Look l = new Look(Opening.plain(file));
        l.thread.setDaemon(true);
        l.thread.setPriority(Thread.MIN_PRIORITY);
        l.thread.start();
        return l;
    }

    private void look() {
        try (db) {
            Opening.check(db, "");
        } catch (Damaged e) {
            found = Optional.of(e.getMessage());
        } catch (SQLException e) {
            found = Trouble.damaged(e) ? Optional.of(e.getMessage()) : Optional.empty();
            LOG.debug("the look through the history ended early: {}", e.getMessage());
        }
    }

    /** What was found so far; empty while nothing was. */
    Optional<String> found() {
        return found;
    }

    /** Calls it off if it still looks. */
    @Override
    public void close() throws SQLException {
        if (thread.isAlive()) {
            ((SQLiteConnection) db).getDatabase().interrupt();
        }
        try {
            thread.join(CALLED_OFF_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
