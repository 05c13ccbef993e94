package org.conetender.adapter.mqtt;

import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.conetender.adapter.mqtt.Outbox.Entry;
import org.conetender.port.Clock;
import org.conetender.port.Transport.Link;
import org.conetender.port.Transport.Outgoing;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.packet.MqttReturnCode;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps a connection up: connects, subscribes, sends what waits, and starts over when it breaks.
 *
 * <p>All state below is confined to one thread, {@code conetender-mqtt}, on which every task runs;
 * only {@link #link}, {@link #wake} and {@link #farewell} are called from others. Reports about a
 * connection that is no longer the current one are dropped.
 */
final class LinkKeeper implements PahoLink.Listener {

    private static final Logger LOG = LoggerFactory.getLogger(LinkKeeper.class);

    private final MqttOptions options;
    private final Outbox outbox;
    private final Inbox inbox;
    private final Tally tally;
    private final Clock clock;
    private final Backoff.Pace pace;
    private final Backoff backoff;
    private final Trouble words;
    private final ScheduledThreadPoolExecutor thread;
    private final AtomicBoolean pumpQueued = new AtomicBoolean();
    private final CompletableFuture<Boolean> gone = new CompletableFuture<>();

    private volatile Link link;
    private PahoLink current;
    private boolean up;
    private boolean leaving;
    private long upSinceMonoMs;

    /** What the keeper works with, made by {@link MqttTransport}. */
    record Parts(MqttOptions options, Outbox outbox, Inbox inbox, Tally tally, Clock clock,
            Backoff.Pace pace) {}

    LinkKeeper(Parts parts, Backoff backoff) {
        this.options = parts.options();
        this.outbox = parts.outbox();
        this.inbox = parts.inbox();
        this.tally = parts.tally();
        this.clock = parts.clock();
        this.pace = parts.pace();
        this.backoff = backoff;
        this.words = new Trouble(options);
        this.link = new Link(0, Optional.of(words.starting()));
        this.thread = new ScheduledThreadPoolExecutor(1, task -> {
            Thread made = new Thread(task, "conetender-mqtt");
            made.setDaemon(true);
            return made;
        });
        thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
    }

    void start() {
        after(0, this::connect);
    }

    /** How the connection stands. Any thread. */
    Link link() {
        return link;
    }

    /** Something waits in the outbox. Any thread; at most one wake-up is queued. */
    void wake() {
        if (pumpQueued.compareAndSet(false, true)) {
            after(0, this::pump);
        }
    }

    /** Starts leaving; answers, some seconds later at most, whether it was in good order. Any thread. */
    CompletableFuture<Boolean> farewell() {
        after(0, this::startLeaving);
        return gone;
    }

    /** Ends the thread. Any thread. */
    void stop() {
        thread.shutdownNow();
    }

    // ---- the one thread ----

    private void connect() {
        if (leaving || current != null) {
            return;
        }
        try {
            current = new PahoLink(options, this);
            PahoLink attempt = current;
            after(pace.connectMs(), () -> giveUp(attempt));
            attempt.connect();
        } catch (MqttException | IllegalArgumentException e) {
            lost(words.of(e));
        }
    }

    private void giveUp(PahoLink attempt) {
        if (attempt == current && !up) {
            lost(words.silent());
        }
    }

    private void subscribe() {
        if (options.filters().isEmpty()) {
            nowUp();
            return;
        }
        try {
            current.subscribe();
        } catch (MqttException e) {
            lost(words.of(e));
        }
    }

    private void subscribed(int[] reasons) {
        for (int i = 0; reasons != null && i < reasons.length; i++) {
            if (reasons[i] >= MqttReturnCode.RETURN_CODE_UNSPECIFIED_ERROR) {
                LOG.warn("{} will not let us listen to {} (MQTT reason 0x{}): no command will arrive from"
                                + " there; check the broker's access list",
                        options.broker(), options.filters().get(i), Integer.toHexString(reasons[i]));
            }
        }
        nowUp();
    }

    private void nowUp() {
        up = true;
        upSinceMonoMs = clock.now().monoMs();
        outbox.up();
        link = new Link(link.generation() + 1, Optional.empty());
        LOG.info("connected to {}", options.broker());
        pump();
    }

    private void pump() {
        pumpQueued.set(false);
        while (up) {
            Optional<Entry> next = outbox.next(current.window());
            if (next.isEmpty()) {
                break;
            }
            send(next.get());
        }
        if (leaving && outbox.isEmpty()) {
            leave(true);
        }
    }

    private void send(Entry entry) {
        Outgoing message = entry.message();
        try {
            // A broker ends the connection over a message that is too long, and would again each time.
            if (current.fits(message)) {
                current.publish(entry);
            } else {
                refused(entry, MqttReturnCode.RETURN_CODE_PACKET_TOO_LARGE);
            }
        } catch (MqttException e) {
            lost(words.of(e));
        }
    }

    private void settle(Entry entry, int reason) {
        if (reason >= MqttReturnCode.RETURN_CODE_UNSPECIFIED_ERROR) {
            refused(entry, reason);
        } else {
            tally.acknowledged.increment();
            outbox.done(entry);
        }
        pump();
    }

    private void refused(Entry entry, int reason) {
        tally.refused.increment();
        outbox.done(entry);
        LOG.warn("{} did not take a message of {} characters on {} (MQTT reason 0x{})", options.broker(),
                entry.message().payload().length(), entry.message().topic(), Integer.toHexString(reason));
    }

    /** The connection, or the attempt, is over: once for each, whatever Paho still reports. */
    private void lost(String why) {
        PahoLink old = current;
        current = null;
        tally.losses.increment();
        if (up) {
            up = false;
            backoff.held(clock.now().monoMs() - upSinceMonoMs);
        }
        outbox.down();
        letGo(old);
        if (!link.trouble().equals(Optional.of(why))) {
            LOG.warn("no MQTT connection: {}", why);
        }
        link = new Link(link.generation(), Optional.of(why));
        if (leaving) {
            gone.complete(false);
        } else {
            after(backoff.nextWaitMs(), this::connect);
        }
    }

    private void startLeaving() {
        leaving = true;
        if (!up) {
            letGo(current);
            current = null;
            gone.complete(false);
            return;
        }
        MqttOptions.Farewell farewell = options.farewell();
        outbox.offer(new Outgoing(farewell.topic(), farewell.whenClosed(), true, ""));
        after(pace.goodbyeMs(), () -> leave(false));
        pump();
    }

    /** Ends the connection; not in good order means that the broker says "lost" for us. */
    private void leave(boolean inGoodOrder) {
        if (current == null || gone.isDone()) {
            return;
        }
        PahoLink old = current;
        current = null;
        up = false;
        link = new Link(link.generation(), Optional.of("closed"));
        try {
            old.leave(inGoodOrder);
            gone.complete(inGoodOrder);
        } catch (MqttException e) {
            LOG.warn("the goodbye to {} may not have arrived: {}", options.broker(), e.toString());
            gone.complete(false);
        }
        letGo(old);
    }

    private static void letGo(PahoLink old) {
        if (old != null) {
            old.drop(e -> LOG.debug("letting go of an old connection", e));
        }
    }

    /** Runs a task on the one thread; a bug in it costs the connection, not the thread. */
    private void after(long delayMs, Runnable task) {
        try {
            thread.schedule(() -> guarded(task), delayMs, TimeUnit.MILLISECONDS);
        } catch (RejectedExecutionException closed) {
            LOG.debug("the transport is closed", closed);
        }
    }

    private void guarded(Runnable task) {
        try {
            task.run();
        } catch (RuntimeException bug) {
            LOG.error("a bug in the MQTT transport; the connection is made anew", bug);
            if (current != null) {
                lost("an error of our own: " + bug);
            }
        }
    }

    private void ofCurrent(PahoLink reporter, Runnable task) {
        after(0, () -> {
            if (reporter == current) {
                task.run();
            }
        });
    }

    // ---- Paho's threads: hand over, nothing else ----

    @Override
    public void connected(PahoLink reporter) {
        ofCurrent(reporter, this::subscribe);
    }

    @Override
    public void subscribed(PahoLink reporter, int[] reasons) {
        int[] copy = reasons == null ? null : Arrays.copyOf(reasons, reasons.length);
        ofCurrent(reporter, () -> subscribed(copy));
    }

    @Override
    public void ended(PahoLink reporter, String why) {
        ofCurrent(reporter, () -> lost(why));
    }

    @Override
    public void done(PahoLink reporter, Entry entry, int reason) {
        ofCurrent(reporter, () -> settle(entry, reason));
    }

    @Override
    public void unsent(PahoLink reporter, Entry entry) {
        // The loss of the connection follows and takes the whole window back into the outbox.
    }

    @Override
    public void arrived(String topic, MqttMessage message) {
        inbox.accept(topic, message);
    }
}
