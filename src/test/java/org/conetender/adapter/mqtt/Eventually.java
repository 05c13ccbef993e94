package org.conetender.adapter.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for something another process or thread does, with a bound. For adapters' tests only. */
public final class Eventually {

    private static final int EVERY_MS = 10;

    private Eventually() {}

    /** Until it holds, for {@code seconds} at most. */
    public static void holds(String what, int seconds, BooleanSupplier condition) {
        for (int waitedMs = 0; waitedMs < seconds * 1000 && !condition.getAsBoolean(); waitedMs += EVERY_MS) {
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(EVERY_MS));
        }
        assertThat(condition.getAsBoolean()).as(what).isTrue();
    }
}
