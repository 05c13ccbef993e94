package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * The tables, and how an older record becomes one of today. Each step of {@link #STEPS} lifts the
 * record by one version; steps are only ever added at the end, never changed. A step and its version
 * number are one transaction, so a power cut leaves the old version or the new one.
 */
final class Schema {

    /** Marks the file as ours, so that another program's database is not written into: "cone". */
    static final int APPLICATION_ID = 0x636f6e65;

    /**
     * Facts are few and read in order of {@code seq}. Temperatures are many and written together each
     * minute: clustered by time they touch one page a minute, by series they would touch one page per
     * cone (15 against 61 MB a day with eight cones, dependencies.md §11). The time key is boot and
     * monotonic clock, because the wall clock may step back and repeat itself.
     */
    private static final List<String> FIRST = List.of(
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
            "PRAGMA application_id = " + APPLICATION_ID);

    static final List<List<String>> STEPS = List.of(FIRST);

    private Schema() {}

    /**
     * Brings the record to the version that these steps make.
     *
     * @throws Refused if the record is newer than this program, or not a record of conetender
     */
    static void bring(Connection db, List<List<String>> steps) throws SQLException, Refused {
        int found = number(db, "PRAGMA user_version");
        int mark = number(db, "PRAGMA application_id");
        boolean empty = number(db, "SELECT count(*) FROM sqlite_schema") == 0;
        if (mark != APPLICATION_ID && !(empty && found == 0)) {
            throw new Refused("is a database of another program: name another file for the record, or move"
                    + " this one away");
        }
        if (found > steps.size()) {
            throw new Refused("was written by a newer conetender (record version " + found
                    + ", this one knows up to " + steps.size() + "): install that newer version again,"
                    + " or put back the copy made before it was installed");
        }
        for (int version = found; version < steps.size(); version++) {
            lift(db, steps.get(version), version + 1);
        }
    }

    private static void lift(Connection db, List<String> step, int to) throws SQLException {
        try (Statement s = db.createStatement()) {
            s.execute("BEGIN IMMEDIATE");
            for (String sql : step) {
                s.execute(sql);
            }
            s.execute("PRAGMA user_version = " + to);
            s.execute("COMMIT");
        }
    }

    static int number(Connection db, String sql) throws SQLException {
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery(sql)) {
            return r.next() ? r.getInt(1) : 0;
        }
    }

    /** The file is readable but not ours to use; the message goes on from the file's name. */
    static final class Refused extends Exception {
        private static final long serialVersionUID = 1;

        Refused(String message) {
            super(message);
        }
    }
}
