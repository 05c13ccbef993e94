package org.conetender.sim;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.conetender.core.State;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Alarms;

/**
 * The rules about people who are called: what stands in the list of alarms has been told, and what was told
 * lies at the broker for whoever looks later, and nothing else does.
 */
final class CallRules {

    /** A danger waits for the message before at most, which is a minute, and a tick; ms. */
    private static final long DANGER_MS = 65_000;
    /** Anything else waits until fewer messages than two went out in ten minutes, ms. */
    private static final long OTHER_MS = 11 * 60_000;
    /** From a tick to the broker: a look of the publisher, and what was under way before; s. */
    private static final long PUBLISHED_S = 60;

    private final Rig rig;
    private final Invariants rules;
    private final Map<String, Long> untoldSinceMs = new HashMap<>();

    CallRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
    }

    /** The next life finds its alarms anew. */
    void died() {
        untoldSinceMs.clear();
    }

    void look(State s) {
        Alarms alarms = s.live().alarms();
        if (alarms.standing().isEmpty() && untoldSinceMs.isEmpty()) {
            return;
        }
        long now = rig.world().clock().elapsedMs();
        Set<String> untold = new HashSet<>();
        for (Alarm a : alarms.raised()) {
            if (!untold(a)) {
                continue;
            }
            untold.add(a.key());
            long sinceMs = untoldSinceMs.computeIfAbsent(a.key(), k -> now);
            long mostMs = a.kind().dangerous() ? DANGER_MS : OTHER_MS;
            rules.lasting("called", a.cone(), now - sinceMs > mostMs, 0,
                    "'" + a.kind().id() + "' stood in the list and nobody was called");
        }
        untoldSinceMs.keySet().retainAll(untold);
        published(alarms);
    }

    /**
     * Whether nobody was called of it, alone or by name: no more is said of what follows from another than
     * that other's message, where it is no danger of its own.
     */
    static boolean untold(Alarm a) {
        return a.active() && a.told().times() == 0 && !a.acknowledged() && !a.shelved()
                && (!a.follows() || a.kind().dangerous());
    }

    private void published(Alarms alarms) {
        boolean way = !Fault.Trouble.LINK_DOWN.in(rig.world().wrong())
                && !Fault.Trouble.LINK_SLOW.in(rig.world().wrong());
        String site = rig.settings().site().id();
        SimBroker broker = rig.world().broker();
        Set<String> due = new HashSet<>();
        for (Alarm a : alarms.raised()) {
            if (a.shown()) {
                due.add(Topics.device(site, a.cone()) + "/$alert/" + a.kind().id());
            }
        }
        if (alarms.calls().many().isPresent()) {
            due.add(Topics.device(site, "") + "/$alert/many");
        }
        boolean missing = false;
        for (String t : due) {
            missing |= broker.payload(t) == null;
        }
        rules.lasting("alert-missing", "", way && missing,
                PUBLISHED_S, "an alarm of which people were called was not at the broker");
    }
}
