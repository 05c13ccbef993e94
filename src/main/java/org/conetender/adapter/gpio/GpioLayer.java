package org.conetender.adapter.gpio;

import com.pi4j.io.gpio.digital.DigitalInputProvider;
import com.pi4j.io.gpio.digital.DigitalOutputProvider;

/**
 * What lies below Pi4J: the two providers a board is opened with, and no others. Production takes
 * {@link #kernel}; a test hands in providers that record.
 */
public record GpioLayer(DigitalOutputProvider outputs, DigitalInputProvider inputs) {

    /** The kernel's character device. Touches nothing yet: lines are requested when the board opens. */
    public static GpioLayer kernel(Lines lines) {
        return on(new Libc(), lines);
    }

    static GpioLayer on(Kernel kernel, Lines lines) {
        Chip chip = new Chip(kernel, lines.chip());
        return new GpioLayer(new LineOutputs(chip, lines), new LineInputs(chip, lines));
    }
}
