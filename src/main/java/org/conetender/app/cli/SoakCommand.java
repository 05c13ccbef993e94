package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.conetender.app.trial.HourPilot;
import org.conetender.core.unit.Text;
import org.conetender.sim.trial.ControlTrial;
import org.conetender.sim.trial.HourTrial;
import org.conetender.sim.trial.Target;
import org.conetender.sim.trial.TrialReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code soak}: long trials in simulation, with figures. Touches no cone, no broker and no file. */
@Command(name = "soak", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Tries the daemon's parts on many simulated cones and prints what came of it.",
            "Takes minutes to an hour of all processors; nothing real is switched."},
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:every target was met",
                "1:a target was missed or a rule broke; the lines say which",
            "2:an option is wrong; nothing was run"},
        footerHeading = "%nExample:%n",
        footer = {"  conetender soak --control --cones 200 --calm-hours 3000",
                "  conetender soak --search --full"})
public final class SoakCommand implements Callable<Integer> {

    private static final int MISSED = 1;
    private static final int BAR = 40;
    /** Of the progress; the hours asked for have the rest (guess: about so at the usual numbers). */
    private static final double LAW_SHARE = 0.8;

    @Spec
    private CommandSpec spec;

    @Option(names = "--control",
            description = "the heating law: holds random cones beside other laws, breaks things; and "
                    + "brings batches to an hour")
    private boolean control;

    @Mixin
    private SearchPart search;

    @Option(names = "--cones", paramLabel = "N", defaultValue = "1000",
            description = "cones that every law holds for a day; default: ${DEFAULT-VALUE}")
    private int cones;

    @Option(names = "--mishaps", paramLabel = "N", defaultValue = "300",
            description = "cones to which every mishap happens; default: ${DEFAULT-VALUE}")
    private int mishaps;

    @Option(names = "--calm-hours", paramLabel = "H", defaultValue = "30000",
            description = "hours in which nothing is wrong; default: ${DEFAULT-VALUE}")
    private int calmHours;

    @Option(names = "--hours-asked", paramLabel = "N", defaultValue = "200",
            description = "batches that are wanted at an hour; default: ${DEFAULT-VALUE}")
    private int hoursAsked;

    @Option(names = "--threads", paramLabel = "N", description = "default: one for each processor")
    private Integer threads;

    @Option(names = "--json", description = "print one JSON object for another program")
    private boolean json;

    private int shownPercent = -1;

    @Override
    public Integer call() throws IOException, InterruptedException {
        int workers = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        least("--threads", workers);
        if (search.wanted()) {
            least("--states", search.states());
            boolean well = search.run(workers, spec.commandLine().getOut(), this::progress);
            spec.commandLine().getOut().flush();
            return well ? 0 : MISSED;
        }
        if (!control) {
            throw new ParameterException(spec.commandLine(), "--control or --search is missing.");
        }
        least("--cones", cones);
        least("--mishaps", mishaps);
        least("--calm-hours", calmHours);
        least("--hours-asked", hoursAsked);
        TrialReport report = ControlTrial.run(new ControlTrial.Plan(cones, mishaps, calmHours, workers),
                share -> progress(LAW_SHARE * share));
        HourTrial hours = HourTrial.run(new HourTrial.Plan(hoursAsked, workers, HourPilot.BAND.leastC(),
                HourPilot.BAND.mostC()), HourPilot.schools(),
                share -> progress(LAW_SHARE + (1 - LAW_SHARE) * share));
        List<String> lines = Stream.concat(report.lines().stream(), hours.lines().stream()).toList();
        List<Target> targets = Stream.concat(report.targets().stream(), hours.targets().stream()).toList();
        PrintWriter err = spec.commandLine().getErr();
        err.println();
        err.flush();
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(asJson(targets, lines, report.hoursPerCpuHour()));
        } else {
            lines.forEach(out::println);
            out.println("Targets");
            targets.stream().map(Target::line).forEach(out::println);
            out.println(Text.of("Speed at a step a second: %.1f million simulated hours in an hour of one"
                    + " processor", report.hoursPerCpuHour() / 1e6));
        }
        out.flush();
        return targets.stream().allMatch(Target::met) ? 0 : MISSED;
    }

    private void least(String option, int value) {
        if (value < 1) {
            throw new ParameterException(spec.commandLine(),
                    Text.of("%s %d: give 1 or more.", option, value));
        }
    }

    private synchronized void progress(double share) {
        int percent = (int) (share * 100);
        if (percent != shownPercent) {
            shownPercent = percent;
            int full = percent * BAR / 100;
            PrintWriter err = spec.commandLine().getErr();
            err.print(Text.of("\r[%s%s] %3d %%", "#".repeat(full), "-".repeat(BAR - full), percent));
            err.flush();
        }
    }

    private static String asJson(List<Target> targets, List<String> lines, double hoursPerCpuHour)
            throws IOException {
        StringWriter text = new StringWriter();
        SoakJson.write(targets, lines, hoursPerCpuHour, text);
        return text.toString();
    }
}
