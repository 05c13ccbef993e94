package org.conetender.adapter.onewire;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.conetender.core.image.Reading;
import org.conetender.port.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One bus master and its one reader thread. In each cycle all probes convert, together where the
 * kernel can, and are read one after the other. A read that hangs in the kernel holds up only this
 * thread; to everybody else the probes grow old, which is the truth.
 *
 * <p>{@link #cycle} belongs to the reader thread, or to a test that has not started it.
 */
final class OneWireBus implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(OneWireBus.class);

    /** Cycles without any answer after which the bus is left more rest (control.md §3.3). */
    private static final int FAILING = 3;

    /** How many times longer the rest is then: guess; with a 2 s period still below the 15 s warning. */
    private static final int SLOWER = 5;

    /** The least rest between cycles, ms, when reading took the whole period: guess. */
    private static final long LEAST_REST_MS = 100;

    /** How long a stop waits for a read in progress, ms: five conversions of 0.75 s, the driver's limit. */
    private static final long STOP_MS = 4_000;

    /** The same fault is not logged again for so long, ms: guess. */
    private static final long AGAIN_MS = 3_600_000;

    /** @param atMs when it was logged, monotonic */
    private record Told(String why, long atMs) {}

    private final String name;
    private final List<OneWireProbe> probes;
    private final BulkTrigger bulk;
    private final Clock clock;

    private final CountDownLatch closed = new CountDownLatch(1);
    private final List<String> warnings = new CopyOnWriteArrayList<>();
    private final Set<OneWireProbe> asked = new HashSet<>();
    private final Map<OneWireProbe, Told> told = new HashMap<>();
    private Thread reader;
    private long cycleBegan = Long.MIN_VALUE;
    private int failedCycles;

    OneWireBus(String name, List<OneWireProbe> probes, BulkTrigger bulk, Clock clock) {
        this.name = name;
        this.probes = List.copyOf(probes);
        this.bulk = bulk;
        this.clock = clock;
    }

    /** Starts reading; once. @param periodMs from the start of one cycle to the start of the next */
    void start(long periodMs) {
        reader = Thread.ofPlatform().name("onewire-" + name).daemon().start(() -> run(periodMs));
    }

    private void run(long periodMs) {
        try {
            while (!closed.await(restMs(periodMs), TimeUnit.MILLISECONDS)) {
                cycle();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            LOG.error("the reader of {} was interrupted; its probes grow old from now on", name);
        } catch (RuntimeException bug) {
            LOG.error("the reader of {} failed, a fault of conetender; its probes grow old", name, bug);
        }
    }

    private long restMs(long periodMs) {
        if (cycleBegan == Long.MIN_VALUE) {
            return 0;
        }
        long period = slow() ? periodMs * SLOWER : periodMs;
        return Math.max(LEAST_REST_MS, cycleBegan + period - clock.now().monoMs());
    }

    /** Whether the bus is being left more rest because nothing on it answers. */
    boolean slow() {
        return failedCycles >= FAILING;
    }

    /** Converts and reads every probe once. */
    void cycle() {
        cycleBegan = clock.now().monoMs();
        BulkTrigger.Outcome converted = bulk.convert();
        long bulkEnd = clock.now().monoMs();
        boolean answered = false;
        for (OneWireProbe p : probes) {
            if (converted == BulkTrigger.Outcome.LEFT_OVER) {
                W1Files.reading(p.folder());
            }
            Reading reading = W1Files.reading(p.folder());
            tell(p, reading);
            p.saw(reading, converted == BulkTrigger.Outcome.DONE ? bulkEnd : clock.now().monoMs());
            if (reading instanceof Reading.Value) {
                answered = true;
                askOnce(p);
            }
        }
        count(answered);
    }

    /** A fault in full, for who mends it: a keeper is only told what it means. */
    private void tell(OneWireProbe p, Reading reading) {
        if (reading instanceof Reading.Faulty(String why)) {
            Told before = told.put(p, new Told(why, cycleBegan));
            if (before == null || !before.why().equals(why) || cycleBegan - before.atMs() >= AGAIN_MS) {
                LOG.warn("probe {}: {}", p.id(), why);
            } else {
                told.put(p, before);
            }
        }
    }

    private void count(boolean answered) {
        if (answered && slow()) {
            LOG.info("{} answers again", name);
        }
        failedCycles = answered ? 0 : failedCycles + 1;
        if (failedCycles == FAILING) {
            LOG.warn("no probe on {} has answered {} times in a row: see to its cable, pull-up and supply",
                    name, FAILING);
        }
    }

    /** Supply and resolution, once a probe is known to answer: an absent one would hold up the bus. */
    private void askOnce(OneWireProbe p) {
        if (!asked.add(p)) {
            return;
        }
        OptionalInt external = figure(p.folder().resolve("ext_power"));
        if (external.isPresent() && external.getAsInt() == 0) {
            warn("probe " + p.id() + " takes its power from the data wire and may fail to convert: give it"
                    + " its third wire");
        }
        OptionalInt bits = figure(p.folder().resolve("resolution"));
        if (bits.isPresent() && bits.getAsInt() >= 9 && bits.getAsInt() < 12) {
            warn("probe " + p.id() + " reads in steps of " + 1.0 / (1 << bits.getAsInt() - 8)
                    + " °C: set its resolution to 12 bit for steps of 0.0625 °C");
        }
    }

    /** Older kernels lack these files, and a disturbed bus leaves them empty: then nothing is said. */
    private static OptionalInt figure(Path file) {
        try {
            return W1Parser.number(W1Files.read(file));
        } catch (IOException e) {
            LOG.debug("{} is not offered: {}", file, e.toString());
            return OptionalInt.empty();
        }
    }

    private void warn(String warning) {
        warnings.add(warning);
        LOG.warn(warning);
    }

    /** What a person should know about the wiring, as sentences. Any thread. */
    List<String> describe() {
        List<String> all = new ArrayList<>(warnings);
        bulk.trouble().ifPresent(all::add);
        return all;
    }

    @Override
    public void close() {
        closed.countDown();
        if (reader == null) {
            return;
        }
        try {
            if (!reader.join(Duration.ofMillis(STOP_MS))) {
                LOG.warn("a read on {} hangs in the kernel; leaving it behind", name);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
