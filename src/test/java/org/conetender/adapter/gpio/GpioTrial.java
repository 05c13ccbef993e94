package org.conetender.adapter.gpio;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;
import org.conetender.core.unit.Moment;
import org.conetender.port.Clock;

/**
 * The adapter alone on a real kernel's lines, for the trial in {@code src/test/board}: no daemon, no
 * decisions. {@code hold CHIP TICKS} energises both outputs once a second for that many ticks and then
 * hangs, as a stuck tick would; {@code safe CHIP} is the one-shot; {@code beyond CHIP} asks for a line
 * too many. No test of the default build runs it. Nothing that heats belongs on the lines it drives.
 */
public final class GpioTrial {

    private static final Line HEAT = new Line("a.heat", 2, true, Bias.AS_IS);
    private static final Line LAMP = new Line("a.lamp", 3, false, Bias.AS_IS);
    private static final Line LEVEL = new Line("a.level", 5, true, Bias.AS_IS);
    private static final Line PROOF = new Line("a.air-proof", 6, false, Bias.PULL_DOWN);
    private static final long LEASE_MS = 4_000;

    private GpioTrial() {}

    public static void main(String[] args) {
        Lines lines = new Lines(args[1], List.of(HEAT, LAMP), List.of(LEVEL, PROOF));
        switch (args[0]) {
            case "hold" -> hold(lines, Integer.parseInt(args[2]));
            case "safe" -> safe(lines);
            case "beyond" -> beyond(args[1]);
            default -> throw new IllegalArgumentException("say hold, safe or beyond, not " + args[0]);
        }
    }

    private static void hold(Lines lines, int ticks) {
        Clock clock = GpioTrial::uptime;
        try (GpioBoard board = GpioBoard.open(lines, GpioLayer.kernel(lines), clock)) {
            say(clock, "open");
            for (int tick = 0; ; tick++) {
                LockSupport.parkNanos(1_000_000_000L);
                int now = tick;
                if (tick < ticks) {
                    board.switches().forEach(each -> say(clock,
                        "tick " + now + " " + each.id() + " held " + each.hold(true, LEASE_MS)));
                }
                board.contacts().forEach(each -> say(clock, each.id() + " " + each.read()));
                say(clock, "lapses " + board.lapses());
            }
        } catch (GpioException e) {
            say(clock, e.getMessage());
            System.exit(1);
        }
    }

    private static void safe(Lines lines) {
        List<SafeOutputs.Outcome> outcomes = SafeOutputs.drive(lines);
        outcomes.forEach(outcome -> System.out.println(outcome.sentence()));
        System.exit(outcomes.stream().allMatch(SafeOutputs.Outcome::safe) ? 0 : 1);
    }

    private static void beyond(String chip) {
        Lines lines = new Lines(chip, List.of(HEAT, new Line("b.heat", 99, true, Bias.AS_IS)), List.of());
        hold(lines, 0);
    }

    private static void say(Clock clock, String what) {
        System.out.println(clock.now().monoMs() + " " + what);
    }

    /** The kernel's own count of seconds since boot, in steps of 10 ms: enough for a trial. */
    private static Moment uptime() {
        try (Stream<String> lines = Files.lines(Path.of("/proc/uptime"))) {
            String seconds = lines.findFirst().orElseThrow().split(" ")[0];
            return new Moment("trial", Math.round(Double.parseDouble(seconds) * 1_000), 0, false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
