package org.conetender.app.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.conetender.adapter.gpio.SafeOutputs;
import org.conetender.app.Wiring;
import org.conetender.app.config.Config;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code safe}: every output to its safe level, for the service manager after the daemon has ended. */
@Command(name = "safe", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Puts every output in its safe level and ends: heaters and lamps off, air on. "
                + "The service manager runs it after the daemon has ended in any way. While the daemon runs "
                + "it holds the lines itself, and this says that they are busy.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:every output is in its safe level",
            "1:an output could not be driven: unplug the heaters by hand",
            "2:the configuration is refused, or the command was not understood"},
        footer = {"", "Example:", "  conetender safe --config /etc/conetender/conetender.toml", ""})
public final class SafeCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ConfigFile configFile;

    @Override
    public Integer call() {
        Optional<Config> config = configFile.load(spec.commandLine().getErr());
        return config.map(this::drive).orElse(CheckCommand.REFUSED);
    }

    private int drive(Config config) {
        List<SafeOutputs.Outcome> outcomes = SafeOutputs.drive(Wiring.lines(config.hardware().gpio()));
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        outcomes.forEach(o -> (o.safe() ? out : err).println(o.sentence()));
        boolean all = outcomes.stream().allMatch(SafeOutputs.Outcome::safe);
        if (!all) {
            err.println("Unplug the heaters by hand, then see why these lines cannot be driven.");
        }
        out.flush();
        err.flush();
        return all ? 0 : 1;
    }
}
