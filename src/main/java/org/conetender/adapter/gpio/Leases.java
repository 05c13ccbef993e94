package org.conetender.adapter.gpio;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Until when each energised output may stay so. Intuition: a parking meter per output; whoever wants
 * it energised keeps paying, and when nobody does it runs out.
 *
 * <p>Pure: times are milliseconds of the monotonic clock, given as arguments. Any thread. That an
 * output's level and its lease change together is the affair of {@link LeasedSwitch}'s lock.
 */
final class Leases {

    private final Map<String, Long> endMs = new ConcurrentHashMap<>();

    /** Energised until {@code validForMs} after {@code nowMs}; a renewal replaces what was left. */
    void grant(String output, long nowMs, long validForMs) {
        endMs.put(output, Math.addExact(nowMs, validForMs));
    }

    /** Due at every look from now on, until dropped: its safe level could not be set yet. */
    void overdue(String output) {
        endMs.put(output, Long.MIN_VALUE);
    }

    /** Nothing to let go: the output is at its safe level. */
    void drop(String output) {
        endMs.remove(output);
    }

    /** Whether this output must be let go. The end itself is already too late. */
    boolean due(String output, long nowMs) {
        Long end = endMs.get(output);
        return end != null && nowMs >= end;
    }

    /** Every output that must be let go at {@code nowMs}. */
    List<String> due(long nowMs) {
        return endMs.entrySet().stream().filter(e -> nowMs >= e.getValue()).map(Map.Entry::getKey).toList();
    }
}
