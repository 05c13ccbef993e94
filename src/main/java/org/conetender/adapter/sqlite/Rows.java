package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.CheckpointText;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.FactText;
import org.conetender.core.unit.Moment;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The book's facts, checkpoint and damages as rows. Transactions are the caller's. */
final class Rows {

    private static final Logger LOG = LoggerFactory.getLogger(Rows.class);

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
        ids(ids);
        rows(r -> into.add(fact(r, ids.get(r.boot()))));
    }

    /**
     * As {@link #facts}, of a damaged book: where the row of a boot is gone, or not as it was written, the
     * sums of all its facts are wrong, and each of them may be right. They are read, of a boot that nobody
     * knows and without a wall clock; a boot of one fact may as well be right, and its fact damaged.
     *
     * @return of how many facts nobody knows any more when they were
     */
    int allFacts(List<Fact> into) throws SQLException, Damaged {
        Map<Long, String> ids = new HashMap<>();
        try {
            ids(ids);
        } catch (SQLException e) {
            LOG.debug("there are boots that cannot be read", e);
        }
        Map<Long, List<Long>> wrong = new HashMap<>();
        Set<Long> right = new HashSet<>();
        try {
            rows(r -> {
                if (r.sound(ids.get(r.boot()))) {
                    right.add(r.boot());
                } else {
                    wrong.computeIfAbsent(r.boot(), _ -> new ArrayList<>()).add(r.seq());
                }
            });
        } catch (SQLException e) {
            LOG.debug("there are facts beyond that cannot be read", e);
        }
        wrong.keySet().removeIf(b -> right.contains(b) || ids.containsKey(b) && wrong.get(b).size() < 2);
        int[] untimed = {0};
        rows(r -> {
            if (wrong.containsKey(r.boot())) {
                into.add(untimed(r, wrong.get(r.boot()).getFirst()));
                untimed[0]++;
            } else {
                into.add(fact(r, ids.get(r.boot())));
            }
        });
        return untimed[0];
    }

    private void ids(Map<Long, String> ids) throws SQLException {
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery("SELECT number, id FROM boot")) {
            while (r.next()) {
                ids.put(r.getLong(1), r.getString(2));
            }
        }
    }

    /** A fact as it lies in its table. @param boot number of its boot  @param at but for that boot's id */
    private record Row(long seq, long boot, Moment at, String cone, String source, String change,
                       OptionalLong sum) {

        boolean sound(String id) {
            return id != null && (sum.isEmpty() || sum.getAsLong() == Sum.of(seq, id, at.monoMs(),
                    at.wallMs(), at.wallTrusted() ? 1 : 0, cone, source, change));
        }
    }

    private interface Taker {
        void take(Row row) throws Damaged;
    }

    private void rows(Taker taker) throws SQLException, Damaged {
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery(
                "SELECT seq, boot, mono_ms, wall_ms, wall_trusted, cone, source, change, "
                + (summed ? "sum" : "0") + " FROM fact ORDER BY seq")) {
            while (r.next()) {
                taker.take(new Row(r.getLong(1), r.getLong(2),
                        new Moment("", r.getLong(3), r.getLong(4), r.getInt(5) == 1), r.getString(6),
                        r.getString(7), r.getString(8),
                        summed ? OptionalLong.of(r.getLong(9)) : OptionalLong.empty()));
            }
        } finally {
            read.clear();
        }
    }

    private Fact fact(Row r, String boot) throws Damaged {
        if (!r.sound(boot)) {
            throw new Damaged("fact " + r.seq() + " is not as it was written", null);
        }
        try {
            return fact(r, new Moment(boot, r.at().monoMs(), r.at().wallMs(), r.at().wallTrusted()));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("fact " + r.seq() + ": " + e.getMessage(), e);
        }
    }

    /** @param first number of the first fact of its boot, by which no other boot is called */
    private Fact untimed(Row r, long first) throws Damaged {
        if (r.cone() == null || r.source() == null || r.change() == null) {
            throw new Damaged("fact " + r.seq() + " is not as it was written", null);
        }
        try {
            return fact(r, new Moment("lost-at-" + first, r.at().monoMs(), r.at().wallMs(), false));
        } catch (IllegalArgumentException e) {
            throw new Damaged("fact " + r.seq() + " is not as it was written", e);
        }
    }

    private Fact fact(Row r, Moment at) {
        return new Fact(r.seq(), at, r.cone(), r.source(), read.computeIfAbsent(r.change(), FactText::read));
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
