package org.conetender.sim;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.conetender.port.Transport.Incoming;
import org.conetender.port.Transport.Outgoing;

/**
 * A broker in memory: retained messages, one daemon connected at a time, and the other clients as plain
 * calls. It outlives the daemon's process, so that what was retained is still there after a crash. Messages
 * for {@code …/set} reach the daemon; one that comes while no daemon is connected is lost, since the daemon
 * connects with a clean start (mqtt.md).
 */
public final class SimBroker implements Eyes {

    private final TreeMap<String, String> retained = new TreeMap<>();
    private final List<Consumer<Outgoing>> listeners = new ArrayList<>();
    private final Road road = new Road();
    private SimTransport connected;
    private boolean up = true;

    /** A new life of the daemon. @param willTopic where {@code lost} is left when the link breaks */
    public SimTransport connect(String willTopic) {
        if (connected != null) {
            connected.broken();
        }
        connected = new SimTransport(this, road, willTopic);
        if (up) {
            connected.joined(staleCommands());
        }
        return connected;
    }

    /** Breaks or mends the network, for everybody. */
    public void link(boolean isUp) {
        if (isUp == up) {
            return;
        }
        up = isUp;
        if (connected == null) {
            return;
        }
        if (up) {
            connected.joined(staleCommands());
        } else {
            connected.broken();
        }
    }

    /** Makes the way slow, or quick again; whoever is on it already arrives no sooner. */
    public void slow(boolean isSlow) {
        road.slow(isSlow);
    }

    /** Time passes: what was on its way arrives. @param elapsedMs of the world */
    void step(long elapsedMs) {
        road.step(elapsedMs);
        if (connected != null) {
            connected.deliver();
        }
    }

    /** A client publishes a command, with nothing special about it. @return whether a daemon got it */
    public boolean set(String topic, String payload) {
        return inject(new Incoming(topic, payload, false, Map.of()));
    }

    /**
     * A client publishes any message at all, hostile ones included: the {@code retained} flag and the
     * properties reach the daemon as they are. A retained one stays and comes again at every reconnection.
     */
    public boolean inject(Incoming message) {
        if (message.retained()) {
            keep(message.topic(), message.payload());
        }
        boolean reaches = up && connected != null && isCommand(message.topic());
        if (reaches) {
            connected.arrived(message);
        }
        return reaches;
    }

    @Override
    public String payload(String topic) {
        return retained.get(topic);
    }

    /** A view, not to be changed. */
    @Override
    public NavigableMap<String, String> under(String prefix) {
        return Collections.unmodifiableNavigableMap(
                retained.subMap(prefix, true, prefix + Character.MAX_VALUE, false));
    }

    /** Hears everything the daemon sends, retained or not, as a subscriber to {@code #} would. */
    public void listen(Consumer<Outgoing> listener) {
        listeners.add(listener);
    }

    /** From the daemon's connection. */
    void accept(Outgoing message) {
        if (message.retained()) {
            keep(message.topic(), message.payload());
        }
        for (Consumer<Outgoing> l : listeners) {
            l.accept(message);
        }
    }

    /** The daemon's process has died without a word: the will is carried out. */
    public void daemonDied() {
        if (connected != null) {
            connected.broken();
            connected = null;
        }
    }

    void left(SimTransport transport) {
        if (connected == transport) {
            connected = null;
        }
    }

    private void keep(String topic, String payload) {
        if (payload.isEmpty()) {
            retained.remove(topic);
        } else {
            retained.put(topic, payload);
        }
    }

    private List<Incoming> staleCommands() {
        return retained.entrySet().stream().filter(e -> isCommand(e.getKey()))
                .map(e -> new Incoming(e.getKey(), e.getValue(), true, Map.of())).toList();
    }

    private static boolean isCommand(String topic) {
        return topic.endsWith("/set");
    }
}
