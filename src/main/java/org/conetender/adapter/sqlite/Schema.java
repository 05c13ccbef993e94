package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * The tables of one file, and how an older file becomes one of today. Each step of {@code later} lifts the
 * file by one version; steps are only ever added at the end, never changed. A step and its version number are
 * one transaction, so a power cut leaves the old version or the new one.
 *
 * @param base version of {@code first}
 * @param first what an empty file begins with
 * @param later what was added since, a step each
 */
record Schema(int base, List<String> first, List<List<String>> later) {

    /** Marks the file as ours, so that another program's database is not written into: "cone". */
    static final int APPLICATION_ID = 0x636f6e65;

    /** The version in which facts, checkpoint and temperatures lay in one file. */
    static final int TOGETHER = 1;

    private static final String MARK = "PRAGMA application_id = " + APPLICATION_ID;

    private static final String BOOT = """
            CREATE TABLE boot (
              number INTEGER PRIMARY KEY,
              id     TEXT NOT NULL UNIQUE
            ) STRICT""";

    /** What the book lacks, in words. */
    static final String DAMAGE = """
            CREATE TABLE IF NOT EXISTS damage (
              number INTEGER PRIMARY KEY,
              what   TEXT NOT NULL
            ) STRICT""";

    /**
     * Facts are few and read in order of {@code seq}. {@code sum} is over all that a row says, so that a row
     * which was damaged and still reads well is known for damaged ({@link Sum}).
     */
    static final Schema BOOK = new Schema(2, List.of(BOOT,
            """
            CREATE TABLE fact (
              seq          INTEGER PRIMARY KEY CHECK (seq > 0),
              boot         INTEGER NOT NULL REFERENCES boot,
              mono_ms      INTEGER NOT NULL,
              wall_ms      INTEGER NOT NULL,
              wall_trusted INTEGER NOT NULL CHECK (wall_trusted IN (0, 1)),
              cone         TEXT NOT NULL,
              source       TEXT NOT NULL,
              change       TEXT NOT NULL,
              sum          INTEGER NOT NULL
            ) STRICT""",
            """
            CREATE TABLE checkpoint (
              only INTEGER PRIMARY KEY CHECK (only = 1),
              text TEXT NOT NULL,
              sum  INTEGER NOT NULL
            ) STRICT""",
            Schema.DAMAGE, MARK), List.of());

    /** Ten-minute means, which replace the minutes of {@code temperature} once those are old. */
    private static final String MEAN = """
            CREATE TABLE mean (
              boot         INTEGER NOT NULL REFERENCES boot,
              mono_ms      INTEGER NOT NULL,
              series       TEXT NOT NULL,
              wall_ms      INTEGER NOT NULL,
              wall_trusted INTEGER NOT NULL CHECK (wall_trusted IN (0, 1)),
              degrees_c    REAL NOT NULL,
              minutes      INTEGER NOT NULL CHECK (minutes > 0),
              PRIMARY KEY (boot, mono_ms, series)
            ) STRICT, WITHOUT ROWID""";

    /**
     * What became of alarms, for ever: the store bounds how many rows of it a day may bring
     * ({@link AlarmRows}). {@code turn} is the word of a {@code Minute.Turn}.
     */
    private static final String ALARM = """
            CREATE TABLE alarm (
              number       INTEGER PRIMARY KEY,
              boot         INTEGER NOT NULL REFERENCES boot,
              mono_ms      INTEGER NOT NULL,
              wall_ms      INTEGER NOT NULL,
              wall_trusted INTEGER NOT NULL CHECK (wall_trusted IN (0, 1)),
              cone         TEXT NOT NULL,
              alarm        TEXT NOT NULL,
              turn         TEXT NOT NULL,
              what         TEXT NOT NULL
            ) STRICT""";

    /**
     * What was switched in the minute that ends there, as a share in per cent, and the set-point that was
     * followed, in hundredths of a degree: whole numbers that take a byte or two. The hour is not repeated:
     * the book knows the clock of each boot.
     */
    private static String outputs(String name, String more) {
        return "CREATE TABLE " + name + " (" + more + """
              boot    INTEGER NOT NULL REFERENCES boot,
              mono_ms INTEGER NOT NULL,
              cone    TEXT NOT NULL,
              heat    INTEGER NOT NULL CHECK (heat BETWEEN 0 AND 100),
              cut_out INTEGER NOT NULL CHECK (cut_out BETWEEN 0 AND 100),
              air     INTEGER NOT NULL CHECK (air BETWEEN 0 AND 100),
              lamp    INTEGER NOT NULL CHECK (lamp BETWEEN 0 AND 100),
              set_hundredths INTEGER,
              PRIMARY KEY (boot, mono_ms, cone)
            ) STRICT, WITHOUT ROWID""";
    }

    /**
     * Temperatures are many and written together each minute: clustered by time they touch one page a minute,
     * by series they would touch one page per cone (15 against 61 MB a day with eight cones, dependencies.md
     * §11). The time key is boot and monotonic clock, because the wall clock may step back and repeat itself.
     * A file that lay together with the book until then loses what has moved into the book.
     */
    static final Schema HISTORY = new Schema(TOGETHER, List.of(BOOT,
            """
            CREATE TABLE temperature (
              boot         INTEGER NOT NULL REFERENCES boot,
              mono_ms      INTEGER NOT NULL,
              series       TEXT NOT NULL,
              wall_ms      INTEGER NOT NULL,
              wall_trusted INTEGER NOT NULL CHECK (wall_trusted IN (0, 1)),
              degrees_c    REAL NOT NULL,
              PRIMARY KEY (boot, mono_ms, series)
            ) STRICT, WITHOUT ROWID""", MARK),
            List.of(List.of("DROP TABLE IF EXISTS fact", "DROP TABLE IF EXISTS checkpoint", MEAN),
                    List.of(outputs("output", ""), outputs("output_mean",
                            "minutes INTEGER NOT NULL CHECK (minutes > 0),"), ALARM)));

    /**
     * Brings the file to the version of today.
     *
     * @throws Refused if the file is newer than this program, or not one of conetender
     */
    void bring(Connection db) throws SQLException, Refused {
        int found = admit(db);
        if (found < base) {
            lift(db, first, base);
        }
        for (int v = Math.max(found, base); v < version(); v++) {
            lift(db, later.get(v - base), v + 1);
        }
    }

    /**
     * The version of a file of ours that is not newer than this program; nothing is changed.
     *
     * @throws Refused as {@link #bring}
     */
    int admit(Connection db) throws SQLException, Refused {
        int found = number(db, "PRAGMA user_version");
        int mark = number(db, "PRAGMA application_id");
        boolean empty = number(db, "SELECT count(*) FROM sqlite_schema") == 0;
        if (mark != APPLICATION_ID && !(empty && found == 0)) {
            throw new Refused("is a database of another program: name another file for the record, or move"
                    + " this one away");
        }
        if (found > version()) {
            throw new Refused("was written by a newer conetender (record version " + found
                    + ", this one knows up to " + version() + "): install that newer version again,"
                    + " or put back the copy made before it was installed");
        }
        return found;
    }

    /** The version that this program writes. */
    int version() {
        return base + later.size();
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
