package org.conetender.adapter.gpio;

import java.lang.foreign.MemorySegment;

/**
 * The three system calls this adapter needs. Each answers what the kernel did, or the negated error
 * number. Any thread; an ioctl on a board's own lines returns in microseconds, on an expander it lasts
 * as long as that one's bus.
 */
interface Kernel {

    /** Opens a device for reading and writing; the descriptor is not handed to child processes. */
    int open(String path);

    /** One ioctl; {@code argument} is read and overwritten as {@code operation} says. */
    int ioctl(int descriptor, long operation, MemorySegment argument);

    /** Gives a descriptor back. For a line request this releases its lines. */
    int close(int descriptor);
}
