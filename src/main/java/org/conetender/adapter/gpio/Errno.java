package org.conetender.adapter.gpio;

/** What the kernel's error numbers usually mean here, and what to do (asm-generic/errno-base.h). */
final class Errno {

    static final int EPERM = 1;
    static final int ENOENT = 2;
    static final int ENXIO = 6;
    static final int EACCES = 13;
    static final int EBUSY = 16;
    static final int ENODEV = 19;
    static final int EINVAL = 22;
    static final int ENOTTY = 25;

    private Errno() {}

    /** The end of a sentence that began with what was asked. {@code error} is positive. */
    static String advice(int error) {
        return switch (error) {
            case EACCES, EPERM -> "this user may not: add the daemon's user to the group that owns the device"
                + " (usually gpio) and let the unit reach it (DeviceAllow)";
            case EBUSY -> "the line is in use: stop the program that holds it ('gpioinfo' names it) or"
                + " free it from the device tree or config.txt";
            case EINVAL -> "the kernel refuses the line or its bias: check the line number and try bias"
                + " as-is";
            case ENOTTY -> "it is not a GPIO chip, or its kernel is older than 5.10: list the chips with"
                + " 'gpiodetect'";
            case ENODEV, ENXIO -> "the chip is gone: look at its cable or bus, then restart the daemon";
            default -> "the kernel answered error " + error + ": look at 'dmesg' for what the driver says";
        };
    }
}
