package org.conetender.app;

import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import org.conetender.agent.Agent;
import org.conetender.agent.Agents;
import org.conetender.agent.ControlAgent;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The daemon while it runs: each agent on a thread of its own until somebody says stop or one of them
 * fails. An exception in the control or the record agent is a bug: the outputs go to their safe level
 * at once, the watchdog is no longer fed, and the process ends so that its supervisor starts it anew.
 * One in the publish agent is logged and lived with, because the broker is never needed.
 *
 * <p>{@link #run} belongs to one thread; {@link #stop} may come from any, also from a shutdown hook.
 */
public final class Daemon {

    /** Exit code of a daemon that was asked to stop. */
    public static final int ASKED = 0;
    /** Exit code after a bug of our own: EX_SOFTWARE of sysexits(3). */
    public static final int BUG = 70;

    /** The record and the face are looked after this often, ms (guess: a person's patience is longer). */
    private static final long DESK_MS = 80;
    /** How long an agent may take to end its last round, ms: a commit on a slow card (guess). */
    private static final long LAST_ROUND_MS = 5_000;
    /** All of stopping: well within the service manager's TimeoutStopSec of 90 s. */
    private static final long STOPPING_MS = 25_000;
    private static final long MS_NS = 1_000_000;
    /** A publish agent that fails at every round says so at the first and then once in so many. */
    private static final int SAID_EVERY = 1_000;

    private static final Logger LOG = LoggerFactory.getLogger(Daemon.class);

    private final Wiring wiring;
    private final CountDownLatch stop = new CountDownLatch(1);
    private final CountDownLatch closed = new CountDownLatch(1);
    private final AtomicReference<Throwable> bug = new AtomicReference<>();
    private final Map<Agent, Thread> threads = new HashMap<>();
    private long publishFailures;

    public Daemon(Wiring wiring) {
        this.wiring = wiring;
    }

    /** Runs until {@link #stop} or a bug; everything is safe and closed when this returns. */
    public int run() {
        start(wiring.agents().control(), ControlAgent.TICK_MS);
        start(wiring.agents().record(), DESK_MS);
        start(wiring.agents().publish(), DESK_MS);
        try {
            stop.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        end();
        return bug.get() == null ? ASKED : BUG;
    }

    /** Asks for the end and waits until everything is safe and closed, for some seconds at most. */
    public void stop() {
        stop.countDown();
        try {
            if (!closed.await(STOPPING_MS, TimeUnit.MILLISECONDS)) {
                LOG.error("could not stop in good order within {} s; the outputs are safe",
                        STOPPING_MS / 1_000);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void start(Agent agent, long everyMs) {
        Thread t = new Thread(() -> loop(agent, everyMs), "conetender-" + agent.name());
        threads.put(agent, t);
        t.start();
    }

    /** A fixed cadence: a late round is not made up for by hurried ones. */
    private void loop(Agent agent, long everyMs) {
        long dueMs = monoMs();
        while (stop.getCount() > 0) {
            try {
                agent.doWork();
            } catch (Throwable t) {
                failed(agent, t);
            }
            dueMs = Math.max(dueMs + everyMs, monoMs() - everyMs);
            waitUntil(dueMs);
        }
    }

    private long monoMs() {
        return wiring.ground().clock().now().monoMs();
    }

    private void waitUntil(long dueMs) {
        for (long left = dueMs - monoMs(); left > 0 && stop.getCount() > 0; left = dueMs - monoMs()) {
            LockSupport.parkNanos(left * MS_NS);
        }
    }

    private void failed(Agent agent, Throwable t) {
        if (agent == wiring.agents().publish() && t instanceof RuntimeException) {
            if (publishFailures++ % SAID_EVERY == 0) {
                LOG.error("a bug in what is published ({} so far); the cones are looked after all the same."
                        + " Please report it with these lines", publishFailures, t);
            }
            return;
        }
        attempt("the outputs", wiring::outputsSafe);
        if (bug.compareAndSet(null, t)) {
            LOG.error("a bug in the {} agent: every output is in its safe level, the daemon ends and "
                    + "should be started again by its service manager. Look at the cones; please "
                    + "report it with these lines", agent.name(), t);
        }
        stop.countDown();
    }

    /** Control stops, outputs go safe, what was decided is recorded and told, then all is let go. */
    private void end() {
        wiring.ground().supervisor().stopping();
        threads.values().forEach(LockSupport::unpark);
        Agents agents = wiring.agents();
        boolean decided = ended(agents.control());
        attempt("the outputs", wiring::outputsSafe);
        boolean recorded = ended(agents.record());
        boolean told = ended(agents.publish());
        // An agent that hangs must not be run by a second thread; one that only tells keeps no record back.
        if (decided && recorded && bug.get() == null) {
            attempt("the record's last round", agents.record()::doWork);
            attempt("the note of a stop in good order", agents::leave);
            if (told) {
                attempt("the last messages", agents.publish()::doWork);
            }
        }
        attempt("the connections", wiring::close);
        LOG.info("stopped");
        closed.countDown();
    }

    /** One part that fails must not keep the others from being closed. */
    private static void attempt(String what, Runnable work) {
        try {
            work.run();
        } catch (RuntimeException e) {
            LOG.error("while stopping, {}: {}", what, e.getMessage(), e);
        }
    }

    private boolean ended(Agent agent) {
        Thread t = threads.get(agent);
        try {
            t.join(LAST_ROUND_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (t.isAlive()) {
            LOG.warn("{} hangs and is left behind", t.getName());
        }
        return !t.isAlive();
    }
}
