package org.conetender.adapter.gpio;

import java.util.concurrent.atomic.AtomicLong;
import org.conetender.core.unit.Moment;
import org.conetender.port.Clock;

/** A clock that stands until the test moves it. Any thread. */
final class HandClock implements Clock {

    private final AtomicLong monoMs = new AtomicLong(1_000);

    void passMs(long ms) {
        monoMs.addAndGet(ms);
    }

    @Override
    public Moment now() {
        return new Moment("boot-1", monoMs.get(), 0, false);
    }
}
