package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.conetender.core.batch.Yield;
import org.conetender.core.hatch.Efficiency;
import org.conetender.core.hatch.Speed;
import org.conetender.core.unit.Text;

/**
 * What the weighed harvests of a lot gave, of each gram of cysts, what age does to that, and how many nauplii
 * it was, once a count tells ({@link Efficiency}).
 *
 * @param speed of the lot
 */
record LotWeights(Measured measured, List<Story> stories, Speed speed) {

    /** Said of a lot that was weighed only. */
    private static final List<String> NO_COUNT = List.of(
            "  how many nauplii that is, no weight tells: nobody has published what one weighs",
            "  wet, out of a sieve. A 'count' of a ripe batch of this lot tells it for all.");

    /** A harvest is weighed to about a tenth: how well it is drained differs by so much (*guess*). */
    private static final double PART = 0.1;

    private static final int HUNDREDTHS = 100;

    private double[] perGram() {
        return stories.stream().flatMap(s -> weight(s).stream()).mapToDouble(Yield::perGram).toArray();
    }

    /** What cysts can give; a slip that nobody took back in time stays with its batch alone. */
    private static Optional<Yield> weight(Story s) {
        return s.weight().filter(Yield::possible);
    }

    private List<Story> slips() {
        return stories.stream().filter(s -> s.weight().isPresent() && weight(s).isEmpty()).toList();
    }

    private Optional<Trend> trend() {
        return Trend.scattered(Trend.points(measured, stories, (s, days) -> weight(s).map(y ->
                new Trend.Point(days, y.perGram(), PART * y.perGram()))));
    }

    private Optional<Count> counted(Story s) {
        return Count.ripe(s, measured.past().book().lots(), speed);
    }

    private Optional<Efficiency> efficiency() {
        return Efficiency.of(stories.stream().map(s -> {
            Optional<Count> c = counted(s);
            return new Efficiency.Found(c.map(x -> x.told().nauplii()).orElse(0),
                    c.map(Count::each).orElse(0.0), weight(s).map(Yield::perGram).orElse(0.0));
        }).toList());
    }

    /** Batches that were weighed and not counted. */
    private List<Story> weighedOnly() {
        return stories.stream().filter(s -> weight(s).isPresent() && counted(s).isEmpty()).toList();
    }

    private void printEfficiency(PrintWriter out) {
        Optional<Efficiency> found = efficiency();
        if (found.isEmpty()) {
            NO_COUNT.forEach(out::println);
            return;
        }
        Efficiency e = found.get();
        List<Double> wet = e.wetMicrograms();
        out.println(Text.of("  with its counts: HE %,.0f nauplii/g, in 8 of 10 batches %,.0f to %,.0f",
                LotCard.thousands(e.next().median()), LotCard.thousands(e.next().within(false)),
                LotCard.thousands(e.next().within(true))));
        out.println(Text.of("  (one weighs %.0f µg wet, out of the sieve; %.0f to %.0f in 8 of 10 cases)",
                wet.get(1), wet.get(0), wet.get(2)));
        weighedOnly().forEach(s -> {
            Efficiency.PerGram n = e.weighed(weight(s).orElseThrow().perGram());
            out.println(Text.of("  by its weight %s: HE %,.0f (%,.0f to %,.0f) nauplii/g", s.name(),
                    LotCard.thousands(n.median()), LotCard.thousands(n.within(false)),
                    LotCard.thousands(n.within(true))));
        });
    }

    void print(PrintWriter out) {
        double[] all = perGram();
        if (all.length > 0) {
            out.println(Text.of("  weighed %s: %.1f g wet of each gram of cysts%s", all.length == 1 ? "once"
                    : "after " + all.length + " batches", DoubleStream.of(all).average().orElseThrow(),
                    all.length == 1 ? "" : Text.of(" (%.1f to %.1f)",
                    DoubleStream.of(all).min().orElseThrow(), DoubleStream.of(all).max().orElseThrow())));
            printEfficiency(out);
        }
        slips().forEach(s -> out.println(Text.of("  left out: the weight of %s, %.1f g of each gram, which "
                + "no cysts give", s.name(), s.weight().orElseThrow().perGram())));
        trend().ifPresent(t -> out.println(t.words("yield changes by %+.2f g/g a month (± %.2f)")));
    }

    /** One in ten below, median, one in ten above. */
    private static List<Long> rounded(Efficiency.PerGram n) {
        return List.of(Math.round(n.within(false)), Math.round(n.median()), Math.round(n.within(true)));
    }

    /** Nothing where nobody weighed. */
    void put(Map<String, Object> m) {
        double[] all = perGram();
        if (all.length > 0) {
            m.put("wet_g_per_g", DoubleStream.of(all).mapToObj(BatchTable::tenths).toList());
        }
        if (!slips().isEmpty()) {
            m.put("weights_left_out", slips().stream().map(Story::name).toList());
        }
        efficiency().ifPresent(e -> {
            m.put("he_per_g", rounded(e.next()));
            m.put("wet_ug_per_nauplius", e.wetMicrograms().stream().map(BatchTable::tenths).toList());
            m.put("he_per_g_by_weight", weighedOnly().stream().map(s -> Map.of("batch", s.name(), "he_per_g",
                    rounded(e.weighed(weight(s).orElseThrow().perGram())))).toList());
        });
        trend().ifPresent(t -> m.put("wet_g_per_g_per_month", List.of(
                BatchTable.rounded(t.perMonth(), HUNDREDTHS), BatchTable.rounded(t.sd(), HUNDREDTHS))));
    }
}
