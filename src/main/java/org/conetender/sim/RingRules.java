package org.conetender.sim;

import java.util.HashMap;
import java.util.Map;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Alarms;

/**
 * The rule about people who do not answer: they are called again. A telephone rings whenever an alert is sent
 * anew, whatever the daemon's own list says of that.
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
            String topic = Topics.device(rig.settings().site().id(), a.cone()) + "/$alert/" + a.kind().id();
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
    }
}
