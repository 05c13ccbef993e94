package org.conetender.adapter.gpio;

import com.pi4j.io.gpio.digital.DigitalOutput;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import org.conetender.port.Clock;
import org.conetender.port.Switch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One output with its lease. Three threads meet here: the control thread holds, the keeper lets go,
 * and whoever closes the board retires it. The lock is this output's alone and covers one system call,
 * so turning off waits for no other output, no log and no caller.
 */
final class LeasedSwitch implements Switch {

    private static final Logger LOG = LoggerFactory.getLogger(LeasedSwitch.class);

    private final DigitalOutput output;
    private final Leases leases;
    private final Clock clock;
    /** Whether somebody watches the leases; without that nothing is energised. */
    private final BooleanSupplier watched;
    /** Why the last write failed, empty when it did not. */
    private final AtomicReference<String> trouble = new AtomicReference<>("");
    private boolean retired;

    LeasedSwitch(DigitalOutput output, Leases leases, Clock clock, BooleanSupplier watched) {
        this.output = output;
        this.leases = leases;
        this.clock = clock;
        this.watched = watched;
    }

    @Override
    public String id() {
        return output.id();
    }

    @Override
    public boolean hold(boolean energised, long validForMs) {
        if (validForMs <= 0) {
            throw new IllegalArgumentException(
                id() + ": a lease of " + validForMs + " ms; it must be above 0");
        }
        String before = trouble.get();
        boolean set = energised ? energise(validForMs) : release();
        tell(before, trouble.get());
        return set;
    }

    /** Said when it begins and when it ends, not each tick; outside the lock, for a log may be slow. */
    private void tell(String before, String now) {
        if (!now.isEmpty() && before.isEmpty()) {
            LOG.error("{}", now);
        } else if (now.isEmpty() && !before.isEmpty()) {
            LOG.info("output {} obeys again", id());
        }
    }

    /** The lease stands before the level does: whatever happens in between, it runs out. */
    private synchronized boolean energise(long validForMs) {
        if (retired) {
            return false;
        }
        if (!watched.getAsBoolean()) {
            letGo();
            trouble.set("output " + id()
                + " is not energised, for nobody watches its lease: restart the daemon");
            return false;
        }
        leases.grant(id(), clock.now().monoMs(), validForMs);
        return wrote(output::on);
    }

    /** The safe level, now. Refused only after the end, when the level is safe already. */
    private synchronized boolean release() {
        return !retired && letGo();
    }

    /** For the keeper: lets go if the lease is over at {@code nowMs}. Answers whether it had to. */
    synchronized boolean lapse(long nowMs) {
        if (retired || !leases.due(id(), nowMs)) {
            return false;
        }
        letGo();
        return true;
    }

    /** For closing: the safe level for the last time. Answers why it could not be set, or empty. */
    synchronized String retire() {
        boolean safe = letGo();
        retired = true;
        return safe ? "" : trouble.get();
    }

    private boolean letGo() {
        boolean off = wrote(output::off);
        if (off) {
            leases.drop(id());
        } else {
            leases.overdue(id());
        }
        return off;
    }

    /**
     * Whatever the layer below throws, and not only what it says it throws, is a level that was not set:
     * escaping from here it would keep the outputs that come after this one from being turned off.
     */
    private boolean wrote(Runnable level) {
        try {
            level.run();
            trouble.set("");
            return true;
        } catch (RuntimeException e) {
            trouble.set(e.getMessage() == null ? "output " + id() + ": " + e.getClass().getSimpleName()
                : e.getMessage());
            return false;
        }
    }
}
