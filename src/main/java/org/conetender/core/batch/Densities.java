package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.image.Ask;

/**
 * How many nauplii a gram of each lot gives, as counts of sub-samples tell it: what swims or hangs under its
 * shell in a millilitre, times the millilitres of water that a gram was given (science.md §4). A weight
 * alone tells none ({@link org.conetender.core.hatch.Efficiency}); what a tin holds are grams.
 *
 * @param samples of counts, oldest first
 */
public record Densities(List<Sample> samples) {

    static final Densities NONE = new Densities(List.of());

    /**
     * One sub-sample.
     *
     * @param cone, seq, source of the fact that tells it
     * @param perGram nauplii a gram for each one that was counted
     */
    public record Sample(String cone, long seq, String source, double perGram) {

        boolean of(Lots.Kept k) {
            return k.by(cone, seq, source);
        }
    }

    private static final double ML_PER_L = 1_000;

    /** The oldest go beyond that (*guess*: some months of looks). */
    private static final int MOST = 200;

    /** Fewer than the usual are believed of no fewer batches: one bad sample must not smother any. */
    private static final int BATCHES = 2;

    /**
     * No lot is taken to give fewer, or more (*guess*: a bad one hatches to a third; 252,678 cysts are in a
     * gram, 275,000 by their weight, more in small ones, science.md §4).
     */
    private static final double LEAST = 80_000;
    private static final double MOST_PER_G = 400_000;

    /** With the volume of a sub-sample, if that fact tells of one. @param b in which it was counted */
    Densities after(Fact f, Batch b) {
        return f.change() instanceof Change.Told(Ask.DidCount c) && b.stock().isPresent()
                && b.fill().isPresent() ? and(new Sample(f.cone(), f.seq(), f.source(),
                        b.fill().get().litres() * ML_PER_L / b.stock().get().cystsG() / c.sampleMl())) : this;
    }

    private Densities and(Sample s) {
        List<Sample> next = new ArrayList<>(samples.subList(Math.max(0, samples.size() + 1 - MOST),
                samples.size()));
        next.add(s);
        return new Densities(List.copyOf(next));
    }

    /**
     * Nauplii a gram, on the cautious side: of the densest batch that was counted, with two standard errors
     * of its count; the usual ones while nobody has, and no fewer than those after one batch.
     *
     * @param ripe degree-hours from which nearly all that hatch have hatched
     * @param kept the lessons that count, of the lot or of the batch
     */
    double perGram(double ripe, Stream<Lots.Kept> kept) {
        Map<String, Double> batches = new LinkedHashMap<>();
        if (!samples.isEmpty()) {
            kept.forEach(k -> counted(k, ripe).ifPresent(n ->
                    batches.merge(k.cone() + "/" + k.what().batch(), n, Math::max)));
        }
        double densest = batches.values().stream().mapToDouble(d -> d).max().orElse(0);
        return batches.size() < BATCHES ? Math.max(Oxygen.USUAL_NAUPLII_PER_G, Math.min(MOST_PER_G, densest))
                : Math.clamp(densest, LEAST, MOST_PER_G);
    }

    /** By one count; before a batch is ripe only what is more than usual counts, since more may come. */
    private Optional<Double> counted(Lots.Kept k, double ripe) {
        if (!(k.what().lesson().sight() instanceof Lesson.Sight.Counted c)) {
            return Optional.empty();
        }
        int n = c.nauplii() + c.umbrella();
        boolean isRipe = k.what().lesson().at().leastDegreeHours() >= ripe;
        return samples.stream().filter(s -> s.of(k)).findFirst()
                .filter(s -> isRipe || n * s.perGram() > Oxygen.USUAL_NAUPLII_PER_G)
                .map(s -> (n + 2 * Math.sqrt(n + 1)) * s.perGram());
    }
}
