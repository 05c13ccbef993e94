package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.concurrent.Callable;
import org.conetender.core.unit.Text;
import org.conetender.sim.trial.ControlTrial;
import org.conetender.sim.trial.Target;
import org.conetender.sim.trial.TrialReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code soak}: long trials in simulation, with figures. Touches no cone, no broker and no file. */
@Command(name = "soak", sortOptions = false,
        description = {"Tries the daemon's parts on many simulated cones and prints what came of it.",
            "Takes minutes to an hour of all processors; nothing real is switched."},
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:every target was met", "1:a target was missed; the lines say which",
            "2:an option is wrong; nothing was run"},
        footerHeading = "%nExample:%n",
        footer = {"  conetender soak --control --cones 200 --calm-hours 3000"})
public final class SoakCommand implements Callable<Integer> {

    private static final int MISSED = 1;
    private static final int BAR = 40;

    @Spec
    private CommandSpec spec;

    @Option(names = "--control", required = true,
            description = "the heating law: holds random cones beside other laws, breaks things")
    private boolean control;

    @Option(names = "--cones", paramLabel = "N", defaultValue = "1000",
            description = "cones that every law holds for a day; default: ${DEFAULT-VALUE}")
    private int cones;

    @Option(names = "--mishaps", paramLabel = "N", defaultValue = "300",
            description = "cones to which every mishap happens; default: ${DEFAULT-VALUE}")
    private int mishaps;

    @Option(names = "--calm-hours", paramLabel = "H", defaultValue = "30000",
            description = "hours in which nothing is wrong; default: ${DEFAULT-VALUE}")
    private int calmHours;

    @Option(names = "--threads", paramLabel = "N", description = "default: one for each processor")
    private Integer threads;

    @Option(names = "--json", description = "print one JSON object for another program")
    private boolean json;

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "show this help")
    private boolean help;

    private int shownPercent = -1;

    @Override
    public Integer call() throws IOException, InterruptedException {
        int workers = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        least("--cones", cones);
        least("--mishaps", mishaps);
        least("--calm-hours", calmHours);
        least("--threads", workers);
        TrialReport report = ControlTrial.run(new ControlTrial.Plan(cones, mishaps, calmHours, workers),
                this::progress);
        PrintWriter err = spec.commandLine().getErr();
        err.println();
        err.flush();
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(asJson(report));
        } else {
            report.lines().forEach(out::println);
            out.println("Targets");
            report.targetLines().forEach(out::println);
            out.println(Text.of("Speed at a step a second: %.1f million simulated hours in an hour of one"
                    + " processor", report.hoursPerCpuHour() / 1e6));
        }
        out.flush();
        return report.targets().stream().allMatch(Target::met) ? 0 : MISSED;
    }

    private void least(String option, int value) {
        if (value < 1) {
            throw new ParameterException(spec.commandLine(), Text.of("%s %d: give 1 or more", option, value));
        }
    }

    private void progress(double share) {
        int percent = (int) (share * 100);
        if (percent != shownPercent) {
            shownPercent = percent;
            int full = percent * BAR / 100;
            PrintWriter err = spec.commandLine().getErr();
            err.print(Text.of("\r[%s%s] %3d %%", "#".repeat(full), "-".repeat(BAR - full), percent));
            err.flush();
        }
    }

    private static String asJson(TrialReport report) throws IOException {
        StringWriter text = new StringWriter();
        SoakJson.write(report, text);
        return text.toString();
    }
}
