package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import org.conetender.core.unit.Text;
import org.conetender.sim.Jobs;

/**
 * The trial of welded switches under the whole daemon, with its guards and its cut-out, where
 * {@link ControlTrial} has estimate, watch and law alone. Seeds are fixed and were not looked at while
 * anything was chosen.
 */
public final class WeldTrial {

    private static final long FIRST_SEED = 115_000_000;
    private static final double P99 = 0.99;
    private static final double P95 = 0.95;

    /** @param cones each alone and beside another, at least 1  @param threads that work on it */
    public record Plan(int cones, int threads) {}

    /** One row of what came out. */
    private record Row(boolean alone, boolean measured) {
        private String words() {
            return (alone ? "alone" : "beside another") + (measured ? ", room measured" : ", room not");
        }
    }

    private record Met(boolean alone, WeldRun.Notice notice) {}

    private final Plan plan;
    private final List<Met> met = new ArrayList<>();

    private WeldTrial(Plan plan) {
        this.plan = plan;
    }

    /**
     * Runs it on so many threads of its own.
     *
     * @param progress hears the share that is done, 0..1, on the calling thread
     * @throws InterruptedException if the caller was interrupted; what was begun is given up
     */
    public static WeldTrial run(Plan plan, Consumer<Double> progress) throws InterruptedException {
        return run(FIRST_SEED, plan, progress);
    }

    /** The same on other seeds. */
    static WeldTrial run(long firstSeed, Plan plan, Consumer<Double> progress) throws InterruptedException {
        WeldTrial trial = new WeldTrial(plan);
        List<Callable<Runnable>> jobs = new ArrayList<>();
        for (boolean alone : new boolean[] {true, false}) {
            for (int i = 0; i < plan.cones(); i++) {
                long seed = firstSeed + i;
                jobs.add(() -> {
                    Optional<WeldRun.Notice> n = new WeldRun(Pair.draw(seed, Pair.Standing.APART), alone)
                            .run();
                    return () -> n.ifPresent(some -> trial.met.add(new Met(alone, some)));
                });
            }
        }
        Jobs.run(jobs, plan.threads(), progress);
        return trial;
    }

    /** What came out. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(Text.of("A switch welds under the whole daemon, a cut-out behind it, %d cones alone and"
                + " beside another: seconds until no power comes any more, and until a person is told",
                plan.cones()));
        rows().forEach((row, all) -> lines.add(line(row, all)));
        return lines;
    }

    private static String line(Row row, List<WeldRun.Notice> all) {
        Map<String, Integer> names = new TreeMap<>();
        all.forEach(n -> names.merge(n.first().isEmpty() ? "nothing" : n.first(), 1, Integer::sum));
        Quantiles off = of(all, WeldRun.Notice::heatedS);
        Quantiles told = of(all, WeldRun.Notice::toldS);
        Quantiles excess = of(all, WeldRun.Notice::share);
        return Text.of("  %-30s %3d: off median %4.0f  p99 %4.0f; told median %4.0f  p99 %4.0f; excess over"
                + " its bound p95 %.2f  p99 %.2f; first told %s", row.words(), all.size(), off.at(0.5),
                off.at(P99), told.at(0.5), told.at(P99), excess.at(P95), excess.at(P99), names);
    }

    /** What was aimed at. */
    public List<Target> targets() {
        List<Target> targets = new ArrayList<>();
        rows().forEach((row, all) -> targets.add(Target.of("welded under the daemon, " + row.words()
                + ": excess over its bound, p99", of(all, WeldRun.Notice::share), P99, 1)));
        return targets;
    }

    private Map<Row, List<WeldRun.Notice>> rows() {
        Map<Row, List<WeldRun.Notice>> rows = new TreeMap<>(Comparator.comparing(Row::words));
        met.forEach(m -> rows.computeIfAbsent(new Row(m.alone(), m.notice().measured()),
                _ -> new ArrayList<>()).add(m.notice()));
        return rows;
    }

    private static Quantiles of(List<WeldRun.Notice> some, ToDoubleFunction<WeldRun.Notice> of) {
        return new Quantiles(some.stream().mapToDouble(of).toArray());
    }
}
