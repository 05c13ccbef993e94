package org.conetender.adapter.systemd;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** A service manager's end: a bound Unix datagram socket that hands over what lies in it. */
final class DatagramReceiver implements AutoCloseable {

    private static final MethodHandle SOCKET = handle("socket", FunctionDescriptor.of(ValueLayout.JAVA_INT,
            ValueLayout.JAVA_INT, ValueLayout.JAVA_INT, ValueLayout.JAVA_INT));
    private static final MethodHandle BIND = handle("bind", FunctionDescriptor.of(ValueLayout.JAVA_INT,
            ValueLayout.JAVA_INT, ValueLayout.ADDRESS, ValueLayout.JAVA_INT));
    private static final MethodHandle RECV = handle("recv", FunctionDescriptor.of(ValueLayout.JAVA_LONG,
            ValueLayout.JAVA_INT, ValueLayout.ADDRESS, ValueLayout.JAVA_LONG, ValueLayout.JAVA_INT));
    private static final MethodHandle CLOSE = handle("close", FunctionDescriptor.of(ValueLayout.JAVA_INT,
            ValueLayout.JAVA_INT));

    private static final int DONT_WAIT = 0x40;

    private final int fd;

    DatagramReceiver(String address) throws Throwable {
        fd = (int) SOCKET.invokeExact(1, 2, 0);
        try (Arena arena = Arena.ofConfined()) {
            MemorySegment at = Datagrams.address(arena, address);
            int bound = (int) BIND.invokeExact(fd, at, (int) at.byteSize());
            if (fd < 0 || bound != 0) {
                throw new IllegalStateException("no socket at " + address);
            }
        }
    }

    private static MethodHandle handle(String name, FunctionDescriptor shape) {
        Linker linker = Linker.nativeLinker();
        return linker.downcallHandle(linker.defaultLookup().findOrThrow(name), shape);
    }

    /** A local datagram has arrived when its send returns, so nothing is waited for. */
    List<String> received() throws Throwable {
        List<String> all = new ArrayList<>();
        try (Arena arena = Arena.ofConfined()) {
            MemorySegment buffer = arena.allocate(4096);
            for (;;) {
                long bytes = (long) RECV.invokeExact(fd, buffer, buffer.byteSize(), DONT_WAIT);
                if (bytes < 0) {
                    return all;
                }
                byte[] message = buffer.asSlice(0, bytes).toArray(ValueLayout.JAVA_BYTE);
                all.add(new String(message, StandardCharsets.UTF_8));
            }
        }
    }

    @Override
    public void close() {
        try {
            int closed = (int) CLOSE.invokeExact(fd);
            if (closed != 0) {
                throw new IllegalStateException("the socket did not close");
            }
        } catch (Throwable e) {
            throw new IllegalStateException(e);
        }
    }
}
