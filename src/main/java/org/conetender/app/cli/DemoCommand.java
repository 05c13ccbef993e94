package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.app.Unavailable;
import org.conetender.app.demo.Demo;
import org.conetender.app.view.Changes;
import org.conetender.app.view.ConeView;
import org.conetender.app.view.Screen;
import org.conetender.app.view.Terminal;
import org.conetender.core.unit.Text;
import org.conetender.port.Clock;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code demo}: three cones, a day and a night, in a few minutes. */
@Command(name = "demo", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Shows the daemon at work: three cones of a small fry room from filling to "
                + "harvest, a day in about a minute and a half. Water, cysts and the person are simulated; "
                + "daemon and broker are the real ones, and the person acts only through the broker. "
                + "Nothing need be installed, nothing is switched, nothing is kept.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:three harvests (with --once), or ended by Ctrl-C (130)",
            "1:three harvests did not happen in time; the last lines say why",
            "2:the command was not understood",
            "69:a part did not start"},
        footer = {"", "Examples:", "  conetender demo",
            "  conetender demo --once --speed 1500 --seed 7", ""})
public final class DemoCommand implements Callable<Integer> {

    private static final int NOT_IN_TIME = 1;
    private static final int ENOUGH = 3;
    /** Three harvests that take longer than this have gone wrong, simulated ms. */
    private static final long LIMIT_MS = 48L * 3_600_000;
    /** The cleaning up after the last harvest is still shown, simulated ms. */
    private static final long TIDYING_MS = 45L * 60_000;
    /** While a cone settles and is drawn the picture runs at a tenth, or at this speed if that is more. */
    private static final double CLOSE_UP = 60;
    private static final long DRAW_MS = 250;
    private static final long NAP_MS = 10;
    /** Between two looks at the view, so that a line bears the time at which it was new, ms. */
    private static final long SLICE_MS = 20;
    private static final long MS_NS = 1_000_000;
    private static final long CLOSING_MS = 10_000;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);
    /** Held so that its level stays. */
    private static final Logger LOGS = Logger.getLogger("");

    @Spec
    private CommandSpec spec;

    @Option(names = "--once", description = "end by itself after three harvests")
    private boolean once;

    @Option(names = "--speed", paramLabel = "N", defaultValue = "900",
            description = "simulated seconds in one real second, 1 to 20000; default: ${DEFAULT-VALUE}")
    private double speed;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "10",
            description = "another seed is another room, other lots, another person; default: "
                    + "${DEFAULT-VALUE}")
    private long seed;

    private final Clock clock = new LinuxClock();
    private final CountDownLatch stop = new CountDownLatch(1);
    private final CountDownLatch closed = new CountDownLatch(1);
    private final Changes changes = new Changes();
    private long drawnMs;

    @Override
    public Integer call() {
        if (!(speed >= 1 && speed <= 20_000)) {
            throw new ParameterException(spec.commandLine(), "--speed " + speed + ": give 1 to 20000.");
        }
        PrintWriter out = spec.commandLine().getOut();
        boolean live = Terminal.there();
        // A line in the middle of the live view would tear it; what matters is shown as an alert.
        LOGS.setLevel(live ? Level.OFF : Level.SEVERE);
        Runtime.getRuntime().addShutdownHook(new Thread(this::interrupted, "demo-stop"));
        out.println("Starting the demonstration: three simulated cones, a real daemon, a real broker.");
        out.flush();
        try (Demo demo = Demo.open(seed)) {
            out.println("Look on from elsewhere: conetender watch --broker " + demo.broker()
                    + " --site larkmoor");
            out.flush();
            try (Terminal terminal = new Terminal(out)) {
                play(demo, live ? terminal : null);
            }
            return report(demo);
        } catch (Unavailable | IOException e) {
            spec.commandLine().getErr().println(e.getMessage());
            spec.commandLine().getErr().flush();
            return RunCommand.UNAVAILABLE;
        } finally {
            closed.countDown();
        }
    }

    /** Ctrl-C: the demonstration ends in good order and gives the terminal back. */
    private void interrupted() {
        stop.countDown();
        try {
            closed.await(CLOSING_MS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void play(Demo demo, Terminal terminal) {
        long lastMs = clock.now().monoMs();
        double owedMs = 0;
        long enoughAtMs = Long.MAX_VALUE;
        while (stop.getCount() > 0
                && demo.elapsedMs() < Math.min(enoughAtMs, once ? LIMIT_MS : Long.MAX_VALUE)) {
            long nowMs = clock.now().monoMs();
            // A machine that cannot keep up runs slower, and does not run after lost time.
            double pace = demo.separating() ? Math.min(speed, Math.max(CLOSE_UP, speed / 10)) : speed;
            owedMs = Math.min(owedMs + (nowMs - lastMs) * pace, pace * DRAW_MS);
            lastMs = nowMs;
            for (; owedMs >= 1_000 && clock.now().monoMs() - nowMs < SLICE_MS; owedMs -= 1_000) {
                demo.second();
            }
            if (once && enoughAtMs == Long.MAX_VALUE && demo.harvests() >= ENOUGH) {
                enoughAtMs = demo.elapsedMs() + TIDYING_MS;
            }
            show(demo, terminal);
            if (owedMs < 1_000) {
                LockSupport.parkNanos(NAP_MS * MS_NS);
            }
        }
    }

    private void show(Demo demo, Terminal terminal) {
        if (terminal == null) {
            PrintWriter out = spec.commandLine().getOut();
            changes.since(demo.view(), demo.elapsedMs())
                    .forEach(l -> out.println(demo.now().format(TIME) + "  " + l));
            out.flush();
        } else if (clock.now().monoMs() - drawnMs >= DRAW_MS) {
            drawnMs = clock.now().monoMs();
            String head = demo.now().format(TIME) + Text.of(", simulated, %.0f times as fast", speed);
            Screen.Around around = new Screen.Around(head, "", foot(demo));
            terminal.draw(Screen.of(demo.view(),
                    new Screen.Frame(Terminal.size(), true, demo.now(), around)));
        }
    }

    /** What stands below the live view. */
    public static String foot(Demo demo) {
        return "Ctrl-C ends the demonstration. Elsewhere: conetender watch --broker " + demo.broker()
                + " --site larkmoor";
    }

    private int report(Demo demo) {
        PrintWriter out = spec.commandLine().getOut();
        out.println();
        demo.score().forEach(out::println);
        int code = 0;
        if (once && demo.harvests() < ENOUGH && stop.getCount() > 0) {
            out.println();
            out.println("Only " + demo.harvests() + " of " + ENOUGH + " harvests in " + LIMIT_MS / 3_600_000
                    + " simulated hours; " + demo.person() + ". The cones now:");
            for (ConeView c : demo.view().cones()) {
                out.println("  " + c.id() + ": " + c.hatch().stage() + "; "
                        + c.hand().answer().orElse("no answer yet")
                        + (c.alerts().isEmpty() ? "" : " " + String.join(" ", c.alerts().values())));
            }
            code = NOT_IN_TIME;
        }
        out.flush();
        return code;
    }
}
