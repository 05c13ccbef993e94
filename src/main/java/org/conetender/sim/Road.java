package org.conetender.sim;

/** The way to the broker: how long a message is on it. Belongs to the world; one thread. */
final class Road {

    /** As long as a message is on its way over a slow link, ms (guess: a poor mobile connection). */
    static final long SLOW_MS = 20_000;

    private boolean slow;
    private long nowMs;

    /** Makes it slow, or quick again; what is on it already arrives no sooner. */
    void slow(boolean isSlow) {
        slow = isSlow;
    }

    /** @param elapsedMs the world's time */
    void step(long elapsedMs) {
        nowMs = elapsedMs;
    }

    /** When a message that sets out now arrives, ms of the world's time. */
    long arrivesMs() {
        return nowMs + (slow ? SLOW_MS : 0);
    }

    /** Whether what arrives then is there now. */
    boolean there(long atMs) {
        return atMs <= nowMs;
    }
}
