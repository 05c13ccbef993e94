package org.conetender.app;

import java.util.List;
import java.util.Optional;
import org.conetender.port.Transport;

/** The transport of a site that has no broker: never up, so nothing is ever published. Any thread. */
final class NoBroker implements Transport {

    private static final Link LINK = new Link(0,
            Optional.of("no broker is configured; add [mqtt] with its uri if there should be one"));

    @Override
    public boolean offer(Outgoing message) {
        return false;
    }

    @Override
    public List<Incoming> poll(int most) {
        return List.of();
    }

    @Override
    public Link link() {
        return LINK;
    }

    @Override
    public void close() {
        // Nothing is held.
    }
}
