package org.conetender.adapter.onewire;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.unit.Moment;
import org.conetender.port.Clock;

/**
 * The adapter alone on a real kernel's 1-wire tree, for the trial in {@code src/test/board}: no daemon, no
 * decisions. {@code PERIOD-MS ADDRESS...} reads these probes until it is ended, and says four times a second
 * what each one holds: {@code uptime-ms address age-ms reading}, then what a person should know. No test of
 * the default build runs it.
 */
public final class OneWireTrial {

    private OneWireTrial() {}

    public static void main(String[] args) {
        Clock clock = OneWireTrial::uptime;
        List<OneWire.Place> places = Stream.of(args).skip(1).map(a -> new OneWire.Place(a, a)).toList();
        try (OneWire wire = new OneWire(OneWire.KERNEL, places, clock)) {
            System.out.println("masters " + wire.masterCount());
            wire.start(Long.parseLong(args[0]));
            List<String> told = new ArrayList<>();
            while (true) {
                LockSupport.parkNanos(250_000_000L);
                long now = clock.now().monoMs();
                wire.probes().forEach(p -> System.out.println(now + " " + line(p.latest(now))));
                wire.describe().stream().filter(d -> !told.contains(d)).forEach(d -> {
                    told.add(d);
                    System.out.println("told " + d);
                });
            }
        }
    }

    private static String line(ProbeSample s) {
        String what = switch (s.reading()) {
            case Reading.Value v -> "value " + v.degreesC();
            case Reading.NotYet n -> "not-yet";
            case Reading.Absent a -> "absent";
            case Reading.Faulty f -> "faulty " + f.why();
        };
        return s.probe() + " " + s.ageMs() + " " + what;
    }

    /** The kernel's own count of seconds since boot, in steps of 10 ms: enough for a trial. */
    private static Moment uptime() {
        try {
            String seconds = Files.readString(Path.of("/proc/uptime")).split(" ")[0];
            return new Moment("trial", Math.round(Double.parseDouble(seconds) * 1_000), 0, false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
