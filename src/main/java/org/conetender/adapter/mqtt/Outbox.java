package org.conetender.adapter.mqtt;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.port.Transport.Outgoing;

/**
 * What waits to be sent, and what was sent and not yet acknowledged. Any thread; nothing waits.
 *
 * <p>While connected the order is kept message by message, because a reader may rely on seeing a
 * device's state go through {@code init} before its description changes. While not connected, and
 * when there is no more room, only the newest payload of each retained topic stays: the older ones
 * would only be overwritten. A message that nobody keeps (QoS 0) is let go while not connected: it
 * would be news of the past by the time it arrived.
 */
final class Outbox {

    /**
     * One message and its place in the order.
     *
     * @param seq grows with every message taken
     */
    record Entry(long seq, Outgoing message) {

        /** 1 for what the broker keeps and for what somebody waits for by its correlation; else 0. */
        int qos() {
            return message.retained() || !message.correlation().isEmpty() ? 1 : 0;
        }
    }

    private final int limit;
    private final Tally tally;
    private final TreeMap<Long, Entry> waiting = new TreeMap<>();
    private final TreeMap<Long, Entry> flying = new TreeMap<>();
    private final Map<String, Long> newest = new HashMap<>();
    private long taken;
    private boolean up;

    Outbox(int limit, Tally tally) {
        this.limit = limit;
        this.tally = tally;
    }

    /** Takes a message; false when there is no room even for the newest only. */
    synchronized boolean offer(Outgoing message) {
        Entry entry = new Entry(++taken, message);
        if (!up && entry.qos() == 0) {
            tally.letGo.increment();
            return true;
        }
        Long older = newest.get(message.topic());
        if (message.retained() && older != null && (!up || waiting.size() >= limit)) {
            waiting.remove(older);
            tally.coalesced.increment();
        }
        if (waiting.size() >= limit) {
            keepNewestOnly();
        }
        if (waiting.size() >= limit) {
            tally.outboxFull.increment();
            return false;
        }
        waiting.put(entry.seq(), entry);
        remember(entry);
        return true;
    }

    /** The next to send, now counted as flying; empty when none waits or {@code window} are flying. */
    synchronized Optional<Entry> next(int window) {
        if (flying.size() >= window || waiting.isEmpty()) {
            return Optional.empty();
        }
        Entry entry = waiting.pollFirstEntry().getValue();
        newest.remove(entry.message().topic(), entry.seq());
        flying.put(entry.seq(), entry);
        return Optional.of(entry);
    }

    /**
     * The broker has it, or will never take it. An older payload of the same topic still flying is
     * done too: a broker acknowledges in order, and sending the old one again would undo the new.
     */
    synchronized void done(Entry entry) {
        flying.remove(entry.seq());
        flying.headMap(entry.seq()).values().removeIf(older -> sameTopic(older, entry));
    }

    /** Connected: order is kept from here on. */
    synchronized void up() {
        up = true;
    }

    /** Not connected any more: what was not acknowledged waits again, in its old place. */
    synchronized void down() {
        up = false;
        waiting.putAll(flying);
        flying.clear();
        waiting.values().removeIf(entry -> {
            boolean gone = entry.qos() == 0;
            tally.letGo.add(gone ? 1 : 0);
            return gone;
        });
        newest.clear();
        waiting.values().forEach(this::remember);
        keepNewestOnly();
    }

    /** Whether nothing waits and nothing flies. */
    synchronized boolean isEmpty() {
        return waiting.isEmpty() && flying.isEmpty();
    }

    /** Drops every retained payload that has a newer one waiting. */
    private void keepNewestOnly() {
        waiting.values().removeIf(entry -> {
            Outgoing message = entry.message();
            boolean old = message.retained() && newest.getOrDefault(message.topic(), 0L) > entry.seq();
            tally.coalesced.add(old ? 1 : 0);
            return old;
        });
    }

    private void remember(Entry entry) {
        if (entry.message().retained()) {
            newest.put(entry.message().topic(), entry.seq());
        }
    }

    private static boolean sameTopic(Entry a, Entry b) {
        Outgoing one = a.message();
        Outgoing other = b.message();
        return one.retained() && other.retained() && one.topic().equals(other.topic());
    }
}
