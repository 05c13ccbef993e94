package org.conetender.adapter.gpio;

import static java.lang.foreign.ValueLayout.JAVA_LONG;

import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;

/**
 * A line the kernel has given us. Any thread, one at a time: the owner locks. After {@link #release}
 * the descriptor number may belong to something else, so every later use is refused here.
 */
final class RequestedLine {

    private final Kernel kernel;
    private final int descriptor;
    private final String where;
    private boolean released;

    RequestedLine(Kernel kernel, int descriptor, String where) {
        this.kernel = kernel;
        this.descriptor = descriptor;
        this.where = where;
    }

    /** Sets the logical level. */
    void set(boolean active) {
        exchange(Abi.SET_VALUES, active ? 1 : 0, "cannot set it");
    }

    /** Reads the logical level. */
    boolean get() {
        return (exchange(Abi.GET_VALUES, 0, "cannot read it") & 1) == 1;
    }

    /** Gives the line back; what it does then is its driver's affair (board.md), so set it safe before. */
    void release() {
        if (!released) {
            released = true;
            kernel.close(descriptor);
        }
    }

    private long exchange(long operation, long bits, String failure) {
        if (released) {
            throw new GpioException(where + ": it is released; nothing more can be set or read.");
        }
        try (Arena arena = Arena.ofConfined()) {
            MemorySegment values = arena.allocate(Abi.LINE_VALUES);
            values.set(JAVA_LONG, Abi.at(Abi.LINE_VALUES, "bits"), bits);
            values.set(JAVA_LONG, Abi.at(Abi.LINE_VALUES, "mask"), 1);
            int answer = kernel.ioctl(descriptor, operation, values);
            if (answer < 0) {
                throw new GpioException(where + ": " + failure + ": " + Errno.advice(-answer) + ".");
            }
            return values.get(JAVA_LONG, Abi.at(Abi.LINE_VALUES, "bits"));
        }
    }
}
