package org.conetender.adapter.mqtt;

import java.util.concurrent.atomic.AtomicLong;
import org.conetender.core.unit.Moment;
import org.conetender.port.Clock;

/** A clock moved by hand. */
final class HandClock implements Clock {

    private final AtomicLong monoMs = new AtomicLong(1_000_000);

    @Override
    public Moment now() {
        return new Moment("boot", monoMs.get(), 1_700_000_000_000L + monoMs.get(), true);
    }

    void advanceMs(long ms) {
        monoMs.addAndGet(ms);
    }
}
