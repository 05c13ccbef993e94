package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Minutes become ten-minute means once thirty days of newer ones are there. Age is counted in minutes that
 * were kept and not by a clock, which may be years wrong: a daemon that always runs keeps thirty days of
 * minutes, one that rests keeps more. A mean lies in its own boot and is never taken across two.
 */
final class Thinning {

    /** Thirty days of minutes (issue: 10-minute means after 30 days). */
    static final int MINUTES = 30 * 24 * 60;
    /**
     * So many are thinned together, so that a page is rewritten for many minutes and not for each (guess).
     */
    static final int AT_ONCE = 60;
    private static final long TEN_MIN_MS = 600_000;

    private final Connection db;
    private final int keep;
    private long minutes;

    Thinning(Connection db) throws SQLException {
        this(db, MINUTES);
    }

    /** @param keep so many minutes stay as they are */
    Thinning(Connection db, int keep) throws SQLException {
        this.db = db;
        this.keep = keep;
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery(
                "SELECT count(*) FROM (SELECT DISTINCT boot, mono_ms FROM temperature)")) {
            this.minutes = r.next() ? r.getLong(1) : 0;
        }
    }

    /** Another minute was kept; within the caller's transaction. */
    void minute() throws SQLException {
        minutes++;
        if (minutes >= keep + AT_ONCE) {
            thin();
        }
    }

    private void thin() throws SQLException {
        long boot;
        long monoMs;
        try (PreparedStatement p = db.prepareStatement("SELECT DISTINCT boot, mono_ms FROM temperature"
                + " ORDER BY boot, mono_ms LIMIT 1 OFFSET ?")) {
            p.setLong(1, AT_ONCE - 1);
            try (ResultSet r = p.executeQuery()) {
                if (!r.next()) {
                    return;
                }
                boot = r.getLong(1);
                monoMs = r.getLong(2);
            }
        }
        run("INSERT INTO mean SELECT boot, mono_ms / " + TEN_MIN_MS + " * " + TEN_MIN_MS + ", series,"
                + " min(wall_ms), min(wall_trusted), avg(degrees_c), count(*) FROM temperature"
                + " WHERE (boot, mono_ms) <= (?, ?) GROUP BY 1, 2, 3 ON CONFLICT DO UPDATE SET"
                + " degrees_c = (degrees_c * minutes + excluded.degrees_c * excluded.minutes)"
                + " / (minutes + excluded.minutes), minutes = minutes + excluded.minutes,"
                + " wall_ms = min(wall_ms, excluded.wall_ms),"
                + " wall_trusted = min(wall_trusted, excluded.wall_trusted)", boot, monoMs);
        run("DELETE FROM temperature WHERE (boot, mono_ms) <= (?, ?)", boot, monoMs);
        minutes -= AT_ONCE;
    }

    private void run(String sql, long boot, long monoMs) throws SQLException {
        try (PreparedStatement p = db.prepareStatement(sql)) {
            p.setLong(1, boot);
            p.setLong(2, monoMs);
            p.executeUpdate();
        }
    }
}
