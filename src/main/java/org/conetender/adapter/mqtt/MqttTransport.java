package org.conetender.adapter.mqtt;

import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import org.conetender.port.Clock;
import org.conetender.port.Transport;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Messages over MQTT 5, with a connection that is looked after.
 *
 * <p>Each connection is a Clean Start with a session that ends with it, so that no command ever waits
 * for the daemon at the broker, and subscribes anew. Threads: {@code conetender-mqtt} owns the
 * connection; Paho's own threads only hand over; the port's methods may be called from any thread and
 * never wait, {@link #close} excepted.
 */
public final class MqttTransport implements Transport {

    private static final Logger LOG = LoggerFactory.getLogger(MqttTransport.class);

    private final Outbox outbox;
    private final Inbox inbox;
    private final Tally tally = new Tally();
    private final LinkKeeper keeper;
    private final long closeMs;
    private final AtomicBoolean closed = new AtomicBoolean();

    private MqttTransport(MqttOptions options, Backoff.Pace pace, Clock clock, long jitterSeed) {
        this.outbox = new Outbox(options.outboxLimit(), tally);
        this.inbox = new Inbox(clock, tally);
        this.closeMs = pace.goodbyeMs() + 2_000;
        Backoff backoff = new Backoff(pace, new SplittableRandom(jitterSeed));
        this.keeper = new LinkKeeper(new LinkKeeper.Parts(options, outbox, inbox, tally, clock, backoff));
    }

    /**
     * Starts connecting and returns at once; {@link #link} tells how it goes.
     *
     * @param jitterSeed spreads the waits between attempts; give each daemon another one
     */
    public static MqttTransport open(MqttOptions options, Clock clock, long jitterSeed) {
        return open(options, Backoff.Pace.USUAL, clock, jitterSeed);
    }

    static MqttTransport open(MqttOptions options, Backoff.Pace pace, Clock clock, long jitterSeed) {
        MqttTransport transport = new MqttTransport(options, pace, clock, jitterSeed);
        transport.keeper.start();
        return transport;
    }

    /** @throws IllegalArgumentException if the topic is none, or the correlation no hexadecimal */
    @Override
    public boolean offer(Outgoing message) {
        if (!Filters.canPublish(message.topic()) || !message.correlation().matches("([0-9a-fA-F]{2})*")) {
            throw new IllegalArgumentException("cannot be published: topic '" + message.topic()
                    + "', correlation '" + message.correlation() + "'");
        }
        if (closed.get()) {
            return false;
        }
        boolean taken = outbox.offer(message);
        keeper.wake();
        return taken;
    }

    @Override
    public List<Incoming> poll(int most) {
        return inbox.poll(most);
    }

    @Override
    public Link link() {
        return keeper.link();
    }

    /** What was sent, dropped and lost since the start. Any thread. */
    public Counters counters() {
        return tally.read();
    }

    /** Sends what waits and the goodbye, for some seconds at most; else the broker says "lost" for us. */
    @Override
    public void close() {
        if (closed.getAndSet(true)) {
            return;
        }
        try {
            keeper.farewell().get(closeMs, TimeUnit.MILLISECONDS);
        } catch (TimeoutException | ExecutionException e) {
            LOG.warn("the MQTT connection could not be closed in good order; the broker will say lost", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
