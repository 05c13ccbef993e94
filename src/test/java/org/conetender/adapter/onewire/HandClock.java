package org.conetender.adapter.onewire;

import org.conetender.core.unit.Moment;
import org.conetender.port.Clock;

/** A clock that the test moves by hand; it may also move by itself a little at each look. */
final class HandClock implements Clock {

    private long monoMs = 100_000;
    private final long stepMs;

    HandClock(long stepMs) {
        this.stepMs = stepMs;
    }

    synchronized void pass(long ms) {
        monoMs += ms;
    }

    synchronized long monoMs() {
        return monoMs;
    }

    @Override
    public synchronized Moment now() {
        monoMs += stepMs;
        return new Moment("boot-1", monoMs, monoMs, false);
    }
}
