package org.conetender.app;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.logging.Level;
import org.conetender.app.cli.CheckCommand;
import org.conetender.app.cli.DemoCommand;
import org.conetender.app.cli.ForecastCommand;
import org.conetender.app.cli.Misunderstood;
import org.conetender.app.cli.ReportCommand;
import org.conetender.app.cli.RunCommand;
import org.conetender.app.cli.SafeCommand;
import org.conetender.app.cli.SoakCommand;
import org.conetender.app.cli.TellCommand;
import org.conetender.app.cli.WatchCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command line: one word chooses a command; {@code --help} after it explains it. */
@Command(name = "conetender", mixinStandardHelpOptions = true, version = Main.VERSION,
        synopsisSubcommandLabel = "COMMAND", sortOptions = false,
        description = "Looks after brine shrimp hatching cones: warmth, air, the hour of the harvest.",
        subcommands = {HelpCommand.class},
        exitCodeListHeading = "%nExit codes (each command's help lists its own):%n",
        exitCodeList = {"0:done", "2:the command was not understood", "70:a bug of conetender's"},
        footer = {"", "Examples:", "  conetender demo", "  conetender check --config larkmoor.toml",
            "  conetender tell a started", "  conetender help tell", ""})
public final class Main implements Runnable {

    static final String VERSION = "conetender 0.1.0";

    @Spec
    private CommandSpec spec;

    public static void main(String[] args) {
        // Numbers are written alike everywhere: they are read by programs, and stand beside units.
        Locale.setDefault(Locale.Category.FORMAT, Locale.ROOT);
        Logging.begin(Level.INFO);
        System.exit(commandLine(new RunCommand()).setOut(utf8(FileDescriptor.out))
                .setErr(utf8(FileDescriptor.err))
                .execute(args));
    }

    /** Degree signs and bars, also where the locale is C: every terminal of today reads UTF-8. */
    private static PrintWriter utf8(FileDescriptor to) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(to), StandardCharsets.UTF_8),
                true);
    }

    /** Every command. @param run the daemon, on the kernel's lines or, in a test, on others */
    public static CommandLine commandLine(RunCommand run) {
        CommandLine line = new CommandLine(new Main());
        for (Object command : new Object[] {new DemoCommand(), run, new CheckCommand(), new TellCommand(),
            new WatchCommand(), new ReportCommand(), new ForecastCommand(), new SoakCommand(),
            new SafeCommand()}) {
            line.addSubcommand(command);
        }
        // Each command tells it where it takes -V at all.
        line.getSubcommands().values().forEach(c -> c.getCommandSpec().version(VERSION));
        line.setParameterExceptionHandler(new Misunderstood());
        line.setExecutionExceptionHandler((e, at, parsed) -> {
            at.getErr().println("A bug of conetender's; please report it with these lines.");
            e.printStackTrace(at.getErr());
            at.getErr().flush();
            return Daemon.BUG;
        });
        return line;
    }

    /** No command at all. */
    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Which command? Begin with 'demo' to see it work.");
    }
}
