package org.conetender.core;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Minute;
import org.conetender.core.batch.Minute.AlarmTurn;
import org.conetender.core.batch.Minute.Turn;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * What the running minute will leave for reports: how long each output was commanded, and what became of
 * alarms. It is written with the minute's checkpoint; nothing reads it to decide.
 *
 * @param on by cone  @param turns in their order
 */
public record Diary(Map<String, On> on, List<AlarmTurn> turns) {

    static final Diary EMPTY = new Diary(Map.of(), List.of());

    /** An output that no tick renews falls back to its safe level after this, ms (house figure: leases). */
    private static final long HELD_MS = 4 * Units.SECOND_MS;

    /** So long each was on, ms. @param ofMs of that time */
    public record On(long heatMs, long cutOutMs, long airMs, long lampMs, long ofMs) {

        static final On NOTHING = new On(0, 0, 0, 0, 0);

        /** @param out what was commanded at the tick before  @param dtMs since then */
        On after(ConeLive.ConeOut out, boolean heated, long dtMs) {
            long held = Math.min(dtMs, HELD_MS);
            return new On(heatMs + (heated ? held : 0), cutOutMs + (out.cutOut() ? held : 0),
                    airMs + (out.airPause() ? dtMs - held : dtMs), lampMs + (out.lamp() ? held : 0),
                    ofMs + dtMs);
        }

        private double share(long ms) {
            return ms / (double) ofMs;
        }
    }

    /** A tick later. @param now the alarms after it */
    Diary after(Work work, Alarms now) {
        Map<String, On> next = new HashMap<>();
        for (Cone c : work.settings.cones()) {
            ConeLive was = work.live(c.id());
            next.put(c.id(), on.getOrDefault(c.id(), On.NOTHING).after(was.out(), was.switches(c).conduct(),
                    work.dtMs));
        }
        // What stood when this life began has been raised in it.
        Alarms was = work.before.live().timers().last().isPresent() ? work.before.live().alarms()
                : Alarms.NONE;
        return new Diary(next, turned(was, now, work.image.now()));
    }

    private List<AlarmTurn> turned(Alarms was, Alarms now, Moment at) {
        List<AlarmTurn> all = new ArrayList<>(turns);
        for (Alarm a : was.raised()) {
            if (!stands(now, a.key())) {
                all.add(turn(at, a, Turn.OVER));
            }
        }
        for (Alarm a : now.raised()) {
            boolean stood = stands(was, a.key());
            if (!stood) {
                all.add(new AlarmTurn(at, a.cone(), a.kind().id(), Turn.RAISED, a.what()));
            }
            if (a.acknowledged() && !(stood && was.standing().get(a.key()).acknowledged())) {
                all.add(turn(at, a, Turn.SEEN));
            }
        }
        return all.size() == turns.size() ? turns : List.copyOf(all);
    }

    private static AlarmTurn turn(Moment at, Alarm a, Turn turn) {
        return new AlarmTurn(at, a.cone(), a.kind().id(), turn, "");
    }

    private static boolean stands(Alarms in, String key) {
        Alarm a = in.standing().get(key);
        return a != null && a.raised();
    }

    private static OptionalDouble followed(Work work, Cone c) {
        return c.fittings().heat().fitted() ? work.aimC(c) : OptionalDouble.empty();
    }

    /** What was switched until now. */
    List<Minute.Outputs> outputs(Work work) {
        List<Minute.Outputs> out = new ArrayList<>();
        for (Cone c : work.settings.cones()) {
            On o = on.getOrDefault(c.id(), On.NOTHING);
            if (o.ofMs > 0) {
                out.add(new Minute.Outputs(c.id(), o.share(o.heatMs), o.share(o.cutOutMs), o.share(o.airMs),
                        o.share(o.lampMs), followed(work, c)));
            }
        }
        return out;
    }
}
