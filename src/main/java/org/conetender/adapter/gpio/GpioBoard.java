package org.conetender.adapter.gpio;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.conetender.port.Clock;
import org.conetender.port.Contact;
import org.conetender.port.Switch;

/**
 * The relays and contacts of one board, from opening to closing.
 *
 * <p>Every output is de-energised from the first instant of its request and again before its line is
 * given back, on every way out that runs code: {@link #close}, also from a shutdown hook of its own at
 * SIGTERM, SIGINT and {@code System.exit}. After SIGKILL nothing runs here, and a Raspberry Pi keeps
 * the last level: that is what {@link SafeOutputs} is for.
 *
 * <p>Opening is one thread's. Afterwards switches and contacts may be used from any thread, and
 * {@code close} may come from any, more than once.
 */
public final class GpioBoard implements AutoCloseable {

    private final GpioContext context;
    private final Clock clock;
    private final Leases leases = new Leases();
    private final AtomicLong lapses = new AtomicLong();
    private final LeaseKeeper keeper = new LeaseKeeper(this::sweep, this::allSafe);
    private final Thread hook = new Thread(this::close, "gpio-safe");
    private final Map<String, LeasedSwitch> switches = new LinkedHashMap<>();
    private final Map<String, Contact> contacts = new LinkedHashMap<>();
    private boolean closed;

    private GpioBoard(GpioContext context, Clock clock) {
        this.context = context;
        this.clock = clock;
    }

    /**
     * Takes every line, all outputs de-energised, and starts the keeper of the leases.
     *
     * @param layer the kernel's, or a recording one; its providers must fit {@code lines}
     * @throws GpioException if any line cannot be had; those taken before are safe and given back
     */
    public static GpioBoard open(Lines lines, GpioLayer layer, Clock clock) {
        GpioBoard board = new GpioBoard(new GpioContext(layer), clock);
        try {
            board.take(lines);
        } catch (GpioException e) {
            board.abandon(e);
            throw e;
        }
        Runtime.getRuntime().addShutdownHook(board.hook);
        board.keeper.start();
        return board;
    }

    private void take(Lines lines) {
        lines.outputs().forEach(line -> switches.put(line.id(),
            new LeasedSwitch(context.output(line), leases, clock, keeper::alive)));
        lines.inputs().forEach(line -> contacts.put(line.id(), new GpioContact(context.input(line))));
    }

    /** Gives back what an opening that failed had taken; the first failure stays the one that is told. */
    private void abandon(GpioException cause) {
        try {
            close();
        } catch (RuntimeException e) {
            cause.addSuppressed(e);
        }
    }

    /** Every output, in the order of the configuration. */
    public List<Switch> switches() {
        return List.copyOf(switches.values());
    }

    /** Every contact, in the order of the configuration. */
    public List<Contact> contacts() {
        return List.copyOf(contacts.values());
    }

    /** How often an output had to be let go because nobody renewed its lease, since opening. */
    public long lapses() {
        return lapses.get();
    }

    /**
     * Every output to its safe level, then every line back. All later writes are refused.
     *
     * @throws GpioException if an output would not go; the others have all been tried
     */
    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        List<String> failures = allSafe();
        try {
            context.shutdown();
        } catch (RuntimeException e) {
            failures.add(e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage());
        } finally {
            keeper.stop();
            unhook();
        }
        if (!failures.isEmpty()) {
            throw new GpioException("not every output could be put in its safe level: cut the power to the"
                + " heaters by hand. " + String.join(" ", failures));
        }
    }

    /** Lets go what is overdue: the keeper's whole work. */
    void sweep() {
        long nowMs = clock.now().monoMs();
        for (String output : leases.due(nowMs)) {
            if (switches.get(output).lapse(nowMs)) {
                lapses.incrementAndGet();
            }
        }
    }

    /** One output that refuses must not keep the others from being turned off. */
    private List<String> allSafe() {
        List<String> failures = new ArrayList<>();
        for (LeasedSwitch each : switches.values()) {
            String failure = each.retire();
            if (!failure.isEmpty()) {
                failures.add(failure);
            }
        }
        return failures;
    }

    /** Answers whether the hook was still to come; while the process goes down it is what runs. */
    private boolean unhook() {
        try {
            return Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException goingDown) {
            return false;
        }
    }
}
