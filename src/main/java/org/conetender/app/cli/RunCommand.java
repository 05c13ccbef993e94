package org.conetender.app.cli;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.conetender.adapter.gpio.DrivenLines;
import org.conetender.adapter.gpio.GpioLayer;
import org.conetender.adapter.gpio.Lines;
import org.conetender.app.Daemon;
import org.conetender.app.Unavailable;
import org.conetender.app.Wiring;
import org.conetender.app.config.Config;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code run}: the daemon. */
@Command(name = "run", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Looks after the cones until it is told to stop: Ctrl-C, or systemctl stop. It "
                + "is no protective device: an independent thermal cut-out, a residual-current device "
                + "and wiring after your local code stand behind it. Do not connect a real heater to "
                + "this release.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:stopped because it was asked to (143 or 130 when a signal asked)",
            "2:the configuration is refused, or the command was not understood",
            "69:something it needs cannot be had: relays, record or socket",
            "70:a bug; the outputs were put in their safe level"},
        footer = {"", "Example:", "  conetender run --config /etc/conetender/conetender.toml", ""})
public final class RunCommand implements Callable<Integer> {

    /** EX_UNAVAILABLE of sysexits(3). */
    static final int UNAVAILABLE = 69;

    private static final Logger LOG = LoggerFactory.getLogger(RunCommand.class);

    private final Function<Lines, GpioLayer> layer;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ConfigFile configFile;

    @Mixin
    private StateFolder state;

    /** On the kernel's own lines. */
    public RunCommand() {
        this(GpioLayer::kernel);
    }

    /** @param layer what lies below the relays: on a machine without any, one that records */
    public RunCommand(Function<Lines, GpioLayer> layer) {
        this.layer = layer;
    }

    @Override
    public Integer call() {
        Optional<Config> config = configFile.load(spec.commandLine().getErr());
        return config.map(this::run).orElse(CheckCommand.REFUSED);
    }

    private int run(Config config) {
        Wiring wiring;
        try {
            wiring = Wiring.open(config, Wiring.linux(config, layer));
        } catch (Unavailable e) {
            LOG.error("{}", e.getMessage());
            return UNAVAILABLE;
        }
        if (!keepLines(config)) {
            // A start that failed is no death: without this note three of them would lock the heaters.
            wiring.agents().leave();
            wiring.close();
            return UNAVAILABLE;
        }
        Daemon daemon = new Daemon(wiring);
        Runtime.getRuntime().addShutdownHook(new Thread(daemon::stop, "conetender-stop"));
        int cones = config.settings().cones().size();
        LOG.info("looking after {} of {}", cones == 1 ? "1 cone" : cones + " cones",
                config.settings().site().name());
        return daemon.run();
    }

    /**
     * Before the first tick, while nothing was energised yet. A list of before would make {@code safe}
     * drive the wrong lines, so without the right one there is no start.
     */
    private boolean keepLines(Config config) {
        try {
            DrivenLines.keep(state.of(Optional.of(config)), Wiring.lines(config.hardware().gpio()));
            return true;
        } catch (IOException e) {
            LOG.error("The relays: {} Without it nobody could make them safe after a crash.", e.getMessage());
            return false;
        }
    }
}
