package org.conetender.adapter.sqlite;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.conetender.core.batch.Minute;
import org.conetender.core.batch.Minute.AlarmTurn;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store.StoreException;

/** Reads what was kept of all minutes, as {@link RecordReader} reads the book. Nothing where none was. */
public final class HistoryReader {

    private static final long HALF_MINUTE_MS = 30_000;
    private static final double PERCENT = 100;
    private static final double HUNDREDTHS = 100;

    /** From which version on a file has means, and outputs and alarms. */
    private static final int MEANS = 2;
    private static final int OUTPUTS = 3;

    /** Rows from a moment on, or all of them where its boot is not known. */
    private static final String SINCE = " t JOIN boot b ON b.number = t.boot WHERE (t.boot, t.mono_ms) >="
            + " (coalesce((SELECT number FROM boot WHERE id = ?1), 0),"
            + " CASE WHEN EXISTS (SELECT 1 FROM boot WHERE id = ?1) THEN ?2 ELSE 0 END)"
            + " ORDER BY t.boot, t.mono_ms, ";

    /** A mean over this many minutes or one reading. @param at middle of them  @param degreesC °C */
    public record Reading(Moment at, double degreesC) {}

    /**
     * What was switched in some minutes that follow each other.
     *
     * @param from their begin, of which the hour is not told  @param minutes how many
     */
    public record Switched(Moment from, int minutes, Minute.Outputs outputs) {}

    /** Takes readings in the order of time. */
    public interface Taker {
        void take(String series, Reading reading);
    }

    /** Takes what was switched in the order of time. */
    public interface SwitchedTaker {
        void take(Switched switched);
    }

    private interface Reads {
        void run(Connection db, int version) throws SQLException;
    }

    private final Path file;

    HistoryReader(Path file) {
        this.file = file;
    }

    /**
     * Hands over every temperature from that moment on, of all series.
     *
     * @param from in a boot that the history knows, or all of it is handed over
     */
    public void temperatures(Moment from, Taker taker) throws StoreException {
        read("temperatures", (db, version) -> {
            // Minutes follow on the means, which are of all that is older.
            if (version >= MEANS) {
                hand(db, "mean", from, taker);
            }
            if (version > 0) {
                hand(db, "temperature", from, taker);
            }
        });
    }

    /** Hands over what was switched from that moment on, in all cones. @param from as for temperatures */
    public void outputs(Moment from, SwitchedTaker taker) throws StoreException {
        read("outputs", (db, version) -> {
            if (version >= OUTPUTS) {
                switched(db, "output_mean", from, taker);
                switched(db, "output", from, taker);
            }
        });
    }

    /** What became of alarms, in the order in which it was written. */
    public List<AlarmTurn> alarms() throws StoreException {
        List<AlarmTurn> all = new ArrayList<>();
        read("alarms", (db, version) -> {
            if (version >= OUTPUTS) {
                turns(db, all);
            }
        });
        return all;
    }

    /** All of one moment of the file. */
    private void read(String what, Reads reads) throws StoreException {
        if (!Files.exists(file)) {
            return;
        }
        try (Connection db = RecordReader.connect(file); Statement s = db.createStatement()) {
            s.execute("BEGIN");
            reads.run(db, RecordReader.checked(db, Schema.HISTORY));
        } catch (SQLException e) {
            throw RecordReader.trouble("read the " + what + " of", file, e);
        } catch (Schema.Refused e) {
            throw new StoreException("the history " + file + " " + e.getMessage(), e);
        }
    }

    private static void hand(Connection db, String table, Moment from, Taker taker) throws SQLException {
        try (PreparedStatement p = db.prepareStatement("SELECT b.id, t.mono_ms, t.wall_ms, t.wall_trusted,"
                + " t.series, t.degrees_c, " + (table.equals("mean") ? "t.minutes" : "1") + " FROM " + table
                + SINCE + "t.series")) {
            p.setString(1, from.boot());
            p.setLong(2, from.monoMs());
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    taker.take(r.getString(5), new Reading(
                            moment(r).plusMs((r.getLong(7) - 1) * HALF_MINUTE_MS), r.getDouble(6)));
                }
            }
        }
    }

    private static Moment moment(ResultSet r) throws SQLException {
        return new Moment(r.getString(1), r.getLong(2), r.getLong(3), r.getInt(4) == 1);
    }

    private static void switched(Connection db, String table, Moment from, SwitchedTaker taker)
            throws SQLException {
        try (PreparedStatement p = db.prepareStatement("SELECT b.id, t.mono_ms, t.cone, t.heat, t.cut_out,"
                + " t.air, t.lamp, t.set_hundredths, " + (table.equals("output") ? "1" : "t.minutes")
                + " FROM " + table + SINCE + "t.cone")) {
            p.setString(1, from.boot());
            p.setLong(2, from.monoMs());
            try (ResultSet r = p.executeQuery()) {
                while (r.next()) {
                    long hundredths = r.getLong(8);
                    OptionalDouble setC = r.wasNull() ? OptionalDouble.empty()
                            : OptionalDouble.of(hundredths / HUNDREDTHS);
                    // A row is of the minute that ended there.
                    taker.take(new Switched(new Moment(r.getString(1), r.getLong(2) - 2 * HALF_MINUTE_MS, 0,
                            false), r.getInt(9), new Minute.Outputs(r.getString(3), share(r, 4), share(r, 5),
                            share(r, 6), share(r, 7), setC)));
                }
            }
        }
    }

    private static double share(ResultSet r, int column) throws SQLException {
        return r.getInt(column) / PERCENT;
    }

    private static void turns(Connection db, List<AlarmTurn> into) throws SQLException {
        try (Statement s = db.createStatement(); ResultSet r = s.executeQuery("SELECT b.id, a.mono_ms,"
                + " a.wall_ms, a.wall_trusted, a.cone, a.alarm, a.turn, a.what FROM alarm a"
                + " JOIN boot b ON b.number = a.boot ORDER BY a.number")) {
            while (r.next()) {
                into.add(new AlarmTurn(moment(r), r.getString(5), r.getString(6),
                        AlarmRows.turn(r.getString(7)), r.getString(8)));
            }
        }
    }
}
