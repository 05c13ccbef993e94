package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.CheckpointText;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.FactText;

/** Makes records as the versions before made them, by their own statements. */
final class Together {

    private static final List<String> TABLES = List.of(
            """
            CREATE TABLE boot (
              number INTEGER PRIMARY KEY,
              id     TEXT NOT NULL UNIQUE
            ) STRICT""",
            """
            CREATE TABLE fact (
              seq          INTEGER PRIMARY KEY CHECK (seq > 0),
              boot         INTEGER NOT NULL REFERENCES boot,
              mono_ms      INTEGER NOT NULL,
              wall_ms      INTEGER NOT NULL,
              wall_trusted INTEGER NOT NULL CHECK (wall_trusted IN (0, 1)),
              cone         TEXT NOT NULL,
              source       TEXT NOT NULL,
              change       TEXT NOT NULL
            ) STRICT""",
            """
            CREATE TABLE temperature (
              boot         INTEGER NOT NULL REFERENCES boot,
              mono_ms      INTEGER NOT NULL,
              series       TEXT NOT NULL,
              wall_ms      INTEGER NOT NULL,
              wall_trusted INTEGER NOT NULL CHECK (wall_trusted IN (0, 1)),
              degrees_c    REAL NOT NULL,
              PRIMARY KEY (boot, mono_ms, series)
            ) STRICT, WITHOUT ROWID""",
            """
            CREATE TABLE checkpoint (
              only INTEGER PRIMARY KEY CHECK (only = 1),
              text TEXT NOT NULL
            ) STRICT""",
            "PRAGMA application_id = 1668247141", "PRAGMA user_version = 1",
            "INSERT INTO boot (id) VALUES ('boot-1')");

    /** A history of version 2, with a mean of ten minutes and a minute. */
    static final List<String> HISTORY_2 = List.of(TABLES.get(0), TABLES.get(2),
            """
            CREATE TABLE mean (
              boot         INTEGER NOT NULL REFERENCES boot,
              mono_ms      INTEGER NOT NULL,
              series       TEXT NOT NULL,
              wall_ms      INTEGER NOT NULL,
              wall_trusted INTEGER NOT NULL CHECK (wall_trusted IN (0, 1)),
              degrees_c    REAL NOT NULL,
              minutes      INTEGER NOT NULL CHECK (minutes > 0),
              PRIMARY KEY (boot, mono_ms, series)
            ) STRICT, WITHOUT ROWID""",
            "PRAGMA application_id = 1668247141", "PRAGMA user_version = 2",
            "INSERT INTO boot (id) VALUES ('boot-1')", "INSERT INTO mean VALUES (1, 0, 'a', 5, 1, 24, 10)",
            "INSERT INTO temperature VALUES (1, 660000, 'a', 660005, 1, 25.5)");

    private Together() {}

    static void make(Connection db) throws SQLException {
        try (Statement s = db.createStatement()) {
            for (String sql : TABLES) {
                s.execute(sql);
            }
        }
    }

    /** All of boot-1. */
    static void insert(Connection db, List<Fact> facts, Checkpoint minute) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("INSERT INTO fact VALUES (?, 1, ?, ?, ?, ?, ?, ?)");
                PreparedStatement t = db.prepareStatement(
                        "INSERT INTO temperature VALUES (1, ?, ?, ?, ?, ?)");
                PreparedStatement c = db.prepareStatement("INSERT INTO checkpoint VALUES (1, ?)")) {
            for (Fact f : facts) {
                p.setLong(1, f.seq());
                p.setLong(2, f.at().monoMs());
                p.setLong(3, f.at().wallMs());
                p.setInt(4, f.at().wallTrusted() ? 1 : 0);
                p.setString(5, f.cone());
                p.setString(6, f.source());
                p.setString(7, FactText.write(f.change()));
                p.executeUpdate();
            }
            for (Checkpoint.Temperature each : minute.temperatures()) {
                t.setLong(1, minute.at().monoMs());
                t.setString(2, each.series());
                t.setLong(3, minute.at().wallMs());
                t.setInt(4, minute.at().wallTrusted() ? 1 : 0);
                t.setDouble(5, each.degreesC());
                t.executeUpdate();
            }
            c.setString(1, CheckpointText.write(minute));
            c.executeUpdate();
        }
    }
}
