package org.conetender.sim.swarm;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.conetender.sim.Coverage;
import org.conetender.sim.Invariants.Violation;
import org.conetender.sim.Jobs;
import org.conetender.sim.Parts;

/** Many stories on many threads. Each is told on one, so what comes of it does not depend on their number. */
public final class Swarm {

    /**
     * @param from first seed  @param seeds how many
     * @param hours of each story  @param threads how many
     * @param twice whether each is told twice, to see that it comes to the same
     */
    public record Plan(long from, int seeds, int hours, int threads, boolean twice) {}

    /**
     * A story that broke something.
     *
     * @param tale as drawn  @param violation the first
     */
    public record Broken(Tale tale, Violation violation) {}

    /** What one story came to. */
    record One(Tale tale, Play.Played played, boolean same, double cpuS) {}

    private Swarm() {}

    /**
     * Tells them all. What they came to can be read before any story that broke something is shrunk.
     *
     * @param progress is told the share that is done, on the calling thread
     */
    public static SwarmReport run(Plan plan, Consumer<Double> progress) throws InterruptedException {
        return run(plan, Parts.WHOLE, progress);
    }

    static SwarmReport run(Plan plan, Parts parts, Consumer<Double> progress)
            throws InterruptedException {
        One[] told = new One[plan.seeds()];
        List<Callable<Runnable>> jobs = new ArrayList<>();
        for (int i = 0; i < plan.seeds(); i++) {
            int place = i;
            jobs.add(() -> {
                One one = told(Tales.of(plan.from() + place, plan.hours()), parts, plan.twice());
                return () -> told[place] = one;
            });
        }
        Jobs.run(jobs, plan.threads(), progress);
        SwarmReport report = new SwarmReport(plan, new Coverage());
        // In the order of their seeds, whichever was done first.
        for (One one : told) {
            report.add(one);
        }
        return report;
    }

    private static One told(Tale tale, Parts parts, boolean twice) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long began = threads.getCurrentThreadCpuTime();
        Play.Played once = Play.of(tale, parts);
        double cpuS = (threads.getCurrentThreadCpuTime() - began) / 1e9;
        return new One(tale, once, !twice || Play.of(tale, parts).trace() == once.trace(), cpuS);
    }

    /** Tells one story; what it broke first, if anything. */
    public static List<Violation> tell(Tale tale) {
        return Play.of(tale, Parts.WHOLE).broken();
    }
}
