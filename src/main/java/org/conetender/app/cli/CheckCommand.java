package org.conetender.app.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.conetender.app.config.ConfigLoader;
import org.conetender.app.config.Outcome;
import org.conetender.app.config.SettingDoc;
import org.conetender.app.config.SettingDocs;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code conetender check}: says whether a configuration would be taken, and what it amounts to. */
@Command(name = "check", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Checks a configuration without touching any device: prints every setting as it "
                + "counts, or everything that is wrong with it, each with its line.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:the configuration is good (there may be warnings)",
            "2:it is refused, or the command was not understood"},
        footer = {"", "Examples:",
            "  conetender check --config /etc/conetender/conetender.toml",
            "  conetender check --config larkmoor.toml --json",
            "  conetender check --explain setpoint-c", ""})
public final class CheckCommand implements Callable<Integer> {

    static final int REFUSED = 2;

    @Spec
    private CommandSpec spec;

    @Option(names = {"-c", "--config"}, paramLabel = "FILE", description = "The file to check.")
    private Optional<Path> config = Optional.empty();

    @Option(names = "--json", description = "Answer in JSON, for another program.")
    private boolean json;

    @Option(names = "--explain", paramLabel = "KEY", arity = "0..1", fallbackValue = "",
            description = {"Explain a setting, a section such as cone.limits, or all of them:",
                "purpose, unit, default, range, example."})
    private Optional<String> explain = Optional.empty();

    @Override
    public Integer call() {
        if (explain.isPresent()) {
            return explain(explain.get());
        }
        Path file = config.orElseThrow(() -> new ParameterException(spec.commandLine(),
                "Which file? Name it with --config FILE, or ask --explain about a setting."));
        Outcome outcome = ConfigLoader.load(file);
        // JSON goes to the standard output either way: the program that asked reads only there.
        boolean good = outcome instanceof Outcome.Accepted;
        if (json) {
            spec.commandLine().getOut().println(CheckReport.json(file.toString(), outcome));
        } else if (good) {
            spec.commandLine().getOut().print(CheckReport.text(file.toString(), outcome));
        } else {
            spec.commandLine().getErr().print(CheckReport.text(file.toString(), outcome));
        }
        spec.commandLine().getOut().flush();
        spec.commandLine().getErr().flush();
        return good ? 0 : REFUSED;
    }

    private int explain(String key) {
        List<SettingDoc> found = key.isEmpty() ? SettingDocs.all() : SettingDocs.matching(key);
        if (found.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "There is no setting \"" + key + "\""
                    + SettingDocs.near(key).map(k -> "; did you mean " + k + "?").orElse(".")
                    + " --explain alone lists them all.");
        }
        spec.commandLine().getOut().print(CheckReport.explain(found, json));
        spec.commandLine().getOut().flush();
        return 0;
    }
}
