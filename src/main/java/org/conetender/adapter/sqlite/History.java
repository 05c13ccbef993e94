package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayDeque;
import java.util.List;
import org.conetender.core.batch.Minute;
import org.conetender.port.Store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The minutes of all time, in a file of their own, which nothing but reports reads: temperatures, outputs,
 * and what became of alarms. It is opened with the first minute that is kept, long after the first decision,
 * and looked through by a thread of its own: a year of it may take a while on a card. One that is damaged is
 * kept aside and begun anew.
 */
final class History implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(History.class);

    /** Minutes that are written together: a commit rewrites whole pages of a card, however little it adds. */
    static final int TOGETHER = 10;
    /** While the disk takes nothing so many wait, then the oldest go (guess: two hours). */
    private static final int MOST = 120;

    /** Facts of some months, with their journal: guess, bytes. */
    private static final long RESERVE = 32L << 20;

    private final Path file;
    private final int together;
    private long reserve = RESERVE;
    private final ArrayDeque<Minute> waiting = new ArrayDeque<>();
    private Connection db;
    private MinuteRows rows;
    private Thinning thinning;
    private Look look;

    History(Path file, int together) {
        this.file = file;
        this.together = together;
    }

    /**
     * Keeps a minute, with the next ones; a sudden end loses these few. One in which an alarm turned is
     * written at once: what led to a sudden end is asked for most. A minute told twice replaces itself: the
     * second knows better.
     */
    void keep(Minute m) throws StoreException {
        waiting.add(m);
        if (waiting.size() > MOST) {
            waiting.removeFirst();
        }
        if (db == null || waiting.size() >= together || !m.turns().isEmpty() && !rows.storm()) {
            write();
        }
    }

    private void write() throws StoreException {
        try {
            room();
            open();
            transaction();
            waiting.clear();
        } catch (SQLException e) {
            letGo();
            if (!Trouble.damaged(e)) {
                throw Trouble.running("keep a minute in", file, e, false);
            }
            beginAnew(e.getMessage());
        } catch (Damaged e) {
            letGo();
            beginAnew(e.getMessage());
        } catch (Schema.Refused e) {
            letGo();
            throw new StoreException(file + " " + e.getMessage(), e);
        }
    }

    /** The last of the disk is left to the book: what is reported is kept longest. */
    private void room() throws StoreException {
        try {
            long free = Files.getFileStore(file.getParent()).getUsableSpace();
            if (free < reserve) {
                throw new StoreException("only " + free / 1_000_000 + " MB are free on the disk of " + file
                        + ", and these are left to what is reported; free some space (journalctl"
                        + " --vacuum-size=50M is a start), it goes on by itself", null);
            }
        } catch (IOException e) {
            LOG.debug("how much of the disk is free cannot be told", e);
        }
    }

    /** For the tests: so much is left to the book, bytes. */
    void reserve(long bytes) {
        reserve = bytes;
    }

    private void open() throws SQLException, Schema.Refused, Damaged {
        if (db == null) {
            db = Opening.connect(file);
            Schema.HISTORY.bring(db);
            rows = new MinuteRows(db);
            thinning = new Thinning(db);
            look = Look.at(file);
        }
        if (look.found().isPresent()) {
            throw new Damaged(look.found().get(), null);
        }
    }

    private void transaction() throws SQLException {
        try (Statement s = db.createStatement()) {
            s.execute("BEGIN IMMEDIATE");
            for (Minute m : waiting) {
                rows.insert(m);
                thinning.minute();
            }
            s.execute("COMMIT");
        }
    }

    /** The next minute finds no file, and makes one. */
    private void beginAnew(String why) {
        try {
            String aside = Salvage.aside(file);
            for (String end : List.of("-wal", "-shm", "")) {
                Path from = Swap.beside(file, end);
                if (Files.exists(from)) {
                    Files.move(from, Swap.beside(file.resolveSibling(aside), end),
                            StandardCopyOption.REPLACE_EXISTING);
                }
            }
            LOG.warn("the history {} was damaged ({}); it is kept as {} and begun anew. What"
                    + " was reported is not affected", file, why, aside);
        } catch (IOException e) {
            LOG.warn("the history {} is damaged ({}) and cannot be moved away ({});"
                    + " minutes are not kept", file, why, e.toString());
        }
    }

    /** Whatever is open is closed; a transaction that was not ended is taken back by that. */
    private void letGo() {
        try (Connection c = db; Look l = look) {
            LOG.debug("closing {} after {}", c, l);
        } catch (SQLException e) {
            LOG.debug("the history did not close cleanly", e);
        }
        db = null;
        look = null;
    }

    @Override
    public void close() {
        try {
            if (!waiting.isEmpty()) {
                write();
            }
        } catch (StoreException e) {
            LOG.warn("the last minutes are not kept: {}", e.getMessage());
        }
        letGo();
    }

    /** For the tests. */
    Connection connection() {
        return db;
    }
}
