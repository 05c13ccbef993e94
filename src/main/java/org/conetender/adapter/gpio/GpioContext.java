package org.conetender.adapter.gpio;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.io.IO;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.provider.Provider;
import java.util.Set;
import org.conetender.adapter.gpio.Lines.Line;

/**
 * A Pi4J context built by hand, with the two providers of one layer and no others, asserted at start
 * and again for every line. With detection on, whatever provider lies on the class path could take
 * the relays, and a mock would move none (dependencies.md §1).
 */
final class GpioContext {

    private final GpioLayer layer;
    private final Context context;

    /** @throws GpioException if Pi4J did not start exactly the providers of {@code layer} */
    GpioContext(GpioLayer layer) {
        this.layer = layer;
        this.context = Pi4J.newContextBuilder().noAutoDetectPlatforms().noAutoDetectProviders()
            .noAutoInject().disableShutdownHook().add(layer.outputs(), layer.inputs()).build();
        assertProviders();
    }

    /** Pi4J only logs when a provider cannot start, and would go on without it. */
    private void assertProviders() {
        Set<String> wanted = Set.of(layer.outputs().id(), layer.inputs().id());
        Set<String> found = context.providers().all().keySet();
        if (!found.equals(wanted)) {
            context.shutdown();
            throw new GpioException("the GPIO providers are " + found + ", they should be " + wanted
                + ": remove other Pi4J plugins from the class path, and look above for why ours did not"
                + " start.");
        }
    }

    /** Takes an output; its safe level, de-energised, is its initial and its final one. */
    DigitalOutput output(Line line) {
        DigitalState on = on(line);
        DigitalState safe = DigitalState.getInverseState(on);
        return ours(layer.outputs(), line, () -> context.create(DigitalOutput.newConfigBuilder(context)
            .id(line.id()).bcm(line.offset()).onState(on).initial(safe).shutdown(safe)
            .provider(layer.outputs().id()).build()));
    }

    /** Takes an input. */
    DigitalInput input(Line line) {
        return ours(layer.inputs(), line, () -> context.create(DigitalInput.newConfigBuilder(context)
            .id(line.id()).bcm(line.offset()).onState(on(line)).provider(layer.inputs().id()).build()));
    }

    /** Every output once more to its safe level, by Pi4J, and every line back. */
    void shutdown() {
        context.shutdown();
    }

    private static DigitalState on(Line line) {
        return line.activeLow() ? DigitalState.LOW : DigitalState.HIGH;
    }

    private interface Creation<T> {
        T create();
    }

    private static <T extends IO<?, ?, ?>> T ours(Provider<?, ?, ?> wanted, Line line, Creation<T> creation) {
        T made;
        try {
            made = creation.create();
        } catch (RuntimeException e) {
            throw refusal(line, e);
        }
        String id = made.provider().id();
        if (!id.equals(wanted.id())) {
            throw new GpioException(line.id() + " came from provider " + id + ", not from " + wanted.id()
                + ": remove other Pi4J plugins from the class path.");
        }
        return made;
    }

    /** Our own sentence, from under whatever Pi4J has wrapped around it. */
    private static GpioException refusal(Line line, RuntimeException e) {
        for (Throwable t = e; t != null; t = t.getCause()) {
            if (t instanceof GpioException sentence) {
                return sentence;
            }
        }
        return new GpioException(line.id() + " (line " + line.offset() + ") is refused by Pi4J: "
            + e.getMessage(), e);
    }
}
