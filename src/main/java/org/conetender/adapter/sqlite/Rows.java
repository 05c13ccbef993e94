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
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.CheckpointText;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.FactText;
import org.conetender.core.unit.Moment;

/** The book's facts, checkpoint and damages as rows. Transactions are the caller's. */
final class Rows {

    /** Whether rows carry a sum: those of a record in which everything lay together do not. */
    private final boolean summed;
    private final Connection db;
    private final Boots boots;
    /** What was read so far, by its text: most facts say one of a few things, and none ever changes. */
    private final Map<String, Change> read = new HashMap<>();

    Rows(Connection db, boolean summed) {
        this.db = db;
        this.summed = summed;
        this.boots = new Boots(db);
    }

    /** After a rollback: what was learnt inside the transaction is no longer so. */
    void forget() {
        boots.forget();
    }

    /**
     * Reads facts in order of their numbers into that list, as far as it goes: what could be read before a
     * failure is in it.
     *
     * @throws Damaged if a row is not what was written
     * @throws IllegalArgumentException if a row is what was written, but not by this version
     */
    void facts(List<Fact> into) throws SQLException, Damaged {
        Map<Long, String> ids = new HashMap<>();
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery("SELECT number, id FROM boot")) {
            while (r.next()) {
                ids.put(r.getLong(1), r.getString(2));
            }
        }
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery(
                "SELECT seq, boot, mono_ms, wall_ms, wall_trusted, cone, source, change, "
                + (summed ? "sum" : "0") + " FROM fact ORDER BY seq")) {
            while (r.next()) {
                into.add(fact(r, ids.get(r.getLong(2))));
            }
        } finally {
            read.clear();
        }
    }

    private Fact fact(ResultSet r, String boot) throws SQLException, Damaged {
        long seq = r.getLong(1);
        long monoMs = r.getLong(3);
        long wallMs = r.getLong(4);
        int trusted = r.getInt(5);
        String cone = r.getString(6);
        String source = r.getString(7);
        String change = r.getString(8);
        if (boot == null || summed && r.getLong(9) != Sum.of(seq, boot, monoMs, wallMs, trusted, cone, source,
                change)) {
            throw new Damaged("fact " + seq + " is not as it was written", null);
        }
        Moment at = new Moment(boot, monoMs, wallMs, trusted == 1);
        try {
            return new Fact(seq, at, cone, source, read.computeIfAbsent(change, FactText::read));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("fact " + seq + ": " + e.getMessage(), e);
        }
    }

    /** @throws IllegalArgumentException if the row does not read back as a checkpoint */
    Optional<Checkpoint> checkpoint() throws SQLException, Damaged {
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery(
                "SELECT text, " + (summed ? "sum" : "0") + " FROM checkpoint")) {
            if (!r.next()) {
                return Optional.empty();
            }
            if (summed && r.getLong(2) != Sum.of(r.getString(1))) {
                throw new Damaged("the checkpoint is not as it was written", null);
            }
            return Optional.of(CheckpointText.read(r.getString(1)));
        }
    }

    /** Every damage so far, oldest first. */
    List<String> damages() throws SQLException {
        List<String> all = new ArrayList<>();
        if (summed) {
            try (Statement s = db.createStatement();
                    ResultSet r = s.executeQuery("SELECT what FROM damage ORDER BY number")) {
                while (r.next()) {
                    all.add(r.getString(1));
                }
            }
        }
        return all;
    }

    void damaged(String what) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("INSERT INTO damage (what) VALUES (?)")) {
            p.setString(1, what);
            p.executeUpdate();
        }
    }

    /**
     * Adds these facts in their order. A number that is already there is SQLite's to refuse; the caller's
     * transaction then takes back the ones before it.
     */
    void insert(List<Fact> facts) throws SQLException {
        try (PreparedStatement p = db.prepareStatement(
                "INSERT INTO fact VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
            for (Fact f : facts) {
                Moment at = f.at();
                int trusted = at.wallTrusted() ? 1 : 0;
                String change = FactText.write(f.change());
                p.setLong(1, f.seq());
                p.setLong(2, boots.number(at.boot()));
                p.setLong(3, at.monoMs());
                p.setLong(4, at.wallMs());
                p.setInt(5, trusted);
                p.setString(6, f.cone());
                p.setString(7, f.source());
                p.setString(8, change);
                p.setLong(9, Sum.of(f.seq(), at.boot(), at.monoMs(), at.wallMs(), trusted, f.cone(),
                        f.source(), change));
                p.executeUpdate();
            }
        }
    }

    /** There is only ever one: a restart needs the last, and old ones would wear the card for nothing. */
    void replaceCheckpoint(String text) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("INSERT INTO checkpoint VALUES (1, ?, ?)"
                + " ON CONFLICT DO UPDATE SET text = excluded.text, sum = excluded.sum")) {
            p.setString(1, text);
            p.setLong(2, Sum.of(text));
            p.executeUpdate();
        }
    }
}
