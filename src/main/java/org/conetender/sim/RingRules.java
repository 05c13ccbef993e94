package org.conetender.sim;

import java.util.HashMap;
import java.util.Map;
import org.conetender.core.Result;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.image.Ask;

/**
 * The rules about people who do not answer: they are called again. A telephone rings whenever an alert is
 * sent anew, whatever the daemon's own list says of that.
 */
final class RingRules {

    /** Unanswered it is told again: after so long, and later every four hours (control.md §7), ms. */
    private static final long FIRST_AGAIN_MS = 15 * 60_000;
    private static final long AGAIN_MS = 4 * 3_600_000L;
    /** Other messages may be in its way for so long, and one more for its own way; s. */
    private static final long IN_THE_WAY_S = 12 * 60;
    /** What was told while nobody could hear it came at once afterwards, ms. */
    private static final long CAUGHT_UP_MS = 5 * 60_000;

    private final Rig rig;
    private final Invariants rules;
    private final Map<String, Rung> rung = new HashMap<>();
    /** Of each lock, by key: when people heard of it last, and when they acknowledged it by itself; ms. */
    private final Map<String, Long> heardMs = new HashMap<>();
    private final Map<String, Long> answeredMs = new HashMap<>();
    private long unheardMs = Long.MIN_VALUE / 2;

    /** @param times how often  @param firstMs, lastMs when for the first and the last time, world time */
    private record Rung(int times, long firstMs, long lastMs) {}

    RingRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
        rig.world().broker().listen(m -> {
            if (m.topic().contains("/$alert/") && m.payload().isEmpty()) {
                rung.remove(m.topic());
            } else if (m.topic().contains("/$alert/")) {
                long now = rig.world().clock().elapsedMs();
                rung.merge(m.topic(), new Rung(1, now, now), (a, b) -> new Rung(a.times() + 1, a.firstMs(),
                        now));
            }
        });
    }

    /** @param way whether messages arrive */
    void look(Alarms alarms, boolean way) {
        long now = rig.world().clock().elapsedMs();
        unheardMs = way ? unheardMs : now;
        for (Alarm a : alarms.standing().values()) {
            String topic = topic(a.cone(), a.kind().id());
            if (a.acknowledged()) {
                rung.remove(topic);
            }
            Rung r = rung.get(topic);
            boolean waits = r != null && way && a.shown() && a.active() && !a.follows();
            // One of many was told by another sentence before, which rings elsewhere.
            boolean first = r != null && r.times() == 1 && a.told().times() == 1
                    && r.firstMs() > unheardMs + CAUGHT_UP_MS;
            long mostMs = first ? FIRST_AGAIN_MS : AGAIN_MS;
            rules.lasting("called-again", a.key(), waits && now - r.lastMs() > mostMs, IN_THE_WAY_S,
                    "nobody had answered '" + a.kind().id() + "' and nobody was called again");
        }
        locks(alarms, way, now);
    }

    /** Only its own acknowledgement opens a lock (safety.md): until that, people are told of it again. */
    private void locks(Alarms alarms, boolean way, long now) {
        for (Result.Reply r : rig.process().control().replies()) {
            if (r.request().ask() instanceof Ask.Acknowledge(String id)) {
                answeredMs.put(r.request().cone() + "/" + id, now);
            }
        }
        heardMs.keySet().retainAll(alarms.standing().keySet());
        for (Alarm a : alarms.standing().values()) {
            Rung r = rung.get(topic(a.told().way() == Alarm.Way.AMONG ? "" : a.cone(),
                    a.told().way() == Alarm.Way.AMONG ? "many" : a.kind().id()));
            if (r != null) {
                heardMs.merge(a.key(), r.lastMs(), Math::max);
                a.told().with().forEach(key -> heardMs.merge(key, r.lastMs(), Math::max));
            }
        }
        for (Alarm a : alarms.raised()) {
            long heard = heardMs.computeIfAbsent(a.key(), _ -> now);
            boolean waits = way && a.held() == Alarm.Held.ONLY_BY_LATCH && !a.shelved()
                    && answeredMs.getOrDefault(a.key(), Long.MIN_VALUE) < heard;
            rules.lasting("lock-told-again", a.key(), waits && now - heard > AGAIN_MS, IN_THE_WAY_S,
                    "'" + a.kind().id() + "' locked heat off, nobody had acknowledged it and nobody was "
                    + "told again");
        }
    }

    private String topic(String cone, String id) {
        return Topics.device(rig.settings().site().id(), cone) + "/$alert/" + id;
    }
}
