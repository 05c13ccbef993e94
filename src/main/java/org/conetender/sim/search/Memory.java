package org.conetender.sim.search;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What the rules remember of a course of events; immutable.
 *
 * @param airOffSinceMs since when the air has been commanded off, monotonic ms; −1 while it is on
 * @param handsSinceMs when hands were last reported in the water, monotonic ms; −1 for never in this life
 * @param valveSinceMs since when the valve has been reported shut, monotonic ms; −1 for never in this life
 * @param wrongSinceMs since when each hazard has been there without a break, monotonic ms
 * @param bells what was found and called of each alarm, by key
 * @param seenMs when somebody acknowledged each alarm, monotonic ms, by key; of a life before, some time of
 *     this one
 * @param cuts how often the power was cut
 */
record Memory(long airOffSinceMs, long handsSinceMs, long valveSinceMs, Map<Hazard, Long> wrongSinceMs,
              Map<String, Bell> bells, Map<String, Long> seenMs, int cuts) {

    static final Memory NONE = new Memory(-1, -1, -1, Map.of(), Map.of(), Map.of(), 0);

    /**
     * What outlives the process. @param cut whether the power went too  @param open whether words were on
     * their way  @param begunMs when the next life begins, monotonic ms
     */
    Memory died(boolean cut, boolean open, long begunMs) {
        Map<String, Long> shows = new TreeMap<>();
        seenMs.keySet().forEach(key -> shows.put(key, begunMs + AlarmRules.SHOWS_MS));
        return new Memory(-1, cut || open ? -1 : handsSinceMs, cut || open ? -1 : valveSinceMs, Map.of(),
                Map.of(), shows, cuts + (cut ? 1 : 0));
    }

    Memory wrong(Map<Hazard, Long> since) {
        return new Memory(airOffSinceMs, handsSinceMs, valveSinceMs, since, bells, seenMs, cuts);
    }

    /** @param keys of alarms that were acknowledged, though nobody could be answered */
    Memory seen(Set<String> keys, long nowMs) {
        Map<String, Long> all = new TreeMap<>(seenMs);
        keys.forEach(key -> all.put(key, nowMs));
        return new Memory(airOffSinceMs, handsSinceMs, valveSinceMs, wrongSinceMs, bells, all, cuts);
    }

    /** How long ago the valve was reported shut, ms; for ever where that was in another life. */
    long valveShutForMs(long nowMs) {
        return valveSinceMs < 0 ? Long.MAX_VALUE : nowMs - valveSinceMs;
    }
}
