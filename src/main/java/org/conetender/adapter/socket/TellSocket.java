package org.conetender.adapter.socket;

import java.io.IOException;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.SocketChannel;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.conetender.core.image.Request;
import org.conetender.port.Requests;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Requests over a Unix stream socket. A client sends one line and gets one back: {@code ok},
 * {@code refused} or {@code unknown}, then a sentence.
 *
 * <p>Threads: one accepts, one closes clients that are too slow, and each client has a virtual one.
 * {@link #poll} and {@link #answer} belong to the control thread and touch only queues.
 */
public final class TellSocket implements Requests, AutoCloseable {

    /** The name of this face in {@link Request.Origin}. */
    public static final String FACE = "socket";

    /** How long a client may take for its line, and how long it is kept for its answer, ms: guess. */
    public static final long PATIENCE_MS = 10_000;

    /** Clients served at once, and requests waiting to be polled: guess, far more than people. */
    static final int MOST_CLIENTS = 16;

    /** The rest after a failed accept (too many open files), and the grace for last answers, ms: guess. */
    private static final long REST_MS = 1_000;

    private static final Logger LOG = LoggerFactory.getLogger(TellSocket.class);

    private final SocketFile file;
    private final Desk desk;
    private final long patienceMs;
    private final Semaphore places = new Semaphore(MOST_CLIENTS);
    private final Set<SocketChannel> open = ConcurrentHashMap.newKeySet();
    private final CountDownLatch closed = new CountDownLatch(1);
    private final ScheduledThreadPoolExecutor deadlines;

    /**
     * Listens from now on.
     *
     * @throws IOException with a sentence, if another daemon listens there or the place will not do
     */
    public TellSocket(Path path, LineReader reader) throws IOException {
        this(path, reader, PATIENCE_MS);
    }

    TellSocket(Path path, LineReader reader, long patienceMs) throws IOException {
        this.patienceMs = patienceMs;
        this.desk = new Desk(reader, MOST_CLIENTS, patienceMs);
        this.deadlines = new ScheduledThreadPoolExecutor(1,
                Thread.ofPlatform().name("socket-deadlines").daemon().factory());
        this.deadlines.setRemoveOnCancelPolicy(true);
        this.file = SocketFile.listen(path, MOST_CLIENTS);
        Thread.ofPlatform().name("socket-accept").daemon().start(this::accept);
    }

    private void accept() {
        boolean running = true;
        while (running) {
            try {
                greet(file.server().accept());
            } catch (ClosedChannelException closing) {
                running = false;
            } catch (IOException e) {
                LOG.warn("the local socket could not take a client ({})", e.toString());
                running = !closedWithin(REST_MS);
            }
        }
    }

    private boolean closedWithin(long ms) {
        try {
            return closed.await(ms, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }

    private void greet(SocketChannel client) {
        open.add(client);
        boolean place = places.tryAcquire();
        Thread.ofVirtual().name("socket-client").start(() -> {
            try (client) {
                Optional<Answer> answer = place ? serve(client)
                        : Optional.of(Desk.refused("too many ask at once; try again in a few seconds"));
                if (answer.isPresent()) {
                    within(client, () -> Wire.writeLine(client, answer.get().line()));
                }
            } catch (IOException e) {
                LOG.debug("a client of the local socket went away: {}", e.toString());
            } finally {
                open.remove(client);
                if (place) {
                    places.release();
                }
            }
        });
    }

    /** Empty if the client said nothing: another daemon that looks whether somebody listens. */
    private Optional<Answer> serve(SocketChannel client) throws IOException {
        try {
            String[] line = {null};
            within(client, () -> line[0] = Wire.readLine(client, Wire.MOST_BYTES).orElse(null));
            return Optional.ofNullable(line[0]).map(desk::ask);
        } catch (Wire.NoLine e) {
            return Optional.of(Desk.refused(e.getMessage()));
        }
    }

    private interface Exchange {
        void run() throws IOException;
    }

    /** Unix sockets have no timeout in Java: a client that takes too long is closed by another thread. */
    private void within(SocketChannel client, Exchange exchange) throws IOException {
        ScheduledFuture<?> deadline = deadlines.schedule(() -> shut(client), patienceMs,
                TimeUnit.MILLISECONDS);
        try {
            exchange.run();
        } finally {
            deadline.cancel(false);
        }
    }

    private static void shut(SocketChannel client) {
        try {
            client.close();
        } catch (IOException e) {
            LOG.debug("a client of the local socket did not close: {}", e.toString());
        }
    }

    @Override
    public List<Request> poll(int most) {
        return desk.poll(most);
    }

    @Override
    public void answer(Request request, boolean accepted, String sentence) {
        desk.answer(request, accepted, sentence);
    }

    /** Waits up to a second for last answers to go out. Any thread, but not within a tick. */
    @Override
    public void close() {
        closed.countDown();
        try {
            file.close();
            desk.close();
            places.tryAcquire(MOST_CLIENTS, REST_MS, TimeUnit.MILLISECONDS);
        } catch (IOException e) {
            LOG.warn("the local socket did not close cleanly ({}); its file may be left behind, which the"
                    + " next start removes", e.toString());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        deadlines.shutdownNow();
        open.forEach(TellSocket::shut);
    }
}
