package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.conetender.core.unit.Text;
import org.conetender.sim.Jobs;

/**
 * The trial of hours asked for: batches of random lots in random cones, each wanted at a random hour. What
 * can be kept is decided by the truth: the batch's own T90 when held at either end of the band from the
 * moment of the asking on.
 * Seeds are fixed and were not looked at while the figures of the solver were chosen.
 */
public final class HourTrial {

    private static final long FIRST_SEED = 114_000_000;
    /** Within so many minutes of the hour (issue). */
    private static final double PUNCTUAL_MIN = 20;
    private static final double SHARE = 0.9;
    private static final double P90 = 0.9;
    private static final double PERCENT = 100;
    private static final double MIDDLE_C = 26;
    /** Asked of a cone too cold to hatch anything, about h. */
    private static final double UNHATCHED_H = 60;

    /** @param batches at least 1  @param threads that work on it  @param leastC of the band  @param mostC */
    public record Plan(int batches, int threads, double leastC, double mostC) {}

    /** @param hourH wanted, after wetting  @param outsideMin how far it lies from what can truly be kept */
    record Asked(String school, TrialHatch hatch, double hourH, double outsideMin, HourRun.End end) {

        boolean feasible() {
            return outsideMin == 0;
        }

        /** Missed by what nobody would call punctual, whatever is done. */
        boolean hopeless() {
            return outsideMin > PUNCTUAL_MIN;
        }

        /** How far the truth was from the hour, minutes; later is above 0. */
        double offMin() {
            return 60 * (end.t90H() - hourH);
        }

        boolean punctual() {
            return Math.abs(offMin()) <= PUNCTUAL_MIN;
        }
    }

    private final Plan plan;
    private final List<String> schools;
    private final List<Asked> all = new ArrayList<>();

    private HourTrial(Plan plan, List<String> schools) {
        this.plan = plan;
        this.schools = schools;
    }

    /**
     * Runs it on so many threads of its own.
     *
     * @param schools by what they are called; each pilots the same batches. Those whose name begins with
     *     {@value #SCATTERED} pilot batches that differ from their lot
     * @param progress hears the share that is done, 0..1, on the calling thread
     * @throws InterruptedException if the caller was interrupted; what was begun is given up
     */
    public static HourTrial run(Plan plan, Map<String, Pilot.School> schools, Consumer<Double> progress)
            throws InterruptedException {
        return run(FIRST_SEED, plan, schools, progress);
    }

    /** The same on other seeds. */
    static HourTrial run(long firstSeed, Plan plan, Map<String, Pilot.School> schools,
            Consumer<Double> progress) throws InterruptedException {
        Map<String, Pilot.School> inOrder = new LinkedHashMap<>(schools);
        HourTrial trial = new HourTrial(plan, List.copyOf(inOrder.keySet()));
        List<Callable<Runnable>> jobs = new ArrayList<>();
        for (int i = 0; i < plan.batches(); i++) {
            TrialHatch hatch = TrialHatch.draw(firstSeed + i);
            Switches on = Switches.values()[i % Switches.values().length];
            jobs.add(() -> {
                List<Asked> some = new ArrayList<>();
                Map<Double, Window> windows = new TreeMap<>();
                inOrder.forEach((name, school) -> {
                    double speed = name.startsWith(SCATTERED) ? hatch.scatter() : 1;
                    HourRun run = new HourRun(hatch, speed, on);
                    Window w = windows.computeIfAbsent(speed, _ -> Window.of(run, plan));
                    double hourH = w.hourH(hatch);
                    some.add(new Asked(name, hatch, hourH, w.outsideMin(hourH),
                            run.run(school.of(hatch), hourH)));
                });
                return () -> trial.all.addAll(some);
            });
        }
        Jobs.run(jobs, plan.threads(), progress);
        return trial;
    }

    /** Pilots of that name fly batches that are quicker or slower than their lot, as real ones are. */
    public static final String SCATTERED = "batches scattered";

    /** The true T90 when the batch is held at either end of the band from the asking on; NaN for never. */
    private record Window(double soonest, double latest) {

        static Window of(HourRun run, Plan plan) {
            return new Window(run.held(plan.mostC()), run.held(plan.leastC()));
        }

        /** The hour that somebody asks for, h after wetting. */
        double hourH(TrialHatch hatch) {
            double until = Double.isNaN(latest) ? Double.isNaN(soonest) ? UNHATCHED_H : 2 * soonest : latest;
            double from = Double.isNaN(soonest) ? until / 2 : soonest;
            double inside = from + hatch.wish() * (until - from);
            double beyond = hatch.beyondH() < 0 ? from : until;
            return Math.max(hatch.askedAtH() + 1, hatch.beyondH() == 0 ? inside : beyond + hatch.beyondH());
        }

        /** How far an hour lies outside, minutes: 0 where it can be kept. */
        double outsideMin(double hourH) {
            return Double.isNaN(soonest) ? Double.MAX_VALUE
                    : 60 * Math.max(0, Math.max(soonest - hourH, Double.isNaN(latest) ? 0 : hourH - latest));
        }
    }

    /** What came out, a few lines for each school. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(Text.of("Hours asked for: %d batches in cones as above, true T90 against the hour",
                plan.batches()));
        for (String s : schools) {
            List<Asked> feasible = of(s, Asked::feasible);
            List<Asked> kept = of(s, a -> a.feasible() && a.end().promised());
            lines.add(Text.of("  %s", s));
            List<Asked> strong = of(s, a -> a.feasible() && !a.hatch().cone().weak());
            lines.add(Text.of("    can be kept: %d; within %.0f min %.0f %%, refused %d; of the %d whose "
                    + "heater holds 27 °C: %.0f %%, refused %d", feasible.size(), PUNCTUAL_MIN,
                    PERCENT * share(feasible, Asked::punctual), feasible.size() - kept.size(), strong.size(),
                    PERCENT * share(strong, Asked::punctual),
                    strong.stream().filter(a -> !a.end().promised()).count()));
            lines.add(Text.of("    of those promised: off by median %+.0f min, 90 %% within %.0f; held below "
                    + "26 °C %+.0f, above %+.0f", at(kept, 0.5), absolute(kept).at(P90),
                    at(kept.stream().filter(a -> a.end().mostC() < MIDDLE_C).toList(), 0.5),
                    at(kept.stream().filter(a -> a.end().leastC() > MIDDLE_C).toList(), 0.5)));
            lines.add(Text.of("    cannot be kept: %d, of which %d were said so at once; aims %.1f to %.1f "
                    + "°C, moved %.0f times in a batch (90 %%)", of(s, Asked::hopeless).size(),
                    of(s, a -> a.hopeless() && !a.end().promised()).size(),
                    of(s, a -> true).stream().mapToDouble(a -> a.end().leastC()).min().orElse(Double.NaN),
                    of(s, a -> true).stream().mapToDouble(a -> a.end().mostC()).max().orElse(Double.NaN),
                    new Quantiles(of(s, a -> true).stream().mapToDouble(a -> a.end().moves()).toArray())
                            .at(P90)));
        }
        return lines;
    }

    /** What was aimed at; nothing for batches that differ from their lot, since nobody knows by how much. */
    public List<Target> targets() {
        List<Target> targets = new ArrayList<>();
        for (String s : schools.stream().filter(n -> !n.startsWith(SCATTERED)).toList()) {
            List<Asked> feasible = of(s, Asked::feasible);
            List<Asked> hopeless = of(s, Asked::hopeless);
            targets.add(new Target("hours missed by over 20 min though they can be kept, " + s + ", share",
                    1 - share(feasible, Asked::punctual), 1 - SHARE, feasible.size() >= Target.LEAST));
            targets.add(new Target("hours that cannot be kept but were promised, " + s + ", share",
                    share(hopeless, a -> a.end().promised()), 0, hopeless.size() >= Target.LEAST));
        }
        return targets;
    }

    private List<Asked> of(String school, Predicate<Asked> which) {
        return all.stream().filter(a -> a.school().equals(school)).filter(which).toList();
    }

    private static double share(List<Asked> some, Predicate<Asked> which) {
        return some.isEmpty() ? Double.NaN : some.stream().filter(which).count() / (double) some.size();
    }

    private static double at(List<Asked> some, double share) {
        return new Quantiles(some.stream().mapToDouble(Asked::offMin).toArray()).at(share);
    }

    private static Quantiles absolute(List<Asked> some) {
        return new Quantiles(some.stream().mapToDouble(a -> Math.abs(a.offMin())).toArray());
    }
}
