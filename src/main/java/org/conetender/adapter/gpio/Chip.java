package org.conetender.adapter.gpio;

import static java.lang.foreign.ValueLayout.JAVA_INT;
import static java.lang.foreign.ValueLayout.JAVA_LONG;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.adapter.gpio.Lines.Line;

/**
 * One GPIO chip. The device is open only while a line is requested from it: a request has a descriptor
 * of its own and outlives it. Every line is a request of its own, so that one busy line costs no other.
 */
final class Chip {

    /** What other programs see as the holder of our lines. */
    static final String CONSUMER = "conetender";

    private final Kernel kernel;
    private final String path;

    Chip(Kernel kernel, String path) {
        this.kernel = kernel;
        this.path = path;
    }

    /**
     * Takes a line as output, at a level from its first instant: the level travels inside the request,
     * so no other level ever stands on the wire in between.
     */
    RequestedLine output(Line line, boolean active) {
        return request(line, Abi.OUTPUT, active);
    }

    /** Takes a line as input. */
    RequestedLine input(Line line) {
        return request(line, Abi.INPUT, false);
    }

    private RequestedLine request(Line line, long direction, boolean active) {
        int device = kernel.open(path);
        if (device == -Errno.ENOENT) {
            throw new GpioException("there is no GPIO chip " + path + ", which 'chip' in [gpio] of the"
                + " configuration asks for; " + present() + ".");
        }
        if (device < 0) {
            throw refused(line, "cannot open it: " + Errno.advice(-device));
        }
        try (Arena arena = Arena.ofConfined()) {
            checkCount(arena, device, line);
            MemorySegment request = arena.allocate(Abi.LINE_REQUEST);
            fill(request, line, direction, active);
            int answer = kernel.ioctl(device, Abi.GET_LINE, request);
            if (answer < 0) {
                throw refused(line, holder(arena, device, line, -answer) + Errno.advice(-answer));
            }
            int descriptor = request.get(JAVA_INT, Abi.at(Abi.LINE_REQUEST, "fd"));
            return new RequestedLine(kernel, descriptor, where(line));
        } finally {
            kernel.close(device);
        }
    }

    private void checkCount(Arena arena, int device, Line line) {
        MemorySegment info = arena.allocate(Abi.CHIP_INFO);
        int answer = kernel.ioctl(device, Abi.GET_CHIP_INFO, info);
        if (answer < 0) {
            throw refused(line, "cannot ask it: " + Errno.advice(-answer));
        }
        int count = info.get(JAVA_INT, Abi.at(Abi.CHIP_INFO, "lines"));
        if (line.offset() >= count) {
            throw refused(line, "the chip '" + Abi.text(info, Abi.CHIP_INFO, "label") + "' has lines 0 to "
                + (count - 1) + " only: correct the line, or the chip if another one was meant"
                + " ('gpiodetect')");
        }
    }

    /** The request for one line; everything not set here must be zero, and a fresh segment is. */
    private static void fill(MemorySegment request, Line line, long direction, boolean active) {
        request.set(JAVA_INT, Abi.at(Abi.LINE_REQUEST, "offsets"), line.offset());
        request.asSlice(Abi.at(Abi.LINE_REQUEST, "consumer"), Abi.NAME_BYTES).setString(0, CONSUMER);
        request.set(JAVA_INT, Abi.at(Abi.LINE_REQUEST, "num_lines"), 1);
        request.set(JAVA_LONG, Abi.at(Abi.LINE_REQUEST, "config", "flags"),
            direction | (line.activeLow() ? Abi.ACTIVE_LOW : 0) | biasFlag(line));
        if (direction == Abi.OUTPUT) {
            request.set(JAVA_INT, Abi.at(Abi.LINE_REQUEST, "config", "num_attrs"), 1);
            request.set(JAVA_INT, Abi.at(Abi.LINE_REQUEST, "config", "attrs", "[0]", "attr", "id"),
                Abi.ATTR_OUTPUT_VALUES);
            request.set(JAVA_LONG, Abi.at(Abi.LINE_REQUEST, "config", "attrs", "[0]", "attr", "values"),
                active ? 1 : 0);
            request.set(JAVA_LONG, Abi.at(Abi.LINE_REQUEST, "config", "attrs", "[0]", "mask"), 1);
        }
    }

    private static long biasFlag(Line line) {
        return switch (line.bias()) {
            case AS_IS -> 0;
            case DISABLED -> Abi.BIAS_DISABLED;
            case PULL_UP -> Abi.BIAS_PULL_UP;
            case PULL_DOWN -> Abi.BIAS_PULL_DOWN;
        };
    }

    /** Who has a busy line, where the kernel says so; empty otherwise. */
    private String holder(Arena arena, int device, Line line, int error) {
        if (error != Errno.EBUSY) {
            return "";
        }
        MemorySegment info = arena.allocate(Abi.LINE_INFO);
        info.set(JAVA_INT, Abi.at(Abi.LINE_INFO, "offset"), line.offset());
        int answer = kernel.ioctl(device, Abi.GET_LINE_INFO, info);
        String consumer = answer < 0 ? "" : Abi.text(info, Abi.LINE_INFO, "consumer");
        return consumer.isEmpty() ? "" : "'" + consumer + "' has it; ";
    }

    /** The chips that are there, to choose from. */
    private String present() {
        try (Stream<Path> beside = Files.list(Path.of(path).toAbsolutePath().getParent())) {
            String chips = beside.filter(p -> p.getFileName().toString().startsWith("gpiochip"))
                .map(Path::toString).sorted().collect(Collectors.joining(", "));
            return chips.isEmpty() ? "this machine has none" : "this machine has " + chips
                + ": give the one that the relays are wired to";
        } catch (IOException e) {
            return "list the chips with 'gpiodetect' (package gpiod)";
        }
    }

    private GpioException refused(Line line, String why) {
        return new GpioException(where(line) + ": " + why + ".");
    }

    private String where(Line line) {
        return path + ", line " + line.offset() + " (" + line.id() + ")";
    }
}
