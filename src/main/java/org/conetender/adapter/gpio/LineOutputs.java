package org.conetender.adapter.gpio;

import com.pi4j.context.Context;
import com.pi4j.exception.ShutdownException;
import com.pi4j.io.exception.IOException;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputBase;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalOutputProvider;
import com.pi4j.io.gpio.digital.DigitalOutputProviderBase;
import com.pi4j.io.gpio.digital.DigitalState;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;

/**
 * Pi4J outputs on the kernel's character device.
 *
 * <p>Pi4J speaks of levels on the wire (HIGH, LOW) and of an on-state; the kernel of active and
 * inactive. An on-state of LOW becomes the kernel's active-low flag, so both agree and other programs
 * see it. Pi4J's configuration has no bias for outputs; it is looked up by line.
 */
final class LineOutputs extends DigitalOutputProviderBase {

    static final String ID = "conetender-gpio-output";

    private final Chip chip;
    private final Lines lines;

    LineOutputs(Chip chip, Lines lines) {
        super(ID, "GPIO character device ABI v2, outputs");
        this.chip = chip;
        this.lines = lines;
    }

    @Override
    public DigitalOutput create(DigitalOutputConfig config) {
        if (known(config.initialState()) && known(config.shutdownState())) {
            Output output = new Output(this, config);
            context().registry().add(output);
            return output;
        }
        throw new IOException("output " + config.id() + " has no initial or no shutdown level: give both,"
            + " for without them the wire is left to chance at start and at the end");
    }

    private static boolean known(DigitalState level) {
        return level == DigitalState.HIGH || level == DigitalState.LOW;
    }

    private Line line(DigitalOutputConfig config) {
        boolean activeLow = config.onState() == DigitalState.LOW;
        Bias bias = lines.outputs().stream().filter(line -> line.offset() == config.bcm())
            .map(Line::bias).findFirst().orElse(Bias.AS_IS);
        return new Line(config.id(), config.bcm(), activeLow, bias);
    }

    /**
     * One output. Any thread: its lock is held for one system call at most.
     *
     * <p>Pi4J sets the initial level while it initialises an output; that first level is the request
     * itself. Every later one is written even if unchanged, so a chip that has gone shows at once.
     */
    private static final class Output extends DigitalOutputBase {

        private RequestedLine line;
        private boolean over;

        Output(DigitalOutputProvider provider, DigitalOutputConfig config) {
            super(provider, config);
        }

        @Override
        public synchronized DigitalOutput state(DigitalState level) {
            if (over) {
                throw new IOException("output " + id() + " is shut down: it takes no further level");
            }
            if (!known(level)) {
                throw new IOException("output " + id() + " can be HIGH or LOW, not " + level);
            }
            boolean active = level == config().onState();
            if (line == null) {
                LineOutputs owner = (LineOutputs) provider();
                line = requested(owner, active);
            } else {
                set(active);
            }
            return super.state(level);
        }

        private RequestedLine requested(LineOutputs owner, boolean active) {
            try {
                return owner.chip.output(owner.line(config()), active);
            } catch (GpioException e) {
                throw new IOException(e.getMessage(), e);
            }
        }

        private void set(boolean active) {
            try {
                line.set(active);
            } catch (GpioException e) {
                throw new IOException(e.getMessage(), e);
            }
        }

        /** The shutdown level, then the line back, whether or not that level could be set. */
        @Override
        public synchronized DigitalOutput shutdownInternal(Context context) throws ShutdownException {
            try {
                return over ? this : super.shutdownInternal(context);
            } finally {
                over = true;
                if (line != null) {
                    line.release();
                }
            }
        }
    }
}
