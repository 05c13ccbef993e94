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
     * So many are thinned together, so that a page is rewritten for many minutes and not for each (guess:
     * four hours of them, some tens of milliseconds of work).
     */
    static final int AT_ONCE = 240;
    private static final String TEN_MIN = "mono_ms / 600000 * 600000";

    private static final String MINUTES_KEPT = "SELECT boot, mono_ms FROM temperature UNION"
            + " SELECT boot, mono_ms FROM output";

    private final Connection db;
    private final int keep;
    private final int atOnce;
    private long minutes;

    Thinning(Connection db) throws SQLException {
        this(db, MINUTES, AT_ONCE);
    }

    /** @param keep so many minutes stay as they are  @param atOnce so many are thinned together */
    Thinning(Connection db, int keep, int atOnce) throws SQLException {
        this.db = db;
        this.keep = keep;
        this.atOnce = atOnce;
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery("SELECT count(*) FROM (" + MINUTES_KEPT + ")")) {
            this.minutes = r.next() ? r.getLong(1) : 0;
        }
    }

    /** Another minute was kept; within the caller's transaction. */
    void minute() throws SQLException {
        minutes++;
        if (minutes >= keep + atOnce) {
            thin();
        }
    }

    private void thin() throws SQLException {
        long boot;
        long monoMs;
        try (PreparedStatement p = db.prepareStatement(MINUTES_KEPT + " ORDER BY 1, 2 LIMIT 1 OFFSET ?")) {
            p.setLong(1, atOnce - 1);
            try (ResultSet r = p.executeQuery()) {
                if (!r.next()) {
                    return;
                }
                boot = r.getLong(1);
                monoMs = r.getLong(2);
            }
        }
        run("INSERT INTO mean SELECT boot, " + TEN_MIN + ", series, min(wall_ms), min(wall_trusted),"
                + " avg(degrees_c), count(*) FROM temperature"
                + " WHERE (boot, mono_ms) <= (?, ?) GROUP BY 1, 2, 3 ON CONFLICT DO UPDATE SET "
                + mean("degrees_c", "") + ", wall_ms = min(wall_ms, excluded.wall_ms),"
                + " wall_trusted = min(wall_trusted, excluded.wall_trusted),"
                + " minutes = minutes + excluded.minutes", boot, monoMs);
        run("DELETE FROM temperature WHERE (boot, mono_ms) <= (?, ?)", boot, monoMs);
        run("INSERT INTO output_mean (minutes, boot, mono_ms, cone, heat, cut_out, air, lamp, set_hundredths)"
                + " SELECT count(*), boot, " + TEN_MIN + ", cone, " + whole("heat") + ", " + whole("cut_out")
                + ", " + whole("air") + ", " + whole("lamp") + ", " + whole("set_hundredths")
                + " FROM output WHERE (boot, mono_ms) <= (?, ?) GROUP BY 2, 3, 4 ON CONFLICT DO UPDATE SET "
                + mean("heat", "round") + ", " + mean("cut_out", "round") + ", " + mean("air", "round")
                + ", " + mean("lamp", "round") + ", set_hundredths = coalesce(excluded.set_hundredths,"
                + " set_hundredths), minutes = minutes + excluded.minutes", boot, monoMs);
        run("DELETE FROM output WHERE (boot, mono_ms) <= (?, ?)", boot, monoMs);
        minutes -= atOnce;
    }

    /** The mean of a column in whole numbers; of a set-point, while one was followed. */
    private static String whole(String column) {
        return "round(avg(" + column + "))";
    }

    /** A mean that lies there already, joined by the new one. */
    private static String mean(String column, String by) {
        return column + " = " + by + "((" + column + " * minutes + excluded." + column
                + " * excluded.minutes) * 1.0 / (minutes + excluded.minutes))";
    }

    private void run(String sql, long boot, long monoMs) throws SQLException {
        try (PreparedStatement p = db.prepareStatement(sql)) {
            p.setLong(1, boot);
            p.setLong(2, monoMs);
            p.executeUpdate();
        }
    }
}
