package org.conetender.adapter.clock;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.util.OptionalLong;

/**
 * Two questions to the C library: {@code clock_gettime} and {@code adjtimex}. Layouts are those of
 * 64-bit Linux, which are the same on x86-64 and arm64. Any thread.
 */
final class Kernel {

    /** The kernel's number of CLOCK_MONOTONIC (clock_gettime(2)). */
    private static final int CLOCK_MONOTONIC = 1;

    /** sizeof(struct timex) on 64-bit Linux, where two of its fields lie, and two values (adjtimex(2)). */
    private static final long TIMEX_BYTES = 208;
    private static final long MAX_ERROR_AT = 24;
    private static final long STATUS_AT = 40;
    private static final int STA_UNSYNC = 0x40;
    private static final int TIME_ERROR = 5;

    private static final long US_PER_MS = 1_000;
    private static final long SECOND_NS = 1_000_000_000L;

    private static final MethodHandle CLOCK_GETTIME = handle("clock_gettime", FunctionDescriptor.of(
            ValueLayout.JAVA_INT, ValueLayout.JAVA_INT, ValueLayout.ADDRESS));
    private static final MethodHandle ADJTIMEX = handle("adjtimex", FunctionDescriptor.of(
            ValueLayout.JAVA_INT, ValueLayout.ADDRESS));

    private Kernel() {}

    private static MethodHandle handle(String name, FunctionDescriptor shape) {
        Linker linker = Linker.nativeLinker();
        return linker.downcallHandle(linker.defaultLookup().findOrThrow(name), shape);
    }

    /** CLOCK_MONOTONIC in nanoseconds since boot; empty when the kernel refuses. */
    static OptionalLong monotonicNs() {
        try (Arena arena = Arena.ofConfined()) {
            MemorySegment time = arena.allocate(ValueLayout.JAVA_LONG, 2);
            if ((int) CLOCK_GETTIME.invokeExact(CLOCK_MONOTONIC, time) != 0) {
                return OptionalLong.empty();
            }
            return OptionalLong.of(time.getAtIndex(ValueLayout.JAVA_LONG, 0) * SECOND_NS
                    + time.getAtIndex(ValueLayout.JAVA_LONG, 1));
        } catch (Throwable e) {
            throw new IllegalStateException("clock_gettime cannot be called", e);
        }
    }

    /**
     * What the kernel says of its wall clock.
     *
     * @param synchronised something keeps it right  @param maxErrorMs by which it may be off all the same
     */
    record Wall(boolean synchronised, long maxErrorMs) {}

    /** Reads only: modes is 0. */
    static Wall wall() {
        try (Arena arena = Arena.ofConfined()) {
            MemorySegment timex = arena.allocate(TIMEX_BYTES, Long.BYTES);
            int state = (int) ADJTIMEX.invokeExact(timex);
            return new Wall(synchronised(state, timex.get(ValueLayout.JAVA_INT, STATUS_AT)),
                    timex.get(ValueLayout.JAVA_LONG, MAX_ERROR_AT) / US_PER_MS);
        } catch (Throwable e) {
            throw new IllegalStateException("adjtimex cannot be called", e);
        }
    }

    /** A refused call (a sandbox without adjtimex gives -1) counts as not synchronised. */
    static boolean synchronised(int state, int status) {
        return state >= 0 && state != TIME_ERROR && (status & STA_UNSYNC) == 0;
    }
}
