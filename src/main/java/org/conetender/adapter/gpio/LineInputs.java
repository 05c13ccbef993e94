package org.conetender.adapter.gpio;

import com.pi4j.context.Context;
import com.pi4j.exception.InitializeException;
import com.pi4j.exception.ShutdownException;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalInputBase;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalInputProvider;
import com.pi4j.io.gpio.digital.DigitalInputProviderBase;
import com.pi4j.io.gpio.digital.DigitalState;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Pi4J inputs on the kernel's character device. A level is read when it is asked for: there are no
 * events, no thread and no debounce. What cannot be read is UNKNOWN, never a level.
 */
final class LineInputs extends DigitalInputProviderBase {

    static final String ID = "conetender-gpio-input";
    private static final Logger LOG = LoggerFactory.getLogger(LineInputs.class);

    private final Chip chip;
    private final Lines lines;

    LineInputs(Chip chip, Lines lines) {
        super(ID, "GPIO character device ABI v2, inputs");
        this.chip = chip;
        this.lines = lines;
    }

    @Override
    public DigitalInput create(DigitalInputConfig config) {
        Input input = new Input(this, config);
        context().registry().add(input);
        return input;
    }

    /** Pi4J's pull has no word for "as it was found", so the bias is looked up by line here too. */
    private Line line(DigitalInputConfig config) {
        boolean activeLow = config.onState() == DigitalState.LOW;
        Bias bias = lines.inputs().stream().filter(line -> line.offset() == config.bcm())
            .map(Line::bias).findFirst().orElse(Bias.AS_IS);
        return new Line(config.id(), config.bcm(), activeLow, bias);
    }

    /** One input. Any thread: its lock is held for one system call at most. */
    private static final class Input extends DigitalInputBase {

        private RequestedLine line;

        Input(DigitalInputProvider provider, DigitalInputConfig config) {
            super(provider, config);
        }

        @Override
        public synchronized DigitalInput initialize(Context context) throws InitializeException {
            super.initialize(context);
            try {
                LineInputs owner = (LineInputs) provider();
                line = owner.chip.input(owner.line(config()));
                return this;
            } catch (GpioException e) {
                throw new InitializeException(e.getMessage(), e);
            }
        }

        @Override
        public synchronized DigitalState state() {
            try {
                DigitalState on = config().onState();
                return line.get() ? on : DigitalState.getInverseState(on);
            } catch (GpioException unreadable) {
                LOG.debug("{}", unreadable.getMessage());
                return DigitalState.UNKNOWN;
            }
        }

        @Override
        public synchronized DigitalInput shutdownInternal(Context context) throws ShutdownException {
            try {
                return super.shutdownInternal(context);
            } finally {
                if (line != null) {
                    line.release();
                }
            }
        }
    }
}
