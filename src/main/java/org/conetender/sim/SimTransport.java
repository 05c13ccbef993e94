package org.conetender.sim;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.port.Transport;

/**
 * The daemon's end of a {@link SimBroker}. While the link is down, messages wait in a bounded outbox and
 * go out in order when it is up again; what came in and was not yet polled is lost with the link. Over a slow
 * one they arrive late, and in order.
 */
public final class SimTransport implements Transport {

    /** Guess: well above what one full publication of three cones needs. */
    static final int OUTBOX_MOST = 1_000;

    private final SimBroker broker;
    private final Road road;
    private final String willTopic;
    private final ArrayDeque<OnItsWay<Incoming>> inbox = new ArrayDeque<>();
    private final ArrayDeque<OnItsWay<Outgoing>> outbox = new ArrayDeque<>();
    private long generation;
    private boolean up;
    private boolean closed;

    /** @param atMs when it arrives, by the world's time */
    private record OnItsWay<M>(M message, long atMs) {}

    SimTransport(SimBroker broker, Road road, String willTopic) {
        this.broker = broker;
        this.road = road;
        this.willTopic = willTopic;
    }

    @Override
    public boolean offer(Outgoing message) {
        if (closed || outbox.size() >= OUTBOX_MOST) {
            return false;
        }
        outbox.add(new OnItsWay<>(message, road.arrivesMs()));
        deliver();
        return true;
    }

    /** What has arrived by now is the broker's. */
    void deliver() {
        while (up && !outbox.isEmpty() && road.there(outbox.peek().atMs())) {
            broker.accept(outbox.poll().message());
        }
    }

    @Override
    public List<Incoming> poll(int most) {
        List<Incoming> out = new ArrayList<>(Math.min(most, inbox.size()));
        while (out.size() < most && !inbox.isEmpty() && road.there(inbox.peek().atMs())) {
            out.add(inbox.poll().message());
        }
        return out;
    }

    @Override
    public Link link() {
        return new Link(generation, up ? Optional.empty() : Optional.of("no connection to the broker"));
    }

    @Override
    public void close() {
        if (up) {
            broker.accept(new Outgoing(willTopic, "disconnected", true, ""));
        }
        up = false;
        closed = true;
        broker.left(this);
    }

    /** Connected (again). @param stale retained commands that were lying at the broker */
    void joined(List<Incoming> stale) {
        up = true;
        generation++;
        inbox.clear();
        stale.forEach(this::comes);
        deliver();
    }

    void arrived(Incoming message) {
        comes(new Incoming(message.topic(), message.payload(), message.retained(),
                Map.copyOf(message.properties())));
    }

    private void comes(Incoming message) {
        inbox.add(new OnItsWay<>(message, road.arrivesMs()));
    }

    /** The connection is gone without goodbye: the broker carries out the will. */
    void broken() {
        if (up) {
            broker.accept(new Outgoing(willTopic, "lost", true, ""));
        }
        up = false;
        inbox.clear();
    }
}
