package org.conetender.adapter.gpio;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.VarHandle;

/**
 * The C library of a 64-bit Linux (amd64, arm64), called without native code of our own.
 *
 * <p>Every call has a confined arena, freed when it returns: nothing is left to the collector, so a
 * process that runs for months does not grow (dependencies.md §1 has the report of one that did).
 */
final class Libc implements Kernel {

    /** O_RDWR | O_CLOEXEC of asm-generic/fcntl.h, the same on amd64 and arm64. */
    private static final int READ_WRITE_CLOEXEC = 0x2 | 0x80000;
    /** EINTR of asm-generic/errno-base.h: a signal came first; the call is made again. */
    private static final int INTERRUPTED = 4;

    private static final Linker LINKER = Linker.nativeLinker();
    private static final Linker.Option ERRNO = Linker.Option.captureCallState("errno");
    private static final MemoryLayout STATE = Linker.Option.captureStateLayout();
    private static final VarHandle ERRNO_OF = STATE.varHandle(MemoryLayout.PathElement.groupElement("errno"));

    // open and ioctl are variadic in C; saying so keeps the call right on every ABI.
    private static final MethodHandle OPEN = bind("open", FunctionDescriptor.of(ValueLayout.JAVA_INT,
        ValueLayout.ADDRESS, ValueLayout.JAVA_INT), ERRNO, Linker.Option.firstVariadicArg(2));
    private static final MethodHandle IOCTL = bind("ioctl", FunctionDescriptor.of(ValueLayout.JAVA_INT,
        ValueLayout.JAVA_INT, ValueLayout.JAVA_LONG, ValueLayout.ADDRESS),
        ERRNO, Linker.Option.firstVariadicArg(2));
    private static final MethodHandle CLOSE = bind("close", FunctionDescriptor.of(ValueLayout.JAVA_INT,
        ValueLayout.JAVA_INT), ERRNO);

    private static MethodHandle bind(String name, FunctionDescriptor shape, Linker.Option... options) {
        return LINKER.downcallHandle(LINKER.defaultLookup().findOrThrow(name), shape, options);
    }

    @Override
    public int open(String path) {
        try (Arena arena = Arena.ofConfined()) {
            MemorySegment name = arena.allocateFrom(path);
            return call(arena, state -> (int) OPEN.invokeExact(state, name, READ_WRITE_CLOEXEC));
        }
    }

    @Override
    public int ioctl(int descriptor, long operation, MemorySegment argument) {
        try (Arena arena = Arena.ofConfined()) {
            return call(arena, state -> (int) IOCTL.invokeExact(state, descriptor, operation, argument));
        }
    }

    /** Not repeated after a signal: Linux has closed the descriptor by then, and it may be reused. */
    @Override
    public int close(int descriptor) {
        try (Arena arena = Arena.ofConfined()) {
            return once(arena.allocate(STATE), state -> (int) CLOSE.invokeExact(state, descriptor));
        }
    }

    private interface Call {
        int with(MemorySegment state) throws Throwable;
    }

    private static int call(Arena arena, Call call) {
        MemorySegment state = arena.allocate(STATE);
        int answer = once(state, call);
        while (answer == -INTERRUPTED) {
            answer = once(state, call);
        }
        return answer;
    }

    private static int once(MemorySegment state, Call call) {
        try {
            int answer = call.with(state);
            return answer >= 0 ? answer : -(int) ERRNO_OF.get(state, 0L);
        } catch (Throwable impossible) {
            throw new AssertionError("a system call cannot throw", impossible);
        }
    }
}
