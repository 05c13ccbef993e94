package org.conetender.app.cli;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.Consumer;
import org.conetender.app.trial.OwnSeer;
import org.conetender.sim.trial.ForecastTrial;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** {@code soak --forecast}: many batches, and what was told of each against what came. */
final class ForecastPart {

    @Option(names = "--batches", paramLabel = "N", defaultValue = "2016",
            description = "with --forecast: batches, each of a lot of its own; default: ${DEFAULT-VALUE}")
    private int batches;

    @Option(names = "--heating", paramLabel = "KIND", defaultValue = "able",
            converter = KindOfHeating.class, description = "with --forecast: able, batches whose heater "
                + "holds them, which the targets are for; weak, whose heater cannot; none, without one in a "
                + "warm room; default: ${DEFAULT-VALUE}")
    private ForecastTrial.Heating heating;

    /** Reads a small word. */
    static final class KindOfHeating implements ITypeConverter<ForecastTrial.Heating> {
        @Override
        public ForecastTrial.Heating convert(String word) {
            return Arrays.stream(ForecastTrial.Heating.values())
                    .filter(h -> h.name().toLowerCase(Locale.ROOT).equals(word)).findFirst()
                    .orElseThrow(() -> new TypeConversionException("'" + word
                            + "' is none; say able, weak or none"));
        }
    }

    int batches() {
        return batches;
    }

    ForecastTrial run(int threads, Consumer<Double> progress) throws InterruptedException {
        return ForecastTrial.run(new ForecastTrial.Plan(batches, threads, heating), OwnSeer::new, progress);
    }
}
