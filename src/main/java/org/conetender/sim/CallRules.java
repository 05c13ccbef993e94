package org.conetender.sim;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.image.Ask;

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

    /** A process that hangs may take so long to take it back, s (guess: a stall of 40 s and the rest). */
    private static final long LEFT_S = 120;
    /** Of these an acknowledgement is good for ten minutes (design.md, dangers); and a message's way. */
    private static final Set<AlarmKind> MINUTES_ONLY = Set.of(AlarmKind.AIR_FAILED_ANIMALS,
            AlarmKind.AIR_SHUT_IN);
    private static final long QUIET_MS = 10 * 60_000 + DANGER_MS + 10_000;

    private final Rig rig;
    private final Invariants rules;
    private final RingRules rings;
    private final Map<String, Long> untoldSinceMs = new HashMap<>();
    /** What was on the shelf: when it was told last, by the daemon's clock, and when it was there last. */
    private final Map<String, Long> shelvedTold = new HashMap<>();
    private final Map<String, Long> backMs = new HashMap<>();
    /** When anybody acknowledged anything last. */
    private long seenMs;

    CallRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
        this.rings = new RingRules(rig, rules);
    }

    /** The next life finds its alarms anew. */
    void died() {
        untoldSinceMs.clear();
        shelvedTold.clear();
    }

    void look(State s) {
        Alarms alarms = s.live().alarms();
        left(alarms);
        rings.look(alarms, way());
        if (alarms.standing().isEmpty() && untoldSinceMs.isEmpty()) {
            shelvedTold.clear();
            return;
        }
        long now = rig.world().clock().elapsedMs();
        for (Result.Reply r : rig.process().control().replies()) {
            seenMs = r.request().ask() instanceof Ask.Acknowledge ? now : seenMs;
        }
        Set<String> untold = new HashSet<>();
        for (Alarm a : alarms.raised()) {
            boolean quiet = a.active() && a.acknowledged() && MINUTES_ONLY.contains(a.kind());
            rules.lasting("silenced", a.cone(), quiet && now - seenMs > QUIET_MS, 0,
                    "'" + a.kind().id() + "' was quiet for longer than ten minutes");
            if (!untold(a, alarms)) {
                continue;
            }
            untold.add(a.key());
            long sinceMs = untoldSinceMs.computeIfAbsent(a.key(), k -> now);
            long mostMs = a.kind().dangerous() ? DANGER_MS : OTHER_MS;
            rules.lasting("called", a.cone(), now - sinceMs > mostMs, 0,
                    "'" + a.kind().id() + "' stood in the list and nobody was called");
        }
        untoldSinceMs.keySet().retainAll(untold);
        back(alarms, now);
        published(alarms);
    }

    /** What comes back from the shelf and is there yet is told anew. */
    private void back(Alarms alarms, long now) {
        shelvedTold.keySet().retainAll(alarms.standing().keySet());
        for (Alarm a : alarms.raised()) {
            boolean waits = a.active() && !a.acknowledged() && !a.follows();
            if (a.shelved()) {
                shelvedTold.put(a.key(), a.told().atMs());
                backMs.put(a.key(), now);
            } else if (!waits || a.told().atMs() > shelvedTold.getOrDefault(a.key(), Long.MAX_VALUE)) {
                shelvedTold.remove(a.key());
            }
            rules.lasting("called-back", a.cone(), shelvedTold.containsKey(a.key())
                    && now - backMs.get(a.key()) > OTHER_MS, 0,
                    "'" + a.kind().id() + "' came back from the shelf and nobody was called");
        }
    }

    /**
     * Whether nobody was called of it, alone or by name: no more is said of what follows from another than
     * that other's message, where it is no danger of its own and that other is not on the shelf.
     */
    static boolean untold(Alarm a, Alarms all) {
        boolean elsewhere = a.shelved() || a.aside().follows().map(all.standing()::get)
                .filter(first -> first.raised() && !first.shelved()).isPresent();
        return a.active() && a.told().times() == 0 && !a.acknowledged()
                && (!elsewhere || a.kind().dangerous());
    }

    private boolean way() {
        return !Fault.Trouble.LINK_DOWN.in(rig.world().wrong())
                && !Fault.Trouble.LINK_SLOW.in(rig.world().wrong());
    }

    /** What is over must not go on lying at the broker. */
    private void left(Alarms alarms) {
        String site = rig.settings().site().id();
        left("", Topics.device(site, ""), alarms);
        for (SimCone c : rig.world().cones()) {
            left(c.settings().id(), Topics.device(site, c.settings().id()), alarms);
        }
    }

    private void left(String cone, String device, Alarms alarms) {
        String prefix = device + "/$alert/";
        String left = "";
        for (String topic : rig.world().broker().under(prefix).keySet()) {
            String id = topic.substring(prefix.length());
            boolean stands = id.equals("many") ? alarms.calls().many().isPresent()
                    : alarms.standing().containsKey(cone + "/" + id);
            left = stands ? left : id;
        }
        rules.lasting("alert-left", cone, way() && !left.isEmpty(), LEFT_S,
                "the alarm '" + left + "' was over and lay at the broker");
    }

    private void published(Alarms alarms) {
        boolean way = way();
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
