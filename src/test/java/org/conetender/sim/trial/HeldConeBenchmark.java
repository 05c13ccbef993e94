package org.conetender.sim.trial;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long one simulated second of a held cone takes; 1e9 over the nanoseconds are simulated hours in an hour
 * of one processor. Run by {@code mvn -Pbench test-compile exec:exec}; no test asserts its figures.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(2)
public class HeldConeBenchmark {

    private static final long SEED = 77_100;

    private final TrialCone cone = TrialCone.draw(SEED);
    private final TrialBench bench = new TrialBench(cone);
    private final Laws.Ours law = new Laws.Ours(cone, Switches.SOLID_STATE.kind());
    private boolean on;

    /** Plant, room and probe, and what a daemon sees of them. */
    @Benchmark
    public double plantAlone() {
        bench.step(on);
        on = !on;
        return bench.seen(on).probeC();
    }

    /** The same with estimate, watch and law. */
    @Benchmark
    public boolean plantEstimateWatchAndLaw() {
        bench.step(on);
        on = law.on(bench.seen(on));
        return on;
    }
}
