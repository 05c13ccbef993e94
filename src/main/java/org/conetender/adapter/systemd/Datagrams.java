package org.conetender.adapter.systemd;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.StructLayout;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.VarHandle;
import java.nio.charset.StandardCharsets;

/**
 * Unix datagram sockets, which Java lacks (control.md §4.2), through the C library. The numbers are
 * Linux's, the same on x86-64 and arm64. Any thread.
 */
final class Datagrams {

    private static final short AF_UNIX = 1;
    private static final int SOCK_DGRAM = 2;
    private static final int SOCK_CLOEXEC = 0x80000;
    private static final int MSG_DONTWAIT = 0x40;
    private static final int MSG_NOSIGNAL = 0x4000;

    /** sizeof(sun_path), unix(7); a path needs room for its closing zero, an abstract name does not. */
    static final int MOST_NAME_BYTES = 108;

    private static final StructLayout STATE = Linker.Option.captureStateLayout();
    private static final VarHandle ERRNO = STATE.varHandle(MemoryLayout.PathElement.groupElement("errno"));

    private static final MethodHandle SOCKET = handle("socket", FunctionDescriptor.of(ValueLayout.JAVA_INT,
            ValueLayout.JAVA_INT, ValueLayout.JAVA_INT, ValueLayout.JAVA_INT));
    private static final MethodHandle SENDTO = handle("sendto", FunctionDescriptor.of(ValueLayout.JAVA_LONG,
            ValueLayout.JAVA_INT, ValueLayout.ADDRESS, ValueLayout.JAVA_LONG, ValueLayout.JAVA_INT,
            ValueLayout.ADDRESS, ValueLayout.JAVA_INT));
    private static final MethodHandle CLOSE = handle("close", FunctionDescriptor.of(ValueLayout.JAVA_INT,
            ValueLayout.JAVA_INT));

    private Datagrams() {}

    static MethodHandle handle(String name, FunctionDescriptor shape) {
        Linker linker = Linker.nativeLinker();
        return linker.downcallHandle(linker.defaultLookup().findOrThrow(name), shape,
                Linker.Option.captureCallState("errno"));
    }

    /**
     * Sends one message without waiting.
     *
     * @param address a path, or {@code @name} for the abstract namespace
     * @return 0, or the system's error number (errno(3))
     */
    static int send(String address, String message) {
        try (Arena arena = Arena.ofConfined()) {
            MemorySegment state = arena.allocate(STATE);
            int fd = (int) SOCKET.invokeExact(state, (int) AF_UNIX, SOCK_DGRAM | SOCK_CLOEXEC, 0);
            if (fd < 0) {
                return (int) ERRNO.get(state, 0L);
            }
            byte[] bytes = message.getBytes(StandardCharsets.UTF_8);
            MemorySegment data = arena.allocateFrom(ValueLayout.JAVA_BYTE, bytes);
            MemorySegment to = address(arena, address);
            long sent = (long) SENDTO.invokeExact(state, fd, data, (long) bytes.length,
                    MSG_DONTWAIT | MSG_NOSIGNAL, to, (int) to.byteSize());
            int error = sent < 0 ? (int) ERRNO.get(state, 0L) : 0;
            int ignored = (int) CLOSE.invokeExact(state, fd);
            return error;
        } catch (Throwable e) {
            throw new IllegalStateException("the C library's sockets cannot be called", e);
        }
    }

    /** struct sockaddr_un of just the needed length: its length is part of an abstract name. */
    static MemorySegment address(Arena arena, String address) {
        boolean named = !address.startsWith("@");
        byte[] name = (named ? address : "\0" + address.substring(1)).getBytes(StandardCharsets.UTF_8);
        MemorySegment to = arena.allocate(Short.BYTES + name.length + (named ? 1L : 0L));
        to.set(ValueLayout.JAVA_SHORT, 0, AF_UNIX);
        MemorySegment.copy(name, 0, to, ValueLayout.JAVA_BYTE, Short.BYTES, name.length);
        return to;
    }

    /** Whether a name is one that {@link #address} can express. */
    static boolean fits(String address) {
        int bytes = address.getBytes(StandardCharsets.UTF_8).length;
        return address.startsWith("@") ? bytes > 1 && bytes <= MOST_NAME_BYTES
                : address.startsWith("/") && bytes < MOST_NAME_BYTES;
    }
}
