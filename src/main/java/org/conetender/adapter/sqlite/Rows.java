package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.CheckpointText;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.FactText;
import org.conetender.core.unit.Moment;

/** Facts, temperatures and the checkpoint as rows. Transactions are the caller's. */
final class Rows {

    private final Connection db;

    /** Number of each boot id that this process has met, as in the table {@code boot}. */
    private final Map<String, Long> boots = new HashMap<>();

    Rows(Connection db) {
        this.db = db;
    }

    /** After a rollback: what was learnt inside the transaction is no longer so. */
    void forget() {
        boots.clear();
    }

    /** @throws IllegalArgumentException if a row does not read back as a fact */
    List<Fact> facts() throws SQLException {
        List<Fact> facts = new ArrayList<>();
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery("""
                SELECT seq, boot.id, mono_ms, wall_ms, wall_trusted, cone, source, change
                FROM fact JOIN boot ON boot.number = fact.boot ORDER BY seq""")) {
            while (r.next()) {
                facts.add(fact(r));
            }
        }
        return facts;
    }

    private static Fact fact(ResultSet r) throws SQLException {
        Moment at = new Moment(r.getString(2), r.getLong(3), r.getLong(4), r.getInt(5) == 1);
        try {
            return new Fact(r.getLong(1), at, r.getString(6), r.getString(7), FactText.read(r.getString(8)));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("fact " + r.getLong(1) + ": " + e.getMessage(), e);
        }
    }

    /** @throws IllegalArgumentException if the row does not read back as a checkpoint */
    Optional<Checkpoint> checkpoint() throws SQLException {
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery("SELECT text FROM checkpoint")) {
            return r.next() ? Optional.of(CheckpointText.read(r.getString(1))) : Optional.empty();
        }
    }

    /**
     * Adds these facts in their order. A number that is already there is SQLite's to refuse; the caller's
     * transaction then takes back the ones before it.
     */
    void insert(List<Fact> facts) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("INSERT INTO fact VALUES (?, ?, ?, ?, ?, ?, ?, ?)")) {
            for (Fact f : facts) {
                p.setLong(1, f.seq());
                p.setLong(2, boot(f.at().boot()));
                clocks(p, f.at());
                p.setString(6, f.cone());
                p.setString(7, f.source());
                p.setString(8, FactText.write(f.change()));
                p.executeUpdate();
            }
        }
    }

    /** A minute told twice replaces itself: the second telling knows better. */
    void temperatures(Checkpoint checkpoint) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("""
                INSERT INTO temperature (series, boot, mono_ms, wall_ms, wall_trusted, degrees_c)
                VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET degrees_c = excluded.degrees_c""")) {
            for (Checkpoint.Temperature t : checkpoint.temperatures()) {
                p.setString(1, t.series());
                p.setLong(2, boot(checkpoint.at().boot()));
                clocks(p, checkpoint.at());
                p.setDouble(6, t.degreesC());
                p.executeUpdate();
            }
        }
    }

    /** There is only ever one: a restart needs the last, and old ones would wear the card for nothing. */
    void replaceCheckpoint(String text) throws SQLException {
        try (PreparedStatement p = db.prepareStatement(
                "INSERT INTO checkpoint VALUES (1, ?) ON CONFLICT DO UPDATE SET text = excluded.text")) {
            p.setString(1, text);
            p.executeUpdate();
        }
    }

    /** Both tables carry the clocks in columns 3 to 5. */
    private static void clocks(PreparedStatement p, Moment at) throws SQLException {
        p.setLong(3, at.monoMs());
        p.setLong(4, at.wallMs());
        p.setInt(5, at.wallTrusted() ? 1 : 0);
    }

    /**
     * The number that stands for a boot id, given on its first use. Numbers rise with time, so that they
     * order the temperatures of different boots; and one byte mostly stands for 36 letters.
     */
    private long boot(String id) throws SQLException {
        Long known = boots.get(id);
        if (known != null) {
            return known;
        }
        try (PreparedStatement p = db.prepareStatement(
                "INSERT INTO boot (id) VALUES (?) ON CONFLICT DO UPDATE SET id = id RETURNING number")) {
            p.setString(1, id);
            try (ResultSet r = p.executeQuery()) {
                r.next();
                boots.put(id, r.getLong(1));
                return r.getLong(1);
            }
        }
    }
}
