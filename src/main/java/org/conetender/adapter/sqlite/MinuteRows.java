package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Minute;
import org.conetender.core.unit.Moment;

/** Minutes as rows of the history. Transactions are the caller's. */
final class MinuteRows {

    private static final int PERCENT = 100;
    private static final int HUNDREDTHS = 100;

    private final Connection db;
    private final Boots boots;
    private final AlarmRows alarms;

    MinuteRows(Connection db) {
        this.db = db;
        this.boots = new Boots(db);
        this.alarms = new AlarmRows(db, boots);
    }

    /** A minute that is there already is replaced: what is told later knows better. */
    void insert(Minute m) throws SQLException {
        temperatures(m.checkpoint());
        outputs(m);
        for (Minute.AlarmTurn t : m.turns()) {
            alarms.insert(t);
        }
    }

    /** Whether so many alarms turned lately that the next ones may not be kept. */
    boolean storm() {
        return alarms.full();
    }

    private void temperatures(Checkpoint c) throws SQLException {
        Moment at = c.at();
        try (PreparedStatement p = db.prepareStatement("""
                INSERT INTO temperature (boot, mono_ms, series, wall_ms, wall_trusted, degrees_c)
                VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET degrees_c = excluded.degrees_c""")) {
            for (Checkpoint.Temperature t : c.temperatures()) {
                p.setLong(1, boots.number(at.boot()));
                p.setLong(2, at.monoMs());
                p.setString(3, t.series());
                p.setLong(4, at.wallMs());
                p.setInt(5, at.wallTrusted() ? 1 : 0);
                p.setDouble(6, t.degreesC());
                p.executeUpdate();
            }
        }
    }

    private void outputs(Minute m) throws SQLException {
        Moment at = m.checkpoint().at();
        try (PreparedStatement p = db.prepareStatement("INSERT OR REPLACE INTO output (boot, mono_ms, cone,"
                + " heat, cut_out, air, lamp, set_hundredths) VALUES (?, ?, ?, ?, ?, ?, ?, ?)")) {
            for (Minute.Outputs o : m.outputs()) {
                p.setLong(1, boots.number(at.boot()));
                p.setLong(2, at.monoMs());
                p.setString(3, o.cone());
                p.setLong(4, Math.round(PERCENT * o.heat()));
                p.setLong(5, Math.round(PERCENT * o.cutOut()));
                p.setLong(6, Math.round(PERCENT * o.air()));
                p.setLong(7, Math.round(PERCENT * o.lamp()));
                if (o.setC().isPresent()) {
                    p.setLong(8, Math.round(HUNDREDTHS * o.setC().getAsDouble()));
                } else {
                    p.setNull(8, Types.INTEGER);
                }
                p.executeUpdate();
            }
        }
    }
}
