package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.locks.LockSupport;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.app.remote.RemoteSite;
import org.conetender.app.view.Changes;
import org.conetender.app.view.Kept;
import org.conetender.app.view.Screen;
import org.conetender.app.view.SiteView;
import org.conetender.app.view.Terminal;
import org.conetender.app.view.ViewJson;
import org.conetender.port.Clock;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code watch}: a site as it stands, from its topics at the broker. */
@Command(name = "watch", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Shows a site as it stands, from what its daemon publishes: live in a terminal, "
                + "else a line for each change. Ctrl-C ends the watching and nothing else.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:shown (130 after Ctrl-C)",
            "2:the configuration is refused, or the command was not understood",
            "3:nothing to show: no broker, or no such site there"},
        footer = {"", "Examples:",
            "  conetender watch",
            "  conetender watch --broker mqtt://pi.local --site larkmoor",
            "  conetender watch --once --json", ""})
public final class WatchCommand implements Callable<Integer> {

    private static final int NOTHING = 3;
    /** A live view is drawn at most this often, and at least once a second, ms. */
    private static final long DRAW_MS = 250;
    private static final long QUIET_MS = 1_000;
    /** Between attempts to find a lost broker again, ms: guess. */
    private static final long AGAIN_MS = 3_000;
    private static final long MS_NS = 1_000_000;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE HH:mm:ss", Locale.ENGLISH);

    @Spec
    private CommandSpec spec;

    @Mixin
    private ConfigFile configFile;

    @Mixin
    private BrokerOptions brokerOptions;

    @Option(names = "--once", description = "show it once and end")
    private boolean once;

    @Option(names = "--json", description = "one JSON object per line, for another program")
    private boolean json;

    private final Clock clock = new LinuxClock();
    private final Changes changes = new Changes();
    private final Kept kept = new Kept();
    private String lastJson = "";
    private String trouble = "";

    @Override
    public Integer call() {
        Places.Found found = Places.find(spec.commandLine(), configFile, brokerOptions);
        if (found.refused()) {
            return CheckCommand.REFUSED;
        }
        if (found.broker().isEmpty()) {
            return nothing("This site has no broker; watching needs one. Add [mqtt] to its configuration.");
        }
        PrintWriter out = spec.commandLine().getOut();
        Terminal terminal = new Terminal(out);
        Runtime.getRuntime().addShutdownHook(new Thread(terminal::close, "terminal-back"));
        boolean seen = false;
        while (true) {
            try (RemoteSite site = found.connect(clock)) {
                if (site.state().isEmpty() && !seen) {
                    return nothing("No site '" + site.names().site()
                            + "' is known at this broker: start its daemon, "
                            + "or name another site.");
                }
                seen = true;
                trouble = "";
                if (once) {
                    show(site, out);
                    return 0;
                }
                follow(site, terminal, out);
            } catch (IOException e) {
                if (once || !seen) {
                    return nothing(Places.broker(e.getMessage()));
                }
                away(Places.broker(e.getMessage()), terminal);
                LockSupport.parkNanos(AGAIN_MS * MS_NS);
            }
        }
    }

    private int nothing(String sentence) {
        spec.commandLine().getErr().println(sentence);
        spec.commandLine().getErr().flush();
        return NOTHING;
    }

    /** The old picture stays; where lines are shown, one says it. */
    private void away(String sentence, Terminal terminal) {
        if (live()) {
            terminal.draw(kept.page(frame(Terminal.size(), true), sentence));
        } else if (!sentence.equals(trouble)) {
            spec.commandLine().getErr().println(sentence + " Trying again.");
            spec.commandLine().getErr().flush();
        }
        trouble = sentence;
    }

    private boolean live() {
        return !json && Terminal.there();
    }

    /** Until the broker is lost. */
    private void follow(RemoteSite site, Terminal terminal, PrintWriter out) throws IOException {
        boolean live = live();
        while (site.connected()) {
            site.refresh();
            if (live) {
                SiteView now = view(site);
                kept.saw(now, now());
                Screen.Frame frame = frame(Terminal.size(), true);
                terminal.draw(kept.shows(now) ? Screen.of(now, frame)
                        : kept.page(frame, "The broker is there but shows no cones: is the daemon?"));
            } else if (json) {
                json(site, out);
            } else {
                changes.since(view(site), clock.now().monoMs()).forEach(l ->
                        out.println(now().format(TIME) + "  " + l));
                out.flush();
            }
            site.awaitNews(QUIET_MS);
            LockSupport.parkNanos(DRAW_MS * MS_NS);
        }
        throw new IOException("the connection broke off");
    }

    private void show(RemoteSite site, PrintWriter out) {
        if (json) {
            json(site, out);
        } else {
            int columns = Terminal.there() ? Terminal.size().columns() : 100;
            Screen.of(view(site), frame(new Terminal.Size(columns, Integer.MAX_VALUE), Terminal.there()))
                    .forEach(out::println);
            out.flush();
        }
    }

    private void json(RemoteSite site, PrintWriter out) {
        String now = ViewJson.of(view(site));
        if (!now.equals(lastJson)) {
            lastJson = now;
            out.println(now);
            out.flush();
        }
    }

    private static SiteView view(RemoteSite site) {
        return SiteView.of(site.topics(), site.names(), site.cones(), site.name());
    }

    private Screen.Frame frame(Terminal.Size size, boolean colours) {
        // The daemon's hours may be those of a simulation, or of another zone.
        return new Screen.Frame(size, colours, now(),
                new Screen.Around(now().format(TIME) + " on this computer", "", ""));
    }

    private OffsetDateTime now() {
        return Instant.ofEpochMilli(clock.now().wallMs()).atZone(ZoneId.systemDefault()).toOffsetDateTime();
    }
}
