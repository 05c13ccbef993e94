package org.conetender.adapter.clock;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.port.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Linux's clocks. {@code monoMs} is CLOCK_MONOTONIC, so that the times of two processes of one boot
 * compare: a daemon that was killed and restarted knows exactly how long it was away. HotSpot's
 * {@code System.nanoTime} is that clock, with the boot as its origin; Java does not promise the origin,
 * so it is compared with the kernel's own answer at the start, and that one is used if they differ.
 *
 * <p>Whether the wall clock can be believed is the kernel's own flag, which timesyncd, chrony and others
 * keep: set once the time was fetched, and taken back when the error may have grown beyond 16 s. Trust begins
 * only when the kernel's bound of that error is small ({@link Boots#SKEW_MS}), since it is then that a boot
 * is placed in time; without the network wall and monotonic clock go on alike.
 *
 * <p>Any thread.
 */
public final class LinuxClock implements Clock {

    private static final Logger LOG = LoggerFactory.getLogger(LinuxClock.class);

    private static final Path BOOT_ID = Path.of("/proc/sys/kernel/random/boot_id");

    /** The kernel's flag changes a few times a day; asked at most this often, ms (guess). */
    static final long TRUST_MS = 10_000;

    /** Two readings of one clock, taken after each other, differ by less: guess, a loaded machine. */
    private static final long SAME_NS = 5_000_000_000L;

    private static final long MS_NS = 1_000_000;

    /** A wall clock that moved by more against the boot's was set: the flag is asked at once, ms (guess). */
    private static final long SET_MS = 500;

    /** @param apartMs by which the wall clock was ahead of the boot's */
    private record Trust(boolean trusted, long askedMonoMs, long apartMs) {}

    private final String boot;
    private final LongSupplier monotonicNs;
    private final LongSupplier wallMs;
    private final Supplier<Kernel.Wall> kernel;
    private volatile Trust trust;

    LinuxClock(String boot, LongSupplier monotonicNs, LongSupplier wallMs,
               Supplier<Kernel.Wall> kernel) {
        this.boot = boot;
        this.monotonicNs = monotonicNs;
        this.wallMs = wallMs;
        this.kernel = kernel;
        long monoMs = monotonicNs.getAsLong() / MS_NS;
        this.trust = asked(monoMs, wallMs.getAsLong(), false);
    }

    /** @throws IllegalStateException if this is not a Linux that shows its boot id */
    public LinuxClock() {
        this(bootId(BOOT_ID), sinceBoot(System::nanoTime, LinuxClock::kernelNs), System::currentTimeMillis,
                Kernel::wall);
    }

    @Override
    public Moment now() {
        long monoMs = monotonicNs.getAsLong() / MS_NS;
        long wall = wallMs.getAsLong();
        return new Moment(boot, monoMs, wall, trusted(monoMs, wall));
    }

    /** @param before whether it was trusted, and not set since */
    private Trust asked(long monoMs, long wall, boolean before) {
        Kernel.Wall w = kernel.get();
        return new Trust(w.synchronised() && (before || w.maxErrorMs() <= Boots.SKEW_MS), monoMs,
                wall - monoMs);
    }

    /** Two threads may both ask; they get the same answer. */
    private boolean trusted(long monoMs, long wall) {
        Trust t = trust;
        boolean set = Math.abs(wall - monoMs - t.apartMs()) >= SET_MS;
        if (monoMs - t.askedMonoMs() < TRUST_MS && !set) {
            return t.trusted();
        }
        Trust fresh = asked(monoMs, wall, t.trusted() && !set);
        trust = fresh;
        return fresh.trusted();
    }

    static String bootId(Path file) {
        try {
            return Files.readString(file).strip();
        } catch (IOException e) {
            throw new IllegalStateException("cannot tell this boot from the one before it: " + file
                    + " cannot be read (" + e + "). conetender needs Linux with /proc mounted", e);
        }
    }

    /** The quicker of the two if it really counts from the boot, else the kernel's. */
    static LongSupplier sinceBoot(LongSupplier java, LongSupplier kernel) {
        if (Math.abs(java.getAsLong() - kernel.getAsLong()) < SAME_NS) {
            return java;
        }
        LOG.info("this Java's clock does not count from the boot; asking the kernel instead");
        return kernel;
    }

    private static long kernelNs() {
        return Kernel.monotonicNs().orElseThrow(
                () -> new IllegalStateException("the kernel refuses to tell CLOCK_MONOTONIC"));
    }
}
