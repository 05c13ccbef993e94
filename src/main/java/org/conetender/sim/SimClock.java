package org.conetender.sim;

import org.conetender.core.unit.Moment;
import org.conetender.port.Clock;

/**
 * Simulated time: one count of milliseconds that only {@link World#step} moves on, and the two clocks that
 * a computer would make of it. Single-threaded, like everything in this package.
 */
public final class SimClock implements Clock {

    private final String family;
    private final long startWallMs;
    private long elapsedMs;
    private long bootAtMs;
    private int boots = 1;
    private long wallErrorMs;
    private boolean trusted = true;
    private boolean stopped;

    /**
     * @param seed gives the boot ids their name
     * @param startWallMs true wall time at the beginning, milliseconds since 1970-01-01 UTC
     */
    public SimClock(long seed, long startWallMs) {
        this.family = Long.toHexString(Seeds.of(seed, "boot").nextLong());
        this.startWallMs = startWallMs;
    }

    @Override
    public Moment now() {
        return new Moment("boot-" + family + "-" + boots, elapsedMs - bootAtMs,
                trueWallMs() + wallErrorMs, trusted);
    }

    /** Milliseconds since the world began; never jumps, whatever the computer thinks. */
    public long elapsedMs() {
        return elapsedMs;
    }

    /** What an honest watch shows, milliseconds since 1970-01-01 UTC: people in the room go by it. */
    public long trueWallMs() {
        return startWallMs + elapsedMs;
    }

    /** The world's count for a monotonic time of the present boot, milliseconds. */
    public long elapsedOf(long monoMs) {
        return monoMs + bootAtMs;
    }

    /** Lets time pass. @param ms not negative */
    public void advance(long ms) {
        if (ms < 0) {
            throw new IllegalArgumentException("time cannot go back by " + -ms + " ms");
        }
        elapsedMs += ms;
    }

    /** The computer starts again: a new boot id, and monotonic time from zero. */
    public void reboot() {
        boots++;
        bootAtMs = elapsedMs;
    }

    /** The computer's wall clock jumps by this many milliseconds, either way; monotonic time does not. */
    public void stepWall(long ms) {
        wallErrorMs += ms;
    }

    /** The same without a battery: the wall clock goes on from where it stopped, and nobody vouches. */
    void rebootFrom(long stoppedWallMs) {
        reboot();
        wallErrorMs = stoppedWallMs - trueWallMs();
        trusted = false;
        stopped = true;
    }

    /** The network sets it right. */
    void network() {
        wallErrorMs = 0;
        trusted = true;
        stopped = false;
    }

    /** Whether the kernel says that the wall clock is synchronised; one that had stopped was set for that. */
    public void trust(boolean synchronised) {
        if (synchronised && stopped) {
            network();
        }
        trusted = synchronised;
    }
}
