package org.conetender.app.cli;

import java.util.function.Consumer;
import org.conetender.app.trial.OwnSeer;
import org.conetender.sim.trial.ForecastTrial;
import picocli.CommandLine.Option;

/** {@code soak --forecast}: many batches, and what was told of each against what came. */
final class ForecastPart {

    @Option(names = "--batches", paramLabel = "N", defaultValue = "2016",
            description = "with --forecast: batches, each of a lot of its own; default: ${DEFAULT-VALUE}")
    private int batches;

    int batches() {
        return batches;
    }

    ForecastTrial run(int threads, Consumer<Double> progress) throws InterruptedException {
        return ForecastTrial.run(new ForecastTrial.Plan(batches, threads), OwnSeer::new, progress);
    }
}
