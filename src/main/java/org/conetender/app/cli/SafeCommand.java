package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.conetender.adapter.gpio.DrivenLines;
import org.conetender.adapter.gpio.Lines;
import org.conetender.adapter.gpio.SafeOutputs;
import org.conetender.app.Wiring;
import org.conetender.app.config.Config;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/**
 * {@code safe}: every output to its safe level, for the service manager after the daemon has ended. What
 * the daemon really drove stands in a file of its own; the configuration, which may have been edited
 * since, counts only where there is no such file.
 */
@Command(name = "safe", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Puts every output that the daemon drove in its safe level and ends: heaters and "
                + "lamps off, air on. The service manager runs it after the daemon has ended in any way. "
                + "While the daemon runs it holds the lines itself, and this says that they are busy.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:every output is in its safe level",
            "1:an output could not be driven: unplug the heaters by hand",
            "2:neither the list of driven lines nor the configuration can be read, so nothing was driven; "
            + "or the command was not understood"},
        footer = {"", "Example:", "  conetender safe --config /etc/conetender/conetender.toml", ""})
public final class SafeCommand implements Callable<Integer> {

    private final Function<Lines, List<SafeOutputs.Outcome>> drive;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ConfigFile configFile;

    @Mixin
    private StateFolder state;

    /** On the kernel's own lines. */
    public SafeCommand() {
        this(SafeOutputs::drive);
    }

    /** @param drive what makes the lines safe: on a machine without any, something that records */
    public SafeCommand(Function<Lines, List<SafeOutputs.Outcome>> drive) {
        this.drive = drive;
    }

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        // With the folder named, an edited configuration is not even looked at unless it is needed.
        Optional<Config> early = state.named().isPresent() ? Optional.empty() : configFile.load(err);
        Path folder = state.of(early);
        Optional<Lines> lines = driven(folder)
                .or(() -> configured(state.named().isPresent() ? configFile.load(err) : early));
        if (lines.isEmpty()) {
            err.println("NOTHING was made safe: neither a list of driven lines in " + folder
                    + " nor the configuration can be read. Unplug the heaters by hand; then mend the "
                    + "configuration, or name the folder with --state, and run this again.");
            err.flush();
        }
        return lines.map(this::drive).orElse(CheckCommand.REFUSED);
    }

    private Optional<Lines> driven(Path folder) {
        try {
            Optional<Lines> lines = DrivenLines.load(folder);
            say(lines.isPresent() ? "By the list of lines that the daemon drove, in " + folder + ":"
                    : "There is no list of driven lines in " + folder + ".");
            return lines;
        } catch (IOException e) {
            spec.commandLine().getErr().println(e.getMessage());
            return Optional.empty();
        }
    }

    private Optional<Lines> configured(Optional<Config> config) {
        config.ifPresent(c -> say("By the lines of the configuration:"));
        return config.map(c -> Wiring.lines(c.hardware().gpio()));
    }

    private void say(String sentence) {
        spec.commandLine().getOut().println(sentence);
    }

    private int drive(Lines lines) {
        List<SafeOutputs.Outcome> outcomes = drive.apply(lines);
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
