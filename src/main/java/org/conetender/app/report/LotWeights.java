package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.conetender.core.batch.Yield;
import org.conetender.core.unit.Text;

/** What the weighed harvests of a lot gave, of each gram of cysts, and what age does to that. */
record LotWeights(Measured measured, List<Story> stories) {

    /** A harvest is weighed to about a tenth: how well it is drained differs by so much (*guess*). */
    private static final double PART = 0.1;

    private static final int HUNDREDTHS = 100;

    private double[] perGram() {
        return stories.stream().flatMap(s -> s.weight().stream()).mapToDouble(Yield::perGram).toArray();
    }

    private Optional<Trend> trend() {
        return Trend.scattered(Trend.points(measured, stories, (s, days) -> s.weight().map(y ->
                new Trend.Point(days, y.perGram(), PART * y.perGram()))));
    }

    void print(PrintWriter out) {
        double[] all = perGram();
        if (all.length > 0) {
            out.println(Text.of("  weighed %s: %.1f g wet of each gram of cysts%s", all.length == 1 ? "once"
                    : "after " + all.length + " batches", DoubleStream.of(all).average().orElseThrow(),
                    all.length == 1 ? "" : Text.of(" (%.1f to %.1f)",
                    DoubleStream.of(all).min().orElseThrow(), DoubleStream.of(all).max().orElseThrow())));
        }
        trend().ifPresent(t -> out.println(t.words("yield changes by %+.2f g/g a month (± %.2f)")));
    }

    /** Nothing where nobody weighed. */
    void put(Map<String, Object> m) {
        double[] all = perGram();
        if (all.length > 0) {
            m.put("wet_g_per_g", DoubleStream.of(all).mapToObj(BatchTable::tenths).toList());
        }
        trend().ifPresent(t -> m.put("wet_g_per_g_per_month", List.of(
                BatchTable.rounded(t.perMonth(), HUNDREDTHS), BatchTable.rounded(t.sd(), HUNDREDTHS))));
    }
}
