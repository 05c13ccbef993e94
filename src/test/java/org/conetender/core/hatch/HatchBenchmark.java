package org.conetender.core.hatch;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
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
 * What the cysts cost: a tick, a forecast with its harvest, a month of a reading a second. Aims: 1 µs, 2 ms,
 * 5 s. Run by {@code mvn -Pbench test-compile exec:exec}; no test asserts its figures.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(2)
public class HatchBenchmark {

    private static final int MONTH_S = 31 * 86_400;

    private final Projection.Plant plant = new Projection.Plant(2, 25, 1.1, Room.constant(20));
    private final Projection water = new Projection(24, plant, new Projection.Plan(27, 20, 328, 0));
    private Development done = new Development(150, 155, 0, 0, 0);
    private double waterC = 24;
    private Optional<ThermometerLog> month = Optional.empty();

    /** What every second of a batch costs. */
    @Benchmark
    public Development tick() {
        waterC = waterC > 28 ? 24 : waterC + 0.01;
        done = done.advance(1_000, waterC - 0.1, waterC + 0.1, Zones.USUAL);
        done = done.degreeHours() > 400 ? Development.NONE : done;
        return done;
    }

    /** Everything that is said of a batch anew: the distribution of its harvest point and hatched share. */
    @Benchmark
    public Forecast forecast() {
        return Forecast.of(done, Speed.UNKNOWN_LOT, water, Zones.USUAL.rate());
    }

    /** What a report sets off: a lot anew that ten batches taught. Not in a tick. */
    @Benchmark
    public Speed lotAnew() {
        List<Lesson> batch = List.of(new Lesson(new Lesson.At(230, 232, 16), new Lesson.Sight.First()),
                new Lesson(new Lesson.At(340, 343, 24), new Lesson.Sight.Judged(Lesson.Word.RIGHT)));
        return Learnt.of(Learnt.Prior.UNKNOWN, Collections.nCopies(10, batch), List.of());
    }

    /** And when its food is best. */
    @Benchmark
    public Harvest harvest() {
        return Harvest.of(Course.from(done, water, Zones.USUAL.rate()), Speed.UNKNOWN_LOT);
    }

    /** 2.7 million readings from wetting to forecast. */
    @Benchmark
    @OutputTimeUnit(TimeUnit.MILLISECONDS)
    public Replay monthOfSeconds() {
        ThermometerLog log = month.orElseGet(HatchBenchmark::month);
        month = Optional.of(log);
        return log.replay(new Replay.Question(Speed.UNKNOWN_LOT, Zones.USUAL, log.firstMs(),
                new Replay.Surroundings(20, 2)));
    }

    private static ThermometerLog month() {
        long[] ms = new long[MONTH_S];
        double[] c = new double[MONTH_S];
        for (int i = 0; i < MONTH_S; i++) {
            ms[i] = i * 1_000L;
            c[i] = 26 + 2 * Math.sin(i / 9_000.0) + 0.0625 * (i % 3);
        }
        return ThermometerLog.of(ms, c);
    }
}
