package org.conetender.adapter.gpio;

import java.util.concurrent.locks.LockSupport;

/**
 * The thread that lets expired holds go, and does nothing else: it logs nothing, takes no lock but
 * an output's own, and waits for nobody. If it should ever die, everything is let go first and
 * nothing can be energised again.
 */
final class LeaseKeeper {

    /** How often it looks, in ns: 50 ms, a small part of the 4 s lease of style.md (guess). */
    private static final long LOOK_NS = 50_000_000L;

    private final Runnable sweep;
    private final Runnable allSafe;
    private final Thread thread;
    private volatile boolean stopping;

    LeaseKeeper(Runnable sweep, Runnable allSafe) {
        this.sweep = sweep;
        this.allSafe = allSafe;
        this.thread = Thread.ofPlatform().name("gpio-leases").daemon(true)
            .priority(Thread.MAX_PRIORITY).unstarted(this::keep);
    }

    void start() {
        thread.start();
    }

    boolean alive() {
        return thread.isAlive() && !stopping;
    }

    /** Ends it once the outputs are safe. Does not wait: an unlocked output delays nobody. */
    void stop() {
        stopping = true;
        LockSupport.unpark(thread);
    }

    private void keep() {
        try {
            while (!stopping) {
                sweep.run();
                LockSupport.parkNanos(LOOK_NS);
            }
        } finally {
            if (!stopping) {
                stopping = true;
                allSafe.run();
            }
        }
    }
}
