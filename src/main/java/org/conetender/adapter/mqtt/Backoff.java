package org.conetender.adapter.mqtt;

import java.util.random.RandomGenerator;

/**
 * How long to wait before the next attempt: doubling from the first to the longest wait, each shortened
 * by up to a quarter at random, so that many clients do not come back in step after a power cut.
 * One thread: the link keeper's.
 */
final class Backoff {

    /**
     * @param firstWaitMs before the second attempt
     * @param longestWaitMs doubling ends here
     * @param steadyMs a connection that held this long starts the doubling anew
     * @param connectMs an attempt that takes longer has failed
     * @param goodbyeMs closing waits this long at most for what is still to be sent
     */
    record Pace(long firstWaitMs, long longestWaitMs, long steadyMs, long connectMs, long goodbyeMs) {

        /** 1 s doubling to 30 s as dependencies.md §2 asks; the other three are guesses. */
        static final Pace USUAL = new Pace(1_000, 30_000, 10_000, 15_000, 3_000);
    }

    private final Pace pace;
    private final RandomGenerator random;
    private long nextMs;

    Backoff(Pace pace, RandomGenerator random) {
        this.pace = pace;
        this.random = random;
        this.nextMs = pace.firstWaitMs();
    }

    Pace pace() {
        return pace;
    }

    /** The wait before the next attempt, in milliseconds. */
    long nextWaitMs() {
        long waitMs = nextMs - random.nextLong(nextMs / 4 + 1);
        nextMs = Math.min(2 * nextMs, pace.longestWaitMs());
        return waitMs;
    }

    /** The last connection held for {@code heldMs}. Two clients of one id would else fight at full speed. */
    void held(long heldMs) {
        if (heldMs >= pace.steadyMs()) {
            nextMs = pace.firstWaitMs();
        }
    }
}
