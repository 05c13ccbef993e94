package org.conetender.adapter.mqtt;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import org.conetender.adapter.mqtt.Outbox.Entry;
import org.conetender.port.Clock;
import org.conetender.port.Transport.Link;
import org.conetender.port.Transport.Outgoing;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.packet.MqttReturnCode;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps a connection up: connects, subscribes, sends what waits, and starts over when it breaks.
 *
 * <p>All state below is confined to {@link OneThread}; only {@link #start}, {@link #link}, {@link #wake}
 * and {@link #farewell} are called from others. A report about a connection that is no longer the
 * current one is dropped.
 */
final class LinkKeeper {

    private static final Logger LOG = LoggerFactory.getLogger(LinkKeeper.class);

    /** Connections in a row that broke soon after they were made, before a reason is offered. *Guess*. */
    private static final int SUSPICIOUS = 3;

    private final MqttOptions options;
    private final Outbox outbox;
    private final Sender sender;
    private final Handover handover;
    private final Tally tally;
    private final Clock clock;
    private final Backoff backoff;
    private final Trouble words;
    private final OneThread thread = new OneThread(this::bug);
    private final AtomicBoolean pumpQueued = new AtomicBoolean();
    private final CompletableFuture<Boolean> gone = new CompletableFuture<>();

    private volatile Link link;
    private PahoLink current;
    private boolean up;
    private boolean leaving;
    private int shortLived;
    private long upSinceMonoMs;

    /** What the keeper works with, made by {@link MqttTransport}. */
    record Parts(
            MqttOptions options, Outbox outbox, Inbox inbox, Tally tally, Clock clock, Backoff backoff) {}

    LinkKeeper(Parts parts) {
        this.options = parts.options();
        this.outbox = parts.outbox();
        this.sender = new Sender(parts.outbox(), parts.tally());
        this.handover = new Handover(this, thread, parts.inbox());
        this.tally = parts.tally();
        this.clock = parts.clock();
        this.backoff = parts.backoff();
        this.words = new Trouble(options);
        this.link = new Link(0, Optional.of(words.starting()));
    }

    /** Starts connecting. Any thread, once. */
    void start() {
        thread.now(this::connect);
    }

    /** How the connection stands. Any thread. */
    Link link() {
        return link;
    }

    /** Something waits in the outbox. Any thread; at most one wake-up is queued. */
    void wake() {
        if (pumpQueued.compareAndSet(false, true)) {
            thread.now(this::pump);
        }
    }

    /**
     * Starts leaving; answers, some seconds later at most, whether it was in good order. Any thread.
     * The thread ends with the answer.
     */
    CompletableFuture<Boolean> farewell() {
        thread.now(this::startLeaving);
        return gone.whenComplete((inGoodOrder, thrown) -> thread.stop());
    }

    private void connect() {
        if (leaving || current != null) {
            return;
        }
        try {
            PahoLink attempt = new PahoLink(options, handover);
            current = attempt;
            thread.after(backoff.pace().connectMs(), () -> {
                if (!up) {
                    ended(attempt, words.silent());
                }
            });
            attempt.connect();
        } catch (MqttException | IllegalArgumentException e) {
            lost(words.of(e));
        }
    }

    /** The broker took us. */
    void connected(PahoLink reporter) {
        if (reporter != current) {
            return;
        }
        try {
            if (options.filters().isEmpty()) {
                subscribed(reporter, new int[0]);
            } else {
                reporter.subscribe();
            }
        } catch (MqttException e) {
            lost(words.of(e));
        }
    }

    /** The broker answered to each filter: now commands arrive, and only now are we up. */
    void subscribed(PahoLink reporter, int[] reasons) {
        if (reporter != current) {
            return;
        }
        for (int i = 0; i < reasons.length; i++) {
            if (reasons[i] >= MqttReturnCode.RETURN_CODE_UNSPECIFIED_ERROR) {
                LOG.warn("{} will not let us listen to {} (MQTT reason 0x{}): no command will arrive from"
                                + " there; check the broker's access list",
                        options.broker(), options.filters().get(i), Integer.toHexString(reasons[i]));
            }
        }
        up = true;
        upSinceMonoMs = clock.now().monoMs();
        outbox.up();
        link = new Link(link.generation() + 1, Optional.empty());
        LOG.info("connected to {}", options.broker());
        pump();
    }

    /** The broker answered to one message. */
    void settled(PahoLink reporter, Entry entry, int reason) {
        if (reporter == current) {
            sender.settle(entry, reason);
            pump();
        }
    }

    /** The connection, or the attempt, is over. */
    void ended(PahoLink reporter, String why) {
        if (reporter == current) {
            lost(why);
        }
    }

    private void pump() {
        pumpQueued.set(false);
        if (!up) {
            return;
        }
        try {
            sender.pump(current);
        } catch (MqttException e) {
            lost(words.of(e));
        }
        if (leaving && outbox.isEmpty()) {
            leave(true);
        }
    }

    /** Once for each connection, whatever Paho still reports. */
    private void lost(String why) {
        PahoLink.drop(current);
        current = null;
        if (up) {
            up = false;
            long heldMs = clock.now().monoMs() - upSinceMonoMs;
            backoff.held(heldMs);
            shortLived = heldMs < backoff.pace().steadyMs() ? shortLived + 1 : 0;
        }
        outbox.down();
        tally.losses.increment();
        String trouble = shortLived < SUSPICIOUS ? why : why + words.again(shortLived);
        if (link.up() || !link.trouble().equals(Optional.of(trouble))) {
            LOG.warn("no MQTT connection: {}", trouble);
        }
        link = new Link(link.generation(), Optional.of(trouble));
        if (leaving) {
            gone.complete(false);
        } else {
            thread.after(backoff.nextWaitMs(), this::connect);
        }
    }

    private void startLeaving() {
        leaving = true;
        if (!up) {
            leave(false);
            return;
        }
        MqttOptions.Farewell farewell = options.farewell();
        outbox.offer(new Outgoing(farewell.topic(), farewell.whenClosed(), true, ""));
        thread.after(backoff.pace().goodbyeMs(), () -> leave(false));
        pump();
    }

    /** Ends the connection; not in good order means that the broker says "lost" for us. */
    private void leave(boolean inGoodOrder) {
        if (gone.isDone()) {
            return;
        }
        PahoLink old = current;
        boolean said = false;
        try {
            if (up) {
                old.leave(inGoodOrder);
                said = inGoodOrder;
            }
        } catch (MqttException e) {
            LOG.warn("the goodbye to {} may not have arrived: {}", options.broker(), e.toString());
        }
        current = null;
        up = false;
        link = new Link(link.generation(), Optional.of("closed"));
        PahoLink.drop(old);
        gone.complete(said);
    }

    private void bug(RuntimeException bug) {
        if (current != null) {
            lost("an error of our own: " + bug);
        }
    }
}
