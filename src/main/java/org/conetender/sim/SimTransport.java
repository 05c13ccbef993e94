package org.conetender.sim;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.port.Transport;

/**
 * The daemon's end of a {@link SimBroker}. While the link is down, messages wait in a bounded outbox and
 * go out in order when it is up again; what came in and was not yet polled is lost with the link.
 */
public final class SimTransport implements Transport {

    /** Guess: well above what one full publication of three cones needs. */
    static final int OUTBOX_MOST = 1_000;

    private final SimBroker broker;
    private final String willTopic;
    private final ArrayDeque<Incoming> inbox = new ArrayDeque<>();
    private final ArrayDeque<Outgoing> outbox = new ArrayDeque<>();
    private long generation;
    private boolean up;
    private boolean closed;

    SimTransport(SimBroker broker, String willTopic) {
        this.broker = broker;
        this.willTopic = willTopic;
    }

    @Override
    public boolean offer(Outgoing message) {
        if (closed || (!up && outbox.size() >= OUTBOX_MOST)) {
            return false;
        }
        if (up) {
            broker.accept(message);
        } else {
            outbox.add(message);
        }
        return true;
    }

    @Override
    public List<Incoming> poll(int most) {
        List<Incoming> out = new ArrayList<>(Math.min(most, inbox.size()));
        while (out.size() < most && !inbox.isEmpty()) {
            out.add(inbox.poll());
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
        inbox.addAll(stale);
        while (!outbox.isEmpty()) {
            broker.accept(outbox.poll());
        }
    }

    void arrived(Incoming message) {
        inbox.add(new Incoming(message.topic(), message.payload(), message.retained(),
                Map.copyOf(message.properties())));
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
