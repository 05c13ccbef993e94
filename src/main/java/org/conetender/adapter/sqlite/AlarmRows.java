package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Locale;
import org.conetender.core.batch.Minute.AlarmTurn;
import org.conetender.core.batch.Minute.Turn;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * What became of alarms, as rows that are kept for ever. A storm of them may not fill or wear the card: a day
 * of a boot has so many rows at most, and the last says that more turned than is kept.
 */
final class AlarmRows {

    /**
     * Rows of a day (guess): eight cones that each raise eight alarms, see them acknowledged and ended. A
     * commit for each, which rewrites some pages, is a few megabytes of a day's writing.
     */
    static final int MOST_A_DAY = 200;

    private static final long DAY_MS = 24 * Units.HOUR_MS;

    private final Connection db;
    private final Boots boots;
    private boolean full;

    AlarmRows(Connection db, Boots boots) {
        this.db = db;
        this.boots = boots;
    }

    boolean full() {
        return full;
    }

    void insert(AlarmTurn t) throws SQLException {
        int room = MOST_A_DAY - lately(t.at());
        full = room <= 1;
        if (room > 1) {
            row(t);
        } else if (room == 1 && !lastIsUnkept()) {
            row(new AlarmTurn(t.at(), "", "", Turn.UNKEPT, ""));
        }
    }

    /** Rows of the day before that moment, in its own boot. */
    private int lately(Moment at) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("SELECT count(*) FROM (SELECT boot, mono_ms FROM alarm"
                + " ORDER BY number DESC LIMIT " + MOST_A_DAY + ") WHERE boot = ? AND mono_ms > ?")) {
            p.setLong(1, boots.number(at.boot()));
            p.setLong(2, at.monoMs() - DAY_MS);
            try (ResultSet r = p.executeQuery()) {
                return r.next() ? r.getInt(1) : 0;
            }
        }
    }

    private boolean lastIsUnkept() throws SQLException {
        try (PreparedStatement p = db.prepareStatement("SELECT turn FROM alarm ORDER BY number DESC LIMIT 1");
                ResultSet r = p.executeQuery()) {
            return r.next() && r.getString(1).equals(word(Turn.UNKEPT));
        }
    }

    private void row(AlarmTurn t) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("INSERT INTO alarm (boot, mono_ms, wall_ms,"
                + " wall_trusted, cone, alarm, turn, what) VALUES (?, ?, ?, ?, ?, ?, ?, ?)")) {
            p.setLong(1, boots.number(t.at().boot()));
            p.setLong(2, t.at().monoMs());
            p.setLong(3, t.at().wallMs());
            p.setInt(4, t.at().wallTrusted() ? 1 : 0);
            p.setString(5, t.cone());
            p.setString(6, t.alarm());
            p.setString(7, word(t.turn()));
            p.setString(8, t.what());
            p.executeUpdate();
        }
    }

    private static String word(Turn t) {
        return t.name().toLowerCase(Locale.ROOT);
    }

    /** @throws IllegalArgumentException if no release wrote that */
    static Turn turn(String word) {
        return Turn.valueOf(word.toUpperCase(Locale.ROOT));
    }
}
