package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.conetender.app.trial.HourPilot;
import org.conetender.core.unit.Text;
import org.conetender.sim.Invariants.Violation;
import org.conetender.sim.swarm.Swarm;
import org.conetender.sim.swarm.SwarmReport;
import org.conetender.sim.swarm.Tale;
import org.conetender.sim.trial.ControlTrial;
import org.conetender.sim.trial.ForecastTrial;
import org.conetender.sim.trial.HourTrial;
import org.conetender.sim.trial.PairTrial;
import org.conetender.sim.trial.Target;
import org.conetender.sim.trial.WeldTrial;
import org.conetender.sim.trial.TrialReport;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.Spec;

/** {@code soak}: long trials in simulation, with figures. Touches no cone, no broker and no file. */
@Command(name = "soak", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Tries the daemon's parts on many simulated cones and prints what came of it.",
            "Takes minutes to an hour of all processors; nothing real is switched."},
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:every target was met",
                "1:a target was missed, or too few were tried to judge it, or a rule broke; the lines say "
                + "which",
            "2:an option is wrong; nothing was run"},
        footerHeading = "%nExample:%n",
        footer = {"  conetender soak --control --cones 200 --calm-hours 3000",
            "  conetender soak --seeds 200 --hours 36", "  conetender soak --story broken.txt",
            "  conetender soak --search --full", "  conetender soak --forecast"})
public final class SoakCommand implements Callable<Integer> {

    private static final int MISSED = 1;
    private static final int BAR = 40;
    /** Of the progress; crossed wires have the rest (guess: about so at the usual numbers). */
    private static final double LAW_SHARE = 0.4;
    private static final double HOUR_SHARE = 0.1;
    private static final double WELD_SHARE = 0.2;

    /** Options that only one of the trials has a use for. */
    static final Map<String, List<String>> ONLY = Map.of("--seeds", List.of("--hours", "--from", "--twice"),
            "--search", List.of("--full", "--states"), "--forecast", List.of("--batches", "--heating"),
            "--control", List.of("--cones", "--mishaps", "--calm-hours", "--hours-asked", "--pairs",
            "--pair-hours"));

    @Spec
    private CommandSpec spec;

    @ArgGroup(exclusive = true, multiplicity = "1")
    private What what;

    /** What is tried. */
    private static final class What {
        @Option(names = "--control", required = true,
                description = "the heating law: holds random cones beside other laws, breaks things; "
                        + "brings batches to an hour; crosses the wires of two")
        private boolean control;

        @Option(names = "--search", required = true, description = "everything that can happen to one cone,"
                + " in every order, as far as it reaches")
        private boolean search;

        @Option(names = "--forecast", required = true, description = "the forecast and what it learns: many "
                + "lots, watched and reported of, and when their next batch is really ripe")
        private boolean forecast;

        @Option(names = "--seeds", paramLabel = "N", required = true,
                description = "the whole daemon: N stories of its life, in each of which things go wrong")
        private Integer seeds;

        @Option(names = "--story", paramLabel = "FILE", required = true,
                description = "one story again, as '--seeds' printed it or as you wrote it")
        private Path story;
    }

    @Option(names = "--hours", paramLabel = "H", defaultValue = "36",
            description = "with --seeds: hours of each story; default: ${DEFAULT-VALUE}")
    private int hours;

    @Option(names = "--from", paramLabel = "SEED", defaultValue = "1",
            description = "with --seeds: the first seed; default: ${DEFAULT-VALUE}")
    private long from;

    @Option(names = "--twice",
            description = "with --seeds: tell each story twice, and see that it comes to the same")
    private boolean twice;

    @Mixin
    private SearchPart search;

    @Mixin
    private ForecastPart forecast;

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

    @Option(names = "--pairs", paramLabel = "N", defaultValue = "100",
            description = "pairs of cones in which a switch welds, and each way to cross their wires is "
                    + "tried; default: ${DEFAULT-VALUE}")
    private int pairs;

    @Option(names = "--pair-hours", paramLabel = "H", defaultValue = "3000",
            description = "hours of pairs in which nothing is crossed; default: ${DEFAULT-VALUE}")
    private int pairHours;

    @Option(names = "--threads", paramLabel = "N", description = "default: one for each processor")
    private Integer threads;

    @Option(names = "--json", description = "print one JSON object for another program")
    private boolean json;

    /** What simulated daemons have to say belongs to their worlds, and would tear the bar. Kept alive. */
    private final Logger daemons = Logger.getLogger("org.conetender.agent");

    private int shownPercent = -1;

    @Override
    public Integer call() throws IOException, InterruptedException {
        daemons.setLevel(Level.OFF);
        int workers = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        least("--threads", workers);
        ONLY.forEach(this::fitting);
        if (what.search) {
            least("--states", search.states());
            boolean well = search.run(workers, spec.commandLine().getOut(), this::progress);
            spec.commandLine().getOut().flush();
            return well ? 0 : MISSED;
        }
        if (what.forecast) {
            return forecast(workers);
        }
        if (what.story != null) {
            return story();
        }
        return what.control ? law(workers) : stories(workers);
    }

    private int forecast(int workers) throws IOException, InterruptedException {
        least("--batches", forecast.batches());
        ForecastTrial trial = forecast.run(workers, this::progress);
        return shown(trial.lines(), trial.targets(), 0, "Each batch is followed by the second, twice");
    }

    private int law(int workers) throws IOException, InterruptedException {
        least("--cones", cones);
        least("--mishaps", mishaps);
        least("--calm-hours", calmHours);
        least("--hours-asked", hoursAsked);
        least("--pairs", pairs);
        least("--pair-hours", pairHours);
        TrialReport report = ControlTrial.run(new ControlTrial.Plan(cones, mishaps, calmHours, workers),
                share -> progress(LAW_SHARE * share));
        HourTrial asked = HourTrial.run(new HourTrial.Plan(hoursAsked, workers, HourPilot.BAND.leastC(),
                HourPilot.BAND.mostC()), HourPilot.schools(),
                share -> progress(LAW_SHARE + HOUR_SHARE * share));
        WeldTrial welded = WeldTrial.run(new WeldTrial.Plan(pairs, workers),
                share -> progress(LAW_SHARE + HOUR_SHARE + WELD_SHARE * share));
        double done = LAW_SHARE + HOUR_SHARE + WELD_SHARE;
        PairTrial crossed = PairTrial.run(new PairTrial.Plan(pairs, pairHours, workers),
                share -> progress(done + (1 - done) * share));
        List<String> lines = Stream.of(report.lines(), asked.lines(), welded.lines(), crossed.lines())
                .flatMap(List::stream).toList();
        List<Target> targets = Stream.of(report.targets(), List.of(report.speed()), asked.targets(),
                welded.targets(), crossed.targets()).flatMap(List::stream).toList();
        return shown(lines, targets, report.hoursPerCpuHour(), Text.of("Speed at a step a second: %.1f"
                + " million simulated hours in an hour of one processor", report.hoursPerCpuHour() / 1e6));
    }

    private int stories(int workers) throws IOException, InterruptedException {
        least("--seeds", what.seeds);
        least("--hours", hours);
        SwarmReport report = Swarm.run(new Swarm.Plan(from, what.seeds, hours, workers, twice),
                this::progress);
        String speed = Text.of("Speed at a tick a second: %.0f cone-hours in an hour of one processor",
                report.hoursPerCpuHour());
        if (report.broken().isEmpty()) {
            return shown(report.lines(), report.targets(), report.hoursPerCpuHour(), speed);
        }
        if (json) {
            report.shrink(this::progress);
            return shown(Stream.of(report.lines(), report.stories()).flatMap(List::stream).toList(),
                    report.targets(), report.hoursPerCpuHour(), speed);
        }
        // Shrinking takes its time: what they came to is read meanwhile.
        int ended = shown(report.lines(), report.targets(), report.hoursPerCpuHour(), speed);
        spec.commandLine().getErr().println("Making the stories that failed as short as they can be ...");
        report.shrink(this::progress);
        spec.commandLine().getErr().println();
        report.stories().forEach(spec.commandLine().getOut()::println);
        spec.commandLine().getOut().flush();
        return ended;
    }

    private int story() throws IOException {
        Tale tale;
        try {
            tale = Tale.parse(Files.readString(what.story));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), what.story + ": " + e.getMessage(), e);
        } catch (NoSuchFileException e) {
            throw new ParameterException(spec.commandLine(), what.story
                    + ": there is no such file; keep what '--seeds' printed in one.", e);
        }
        List<Violation> broken = Swarm.tell(tale);
        PrintWriter out = spec.commandLine().getOut();
        broken.forEach(v -> out.println(SwarmReport.line(v)));
        if (broken.isEmpty()) {
            out.println("It went well to the end: nothing was broken.");
        }
        out.flush();
        return broken.isEmpty() ? 0 : MISSED;
    }

    private int shown(List<String> all, List<Target> targets, double hoursPerCpuHour, String speed)
            throws IOException {
        // Of nothing, or where the worst never came, there is no figure.
        List<String> lines = all.stream().map(l -> l.replace("NaN", "  -")).toList();
        PrintWriter err = spec.commandLine().getErr();
        err.println();
        err.flush();
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(asJson(targets, lines, hoursPerCpuHour));
        } else {
            lines.forEach(out::println);
            out.println("Targets");
            targets.stream().map(Target::line).forEach(out::println);
            if (!targets.stream().allMatch(Target::enough)) {
                out.println("Too few were tried to judge all of these: ask for more of them.");
            }
            out.println(speed);
        }
        out.flush();
        return targets.stream().allMatch(Target::met) ? 0 : MISSED;
    }

    private void fitting(String trial, List<String> options) {
        ParseResult said = spec.commandLine().getParseResult();
        options.stream().filter(o -> said.hasMatchedOption(o) && !said.hasMatchedOption(trial)).findFirst()
                .ifPresent(o -> {
                    throw new ParameterException(spec.commandLine(), o + " is for " + trial
                            + "; leave it out here.");
                });
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
