package org.conetender.app.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import org.conetender.core.unit.Text;
import org.conetender.sim.search.Passes;
import org.conetender.sim.search.Plan;
import picocli.CommandLine.Option;

/** {@code soak --search}: everything that can happen to one cone, in every order. */
final class SearchPart {

    private static final double NANOS = 1e9;

    @Option(names = "--full", description = "with --search: more than a million different states; "
            + "minutes of two processors")
    private boolean full;

    @Option(names = "--states", paramLabel = "N", description = "with --search: states of the least pass")
    private Integer states;

    /** States of the least pass. */
    int states() {
        return states != null ? states : full ? Plan.FULL : Plan.REDUCED;
    }

    /** Runs it. @return whether nothing was found */
    boolean run(int threads, PrintWriter out, Consumer<Double> progress) throws InterruptedException {
        long began = cpuNanos();
        Passes.All all = Passes.run(Plan.passes(states()), threads, progress);
        List<Passes.Done> done = all.done();
        double cpuS = (cpuNanos() - began) / NANOS;
        done.forEach(d -> d.lines().forEach(out::println));
        long reached = done.stream().mapToLong(d -> d.outcome().states()).sum();
        long moves = done.stream().mapToLong(d -> d.outcome().edges()).sum();
        long ticks = done.stream().mapToLong(d -> d.outcome().ticks()).sum();
        long broken = done.stream().mapToLong(d -> d.outcome().findings().size()).sum();
        out.println(Text.of("Together %d different states (%d, counted in each pass anew), %d moves,"
                + " %d ticks, each judged; %d rules broken", all.distinct(), reached, moves, ticks, broken));
        out.println(Text.of("Speed: %.0f states, %.0f ticks in a second of one processor; %.0f s in all",
                reached / cpuS, ticks / cpuS, cpuS));
        return broken == 0;
    }

    private static long cpuNanos() {
        return ProcessHandle.current().info().totalCpuDuration().map(Duration::toNanos).orElse(0L);
    }
}
