package org.conetender.adapter.gpio;

import com.pi4j.context.Context;
import com.pi4j.exception.ShutdownException;
import com.pi4j.io.exception.IOException;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalInputBase;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalInputProvider;
import com.pi4j.io.gpio.digital.DigitalInputProviderBase;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputBase;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalOutputProvider;
import com.pi4j.io.gpio.digital.DigitalOutputProviderBase;
import com.pi4j.io.gpio.digital.DigitalState;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.conetender.core.image.ContactSample.Level;

/**
 * A layer below Pi4J that has no wires: it records every change of level, and its contacts are moved
 * by the test. For machines without GPIO. Any thread.
 */
public final class RecordingProvider {

    public static final String OUTPUT_ID = "recording-output";
    public static final String INPUT_ID = "recording-input";

    /**
     * One change of level; the first of each output is the one it was requested with.
     *
     * @param output as configured
     * @param level on the wire
     * @param energised whether that level drives the relay
     * @param stamp from the source given at construction: milliseconds of a clock, or a count
     */
    public record Change(String output, DigitalState level, boolean energised, long stamp) {}

    private final LongSupplier stamp;
    private final Consumer<Change> listener;
    private final List<Change> changes = new CopyOnWriteArrayList<>();
    private final Map<String, Level> contacts = new ConcurrentHashMap<>();
    private final Set<String> broken = ConcurrentHashMap.newKeySet();

    /** Changes are stamped by {@code stamp}, such as {@code () -> clock.now().monoMs()} or a counter. */
    public RecordingProvider(LongSupplier stamp) {
        this(stamp, change -> { });
    }

    /** As above; {@code listener} also hears each change, on the thread that made it. */
    public RecordingProvider(LongSupplier stamp, Consumer<Change> listener) {
        this.stamp = stamp;
        this.listener = listener;
    }

    /** For {@link GpioBoard#open}. One board for each. */
    public GpioLayer layer() {
        return new GpioLayer(new Outputs(), new Inputs());
    }

    /** Every change so far, oldest first. */
    public List<Change> changes() {
        return List.copyOf(changes);
    }

    /** Whether each change of this output, oldest first, energised it. */
    public List<Boolean> energised(String output) {
        return changes.stream().filter(c -> c.output().equals(output)).map(Change::energised).toList();
    }

    /** Moves a contact; it is open until moved, and UNKNOWN means that it cannot be read. */
    public void move(String contact, Level level) {
        contacts.put(contact, level);
    }

    /** From now on this output takes no level, until {@link #repair}. */
    public void breakOutput(String output) {
        broken.add(output);
    }

    /** This output takes levels again. */
    public void repair(String output) {
        broken.remove(output);
    }

    private final class Outputs extends DigitalOutputProviderBase {
        Outputs() {
            super(OUTPUT_ID);
        }

        @Override
        public DigitalOutput create(DigitalOutputConfig config) {
            Output output = new Output(this, config);
            context().registry().add(output);
            return output;
        }
    }

    private final class Output extends DigitalOutputBase {
        private boolean over;

        Output(DigitalOutputProvider provider, DigitalOutputConfig config) {
            super(provider, config);
        }

        @Override
        public synchronized DigitalOutput state(DigitalState level) {
            if (over || broken.contains(id())) {
                throw new IOException("output " + id() + (over ? " is shut down" : " takes no level"));
            }
            if (level != state()) {
                Change change = new Change(id(), level, level == config().onState(), stamp.getAsLong());
                changes.add(change);
                listener.accept(change);
            }
            return super.state(level);
        }

        @Override
        public synchronized DigitalOutput shutdownInternal(Context context) throws ShutdownException {
            try {
                return over ? this : super.shutdownInternal(context);
            } finally {
                over = true;
            }
        }
    }

    private final class Inputs extends DigitalInputProviderBase {
        Inputs() {
            super(INPUT_ID);
        }

        @Override
        public DigitalInput create(DigitalInputConfig config) {
            Input input = new Input(this, config);
            context().registry().add(input);
            return input;
        }
    }

    private final class Input extends DigitalInputBase {
        Input(DigitalInputProvider provider, DigitalInputConfig config) {
            super(provider, config);
        }

        @Override
        public DigitalState state() {
            DigitalState on = config().onState();
            return switch (contacts.getOrDefault(id(), Level.OPEN)) {
                case CLOSED -> on;
                case OPEN -> DigitalState.getInverseState(on);
                case UNKNOWN -> DigitalState.UNKNOWN;
            };
        }
    }
}
