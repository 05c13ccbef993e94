package org.conetender.adapter.gpio;

import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalState;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.port.Contact;

/** One contact. Any thread; one system call, never waits, never throws. */
record GpioContact(DigitalInput input) implements Contact {

    @Override
    public String id() {
        return input.id();
    }

    @Override
    public Level read() {
        DigitalState level = input.state();
        if (level == DigitalState.UNKNOWN) {
            return Level.UNKNOWN;
        }
        return level == input.config().onState() ? Level.CLOSED : Level.OPEN;
    }
}
