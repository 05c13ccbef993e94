package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The temperatures of all time, in a file of their own, which nothing but reports reads. It is opened with
 * the first minute that is kept, long after the first decision, and looked through by a thread of its own: a
 * year of it may take a while on a card. One that is damaged is kept aside and begun anew.
 */
final class History implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(History.class);

    private final Path file;
    private Connection db;
    private Boots boots;
    private Thinning thinning;
    private Look look;

    History(Path file) {
        this.file = file;
    }

    /** Keeps the temperatures of a minute; a minute told twice replaces itself: the second knows better. */
    void keep(Checkpoint c) throws StoreException {
        try {
            open();
            transaction(c);
        } catch (SQLException e) {
            letGo();
            if (!Trouble.damaged(e)) {
                throw Trouble.of("keep a temperature in", file, e);
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

    private void open() throws SQLException, Schema.Refused, Damaged {
        if (db == null) {
            db = Opening.connect(file);
            Schema.HISTORY.bring(db);
            boots = new Boots(db);
            thinning = new Thinning(db);
            look = Look.at(file);
        }
        if (look.found().isPresent()) {
            throw new Damaged(look.found().get(), null);
        }
    }

    private void transaction(Checkpoint c) throws SQLException {
        try (Statement s = db.createStatement()) {
            s.execute("BEGIN IMMEDIATE");
            insert(c);
            thinning.minute();
            s.execute("COMMIT");
        }
    }

    private void insert(Checkpoint c) throws SQLException {
        Moment at = c.at();
        try (PreparedStatement p = db.prepareStatement("""
                INSERT INTO temperature (boot, mono_ms, series, wall_ms, wall_trusted, degrees_c)
                VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET degrees_c = excluded.degrees_c""")) {
            for (Checkpoint.Temperature t : c.temperatures()) {
                p.setLong(1, boots.number(at.boot()));
                p.setLong(2, at.monoMs());
                p.setString(3, t.series());
                p.setLong(4, at.wallMs());
                p.setInt(5, at.wallTrusted() ? 1 : 0);
                p.setDouble(6, t.degreesC());
                p.executeUpdate();
            }
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
            LOG.warn("the history of temperatures {} was damaged ({}); it is kept as {} and begun anew. What"
                    + " was reported is not affected", file, why, aside);
        } catch (IOException e) {
            LOG.warn("the history of temperatures {} is damaged ({}) and cannot be moved away ({});"
                    + " temperatures are not kept", file, why, e.toString());
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
        letGo();
    }

    /** For the tests. */
    Connection connection() {
        return db;
    }
}
