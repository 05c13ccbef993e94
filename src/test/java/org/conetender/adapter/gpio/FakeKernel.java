package org.conetender.adapter.gpio;

import static java.lang.foreign.ValueLayout.JAVA_INT;
import static java.lang.foreign.ValueLayout.JAVA_LONG;

import java.lang.foreign.MemorySegment;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The kernel's side of the character device, read by fixed byte offsets counted by hand from
 * linux/gpio.h and not by {@link Abi}, so that a wrong layout there cannot agree with itself here.
 * It keeps the level on each wire and writes down what it was asked.
 */
final class FakeKernel implements Kernel {

    static final String CHIP = "/dev/gpiochip0";
    private static final int DEVICE = 3;

    /** One line request as it arrived. */
    record Request(int offset, String consumer, long flags, int attributes, int attributeId,
                   long values, long mask) {}

    final List<Request> requests = new ArrayList<>();
    final List<String> log = new ArrayList<>();
    /** Level on the wire by line: true is high. */
    final Map<Integer, Boolean> wire = new HashMap<>();
    /** Lines that another program has. */
    final Map<Integer, String> busy = new HashMap<>();
    /** Error number that every set or get of a line answers with. */
    final Map<Integer, Integer> failing = new HashMap<>();
    private final Map<Integer, Request> open = new HashMap<>();
    private final int lines;
    int openError;
    private int next = 10;

    FakeKernel(int lines) {
        this.lines = lines;
    }

    /** Descriptors that were not given back. */
    int stillOpen() {
        return open.size();
    }

    @Override
    public int open(String path) {
        return openError != 0 ? -openError : path.equals(CHIP) ? DEVICE : -Errno.ENOENT;
    }

    @Override
    public int ioctl(int descriptor, long operation, MemorySegment argument) {
        return switch ((int) operation) {
            case 0x8044B401 -> chipInfo(argument);
            case 0xC100B405 -> lineInfo(argument);
            case 0xC250B407 -> lineRequest(argument);
            case 0xC010B40E -> get(open.get(descriptor), argument);
            case 0xC010B40F -> set(open.get(descriptor), argument);
            default -> -Errno.ENOTTY;
        };
    }

    @Override
    public int close(int descriptor) {
        Request gone = open.remove(descriptor);
        if (gone != null) {
            log.add("release " + gone.offset());
        }
        return 0;
    }

    private int chipInfo(MemorySegment info) {
        info.asSlice(32).setString(0, "pinctrl-bcm2711");
        info.set(JAVA_INT, 64, lines);
        return 0;
    }

    private int lineInfo(MemorySegment info) {
        info.asSlice(32).setString(0, busy.getOrDefault(info.get(JAVA_INT, 64), ""));
        return 0;
    }

    private int lineRequest(MemorySegment r) {
        Request request = new Request(r.get(JAVA_INT, 0), r.asSlice(256).getString(0), r.get(JAVA_LONG, 288),
            r.get(JAVA_INT, 296), r.get(JAVA_INT, 320), r.get(JAVA_LONG, 328), r.get(JAVA_LONG, 336));
        if (r.get(JAVA_INT, 560) != 1 || request.offset() >= lines) {
            return -Errno.EINVAL;
        }
        if (busy.containsKey(request.offset())) {
            return -Errno.EBUSY;
        }
        requests.add(request);
        open.put(next, request);
        if ((request.flags() & 8) != 0) {
            // As the kernel does: an output without the attribute starts inactive.
            boolean given = request.attributes() == 1 && request.attributeId() == 2;
            drive(request, given && (request.values() & request.mask() & 1) == 1);
        }
        r.set(JAVA_INT, 588, next++);
        return 0;
    }

    private int get(Request line, MemorySegment values) {
        if (failing.containsKey(line.offset())) {
            return -failing.get(line.offset());
        }
        boolean high = wire.getOrDefault(line.offset(), false);
        values.set(JAVA_LONG, 0, high != activeLow(line) ? 1 : 0);
        return 0;
    }

    private int set(Request line, MemorySegment values) {
        if (failing.containsKey(line.offset())) {
            return -failing.get(line.offset());
        }
        drive(line, (values.get(JAVA_LONG, 0) & values.get(JAVA_LONG, 8) & 1) == 1);
        return 0;
    }

    private void drive(Request line, boolean active) {
        boolean high = active != activeLow(line);
        wire.put(line.offset(), high);
        log.add((high ? "high " : "low ") + line.offset());
    }

    private static boolean activeLow(Request line) {
        return (line.flags() & 2) != 0;
    }
}
