package org.conetender.app.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.conetender.core.unit.Text;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/**
 * A million rows by a process that has just been started, as {@code forecast} reads them: each figure is one
 * fresh process, in the memory the launcher gives it. Aim: 2 s. Run by {@code mvn -Pbench test-compile
 * exec:exec}; no test asserts its figures.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Measurement(iterations = 1)
@Fork(value = 8, jvmArgsAppend = {"-Xmx256m", "-XX:+UseSerialGC"})
public class LogBenchmark {

    private static final int ROWS = 1_000_000;

    private Path file;

    @Setup
    public void write() throws IOException {
        file = Files.createTempFile("million", ".csv");
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            for (int i = 0; i < ROWS; i++) {
                out.write(Text.of("2026-03-%02d %02d:%02d:%02d,%.2f%n", 1 + i / 86_400, i / 3_600 % 24,
                        i / 60 % 60, i % 60, 26 + i % 50 / 100.0));
            }
        }
    }

    @TearDown
    public void delete() throws IOException {
        Files.delete(file);
    }

    @Benchmark
    public LogReader.Result millionRows() throws BadLog {
        return LogReader.read(file,
                new LogReader.Format(Optional.of(ZoneId.of("Europe/London")), false, false));
    }
}
