package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import org.conetender.core.unit.Text;
import org.conetender.sim.Jobs;

/**
 * The trial of crossed wires: a whole daemon looks after pairs of random cones, of which one is filled anew
 * beside the other. Something is crossed at that moment, or nothing is. Seeds are fixed and were not looked
 * at while the figures were chosen.
 */
public final class PairTrial {

    private static final long FIRST_SEED = 116_000_000;
    private static final long FIRST_CALM_SEED = 117_000_000;
    private static final int CALM_H = 48;
    private static final double P95 = 0.95;
    private static final double MINUTE_S = 60;
    private static final double PERCENT = 100;

    /**
     * @param pairs in which each mistake is made, at least 1
     * @param calmHours of cones without a mistake, at least 1
     * @param threads that work on it
     */
    public record Plan(int pairs, int calmHours, int threads) {}

    private final Plan plan;
    private final Map<PairRun.Mistake, List<PairRun.Notice>> met = new EnumMap<>(PairRun.Mistake.class);
    private final Map<Pair.Standing, List<PairRun.Calm>> calm = new EnumMap<>(Pair.Standing.class);

    private PairTrial(Plan plan) {
        this.plan = plan;
        for (PairRun.Mistake m : PairRun.Mistake.values()) {
            met.put(m, new ArrayList<>());
        }
        for (Pair.Standing s : Pair.Standing.values()) {
            calm.put(s, new ArrayList<>());
        }
    }

    /**
     * Runs it on so many threads of its own.
     *
     * @param progress hears the share that is done, 0..1, on the calling thread
     * @throws InterruptedException if the caller was interrupted; what was begun is given up
     */
    public static PairTrial run(Plan plan, Consumer<Double> progress) throws InterruptedException {
        return run(FIRST_SEED, FIRST_CALM_SEED, plan, progress);
    }

    /** The same on other seeds. */
    static PairTrial run(long firstSeed, long firstCalmSeed, Plan plan, Consumer<Double> progress)
            throws InterruptedException {
        PairTrial trial = new PairTrial(plan);
        List<Callable<Runnable>> jobs = new ArrayList<>();
        for (PairRun.Mistake m : PairRun.Mistake.values()) {
            for (int i = 0; i < plan.pairs(); i++) {
                long seed = firstSeed + i;
                jobs.add(() -> {
                    PairRun.Notice n = new PairRun(Pair.draw(seed, Pair.Standing.APART)).run(m);
                    return () -> trial.met.get(m).add(n);
                });
            }
        }
        for (Pair.Standing s : Pair.Standing.values()) {
            int each = Math.min(CALM_H, Math.ceilDiv(plan.calmHours(), 2));
            for (int i = 0; i < Math.ceilDiv(plan.calmHours(), 2 * each); i++) {
                long seed = firstCalmSeed + i;
                jobs.add(() -> {
                    PairRun.Calm c = new PairRun(Pair.draw(seed, s)).calm(each);
                    return () -> trial.calm.get(s).add(c);
                });
            }
        }
        Jobs.run(jobs, plan.threads(), progress);
        return trial;
    }

    /** What came out. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(Text.of("Crossed wires, each in %d pairs of cones as above, one of them just filled anew;"
                + " of those in which nothing was named before: minutes until named", plan.pairs()));
        met.forEach((m, all) -> {
            List<PairRun.Notice> notices = all.stream().filter(PairRun.Notice::clear).toList();
            Map<String, Integer> others = new TreeMap<>();
            notices.stream().map(PairRun.Notice::first).filter(f -> !f.equals("wrong-cone"))
                    .forEach(f -> others.merge(f.isEmpty() ? "nothing" : f, 1, Integer::sum));
            Quantiles delay = quantiles(notices, n -> n.delayS() / MINUTE_S);
            lines.add(Text.of("  %-20s named %d of %d, before anything else %d; median %.0f, p95 %.0f;"
                    + " at most %.1f K above the set-point (p95); named first otherwise %s", m.words(),
                    notices.stream().filter(n -> n.delayS() >= 0).count(), notices.size(),
                    notices.stream().filter(n -> n.first().equals("wrong-cone")).count(), delay.at(0.5),
                    delay.at(P95), quantiles(notices, PairRun.Notice::hottestK).at(P95), others));
        });
        calm.forEach((s, runs) -> lines.add(Text.of("  nothing crossed, %s: %.0f h of cones, named %d, "
                + "called welded %d; asked %d times, %.2f %% of the time", words(s), hours(s),
                runs.stream().mapToInt(PairRun.Calm::crossed).sum(),
                runs.stream().mapToInt(PairRun.Calm::welded).sum(),
                runs.stream().mapToInt(PairRun.Calm::asked).sum(),
                2 * PERCENT * runs.stream().mapToDouble(PairRun.Calm::askedS).sum() / 3_600 / hours(s))));
        return lines;
    }

    /** What was aimed at: no name where nothing is wrong. */
    public List<Target> targets() {
        List<Target> targets = new ArrayList<>();
        calm.forEach((s, runs) -> targets.addAll(List.of(
                new Target("crossed wires named where none are, " + words(s),
                        runs.stream().mapToInt(PairRun.Calm::crossed).sum(), 0),
                new Target("switches called welded that are not, " + words(s),
                        runs.stream().mapToInt(PairRun.Calm::welded).sum(), 0))));
        return targets;
    }

    private double hours(Pair.Standing s) {
        return calm.get(s).stream().mapToDouble(PairRun.Calm::hours).sum();
    }

    private static String words(Pair.Standing s) {
        return switch (s) {
            case APART -> "cones apart";
            case TOUCHING -> "cones that touch, untold";
            case TOUCHING_AND_TOLD -> "cones that touch, told";
        };
    }

    private static Quantiles quantiles(List<PairRun.Notice> some, ToDoubleFunction<PairRun.Notice> of) {
        return new Quantiles(some.stream().mapToDouble(of).toArray());
    }
}
