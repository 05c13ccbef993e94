package org.conetender.adapter.gpio;

import static java.lang.foreign.MemoryLayout.PathElement.groupElement;
import static java.lang.foreign.MemoryLayout.PathElement.sequenceElement;
import static java.lang.foreign.MemoryLayout.sequenceLayout;
import static java.lang.foreign.MemoryLayout.structLayout;
import static java.lang.foreign.ValueLayout.JAVA_BYTE;
import static java.lang.foreign.ValueLayout.JAVA_INT;
import static java.lang.foreign.ValueLayout.JAVA_LONG;

import java.lang.foreign.GroupLayout;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.StructLayout;

/**
 * The kernel's GPIO character device, ABI v2, as {@code linux/gpio.h} has it (kernel 5.10 and later).
 * All numbers here are that header's; the layouts are the same on amd64 and arm64, and nothing in
 * them is padded implicitly. Levels are <em>logical</em>: 1 is active, whatever the wire does.
 */
final class Abi {

    /** GPIO_MAX_NAME_SIZE, with the closing zero. */
    static final int NAME_BYTES = 32;
    /** GPIO_V2_LINES_MAX. */
    static final int LINES_MAX = 64;
    /** GPIO_V2_LINE_NUM_ATTRS_MAX. */
    static final int ATTRS_MAX = 10;

    // enum gpio_v2_line_flag
    static final long ACTIVE_LOW = 1L << 1;
    static final long INPUT = 1L << 2;
    static final long OUTPUT = 1L << 3;
    static final long BIAS_PULL_UP = 1L << 8;
    static final long BIAS_PULL_DOWN = 1L << 9;
    static final long BIAS_DISABLED = 1L << 10;

    /** GPIO_V2_LINE_ATTR_ID_OUTPUT_VALUES: the attribute that carries the level into the request. */
    static final int ATTR_OUTPUT_VALUES = 2;

    static final StructLayout CHIP_INFO = structLayout(
        text("name"), text("label"), JAVA_INT.withName("lines"));

    static final StructLayout LINE_VALUES = structLayout(
        JAVA_LONG.withName("bits"), JAVA_LONG.withName("mask"));

    /** The header's union of flags, values and debounce period, of which only values are used here. */
    static final StructLayout LINE_ATTRIBUTE = structLayout(
        JAVA_INT.withName("id"), JAVA_INT.withName("padding"), JAVA_LONG.withName("values"));

    static final StructLayout LINE_CONFIG_ATTRIBUTE = structLayout(
        LINE_ATTRIBUTE.withName("attr"), JAVA_LONG.withName("mask"));

    static final StructLayout LINE_CONFIG = structLayout(
        JAVA_LONG.withName("flags"), JAVA_INT.withName("num_attrs"),
        sequenceLayout(5, JAVA_INT).withName("padding"),
        sequenceLayout(ATTRS_MAX, LINE_CONFIG_ATTRIBUTE).withName("attrs"));

    static final StructLayout LINE_REQUEST = structLayout(
        sequenceLayout(LINES_MAX, JAVA_INT).withName("offsets"), text("consumer"),
        LINE_CONFIG.withName("config"),
        JAVA_INT.withName("num_lines"), JAVA_INT.withName("event_buffer_size"),
        sequenceLayout(5, JAVA_INT).withName("padding"), JAVA_INT.withName("fd"));

    static final StructLayout LINE_INFO = structLayout(
        text("name"), text("consumer"), JAVA_INT.withName("offset"), JAVA_INT.withName("num_attrs"),
        JAVA_LONG.withName("flags"), sequenceLayout(ATTRS_MAX, LINE_ATTRIBUTE).withName("attrs"),
        sequenceLayout(4, JAVA_INT).withName("padding"));

    // The calls, by number, argument and direction: the kernel reads (W), writes (R), or both.
    static final long GET_CHIP_INFO = ioctl(2, 0x01, CHIP_INFO);
    static final long GET_LINE_INFO = ioctl(3, 0x05, LINE_INFO);
    static final long GET_LINE = ioctl(3, 0x07, LINE_REQUEST);
    static final long GET_VALUES = ioctl(3, 0x0E, LINE_VALUES);
    static final long SET_VALUES = ioctl(3, 0x0F, LINE_VALUES);

    private Abi() {}

    /** asm-generic/ioctl.h: direction in bits 30 and 31, then 14 bits of size, type 0xB4, number. */
    private static long ioctl(long direction, int number, MemoryLayout argument) {
        return direction << 30 | argument.byteSize() << 16 | 0xB4 << 8 | number;
    }

    private static MemoryLayout text(String name) {
        return sequenceLayout(NAME_BYTES, JAVA_BYTE).withName(name);
    }

    /** Where a field lies, in bytes from the start: {@code at(LINE_REQUEST, "config", "flags")}. */
    static long at(GroupLayout layout, String... path) {
        MemoryLayout.PathElement[] steps = new MemoryLayout.PathElement[path.length];
        for (int i = 0; i < path.length; i++) {
            steps[i] = path[i].equals("[0]") ? sequenceElement(0) : groupElement(path[i]);
        }
        return layout.byteOffset(steps);
    }

    /** A fixed-size text field, up to its closing zero. */
    static String text(MemorySegment struct, GroupLayout layout, String field) {
        return struct.asSlice(at(layout, field), NAME_BYTES).getString(0);
    }
}
