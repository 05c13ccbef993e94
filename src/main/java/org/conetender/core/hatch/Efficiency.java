package org.conetender.core.hatch;

import java.util.List;
import java.util.Optional;

/**
 * How many nauplii a gram of a lot gives (hatching efficiency, HE), by its counts and weights together.
 *
 * <p>A wet weight alone tells none. What a nauplius weighs dry is published (1.6 to 3.3 µg by strain,
 * science.md §4); what it weighs out of a sieve, with the water in it and around it, is in no source at hand,
 * and differs with strain, mesh and hand. So that weight is asked along with the efficiency, and nothing is
 * believed of either before; what is usually lost on the way is in it. One count in the lot tells both apart.
 * From then on a weight tells what its batch gave beside the others, and no more: neither hour nor spread,
 * nor whether what lacks never hatched, hatched late or was poured away.
 *
 * <p>The logarithm of each batch is its lot's and a normal deviation, as is every reading of it; so the
 * posterior is normal and exact, whatever the order, and what is withdrawn leaves no trace.
 *
 * @param lnPerGram mean of ln of nauplii a gram of the lot
 * @param lnWetG the same of a nauplius' wet weight, g
 * @param doubt of both
 */
public record Efficiency(double lnPerGram, double lnWetG, Doubt doubt) {

    /** Variances of ln. @param perGram of the efficiency  @param wet of the weight  @param both of the two */
    public record Doubt(double perGram, double wet, double both) {}

    /** Batches of a lot differ by so much, log-sd (*guess*: light, pH and density; science.md §5). */
    static final double BATCH_SD = 0.10;

    /** And a weight by so much: how well it is drained, how much is drawn, log-sd (*guess*). */
    static final double WEIGHT_SD = 0.15;

    private static final double MICROGRAMS_PER_G = 1e6;

    private static final double BATCH_VAR = BATCH_SD * BATCH_SD;
    private static final double WEIGHT_VAR = WEIGHT_SD * WEIGHT_SD;

    /**
     * What was found of one batch.
     *
     * @param counted nauplii in its ripe sub-sample
     * @param each nauplii a gram that one of them stands for; 0 where nobody counted
     * @param wetPerGram g of nauplii of each g of cysts; 0 where nobody weighed
     */
    public record Found(int counted, double each, double wetPerGram) {

        /** Of none counted as if it were half of one: few are few, and their logarithm is no number. */
        private double lnCount() {
            return Math.log((counted + 0.5) * each);
        }

        /** Sub-samples differ by more than chance ({@link Odds#ALIKE}). */
        private double countVar() {
            return (1 + counted * Odds.ALIKE) / (counted + 0.5);
        }
    }

    /** Precisions of h, of h with w and of w, and what they point to. */
    private static final class Sums {
        private double hh;
        private double hw;
        private double ww;
        private double h;
        private double w;

        /** A count tells h, a weight h + w. @param a, b, d their precision matrix, 0 for what was not read */
        void add(Readings r, double a, double b, double d) {
            hh += a + 2 * b + d;
            hw += b + d;
            ww += d;
            h += (a + b) * r.count + (b + d) * r.weight;
            w += b * r.count + d * r.weight;
        }
    }

    /** Logarithms; any where nothing was read. */
    private record Readings(double count, double weight) {}

    /** By all that was found; empty unless some batch was counted and some was weighed. */
    public static Optional<Efficiency> of(List<Found> batches) {
        if (batches.stream().noneMatch(f -> f.each > 0)
                || batches.stream().noneMatch(f -> f.wetPerGram > 0)) {
            return Optional.empty();
        }
        Sums s = new Sums();
        for (Found f : batches) {
            Readings r = new Readings(f.each > 0 ? f.lnCount() : 0,
                    f.wetPerGram > 0 ? Math.log(f.wetPerGram) : 0);
            double count = BATCH_VAR + f.countVar();
            double weight = BATCH_VAR + WEIGHT_VAR;
            if (f.each > 0 && f.wetPerGram > 0) {
                // Its own deviation is in both.
                double det = count * weight - BATCH_VAR * BATCH_VAR;
                s.add(r, weight / det, -BATCH_VAR / det, count / det);
            } else {
                s.add(r, f.each > 0 ? 1 / count : 0, 0, f.wetPerGram > 0 ? 1 / weight : 0);
            }
        }
        double det = s.hh * s.ww - s.hw * s.hw;
        return Optional.of(new Efficiency((s.ww * s.h - s.hw * s.w) / det, (s.hh * s.w - s.hw * s.h) / det,
                new Doubt(s.ww / det, s.hh / det, -s.hw / det)));
    }

    /** Nauplii a gram. @param log of it  @param sd of its logarithm */
    public record PerGram(double log, double sd) {

        public double median() {
            return Math.exp(log);
        }

        /** Beyond which one batch in ten lies. @param most whether above */
        public double within(boolean most) {
            return Math.exp(log + (most ? 1 : -1) * Normal.Z90 * sd);
        }
    }

    /** Of the lot's next batch. */
    public PerGram next() {
        return new PerGram(lnPerGram, Math.sqrt(doubt.perGram + BATCH_VAR));
    }

    /** Of a batch among them that was weighed and not counted. @param wetPerGram g of each g of cysts */
    public PerGram weighed(double wetPerGram) {
        double k = BATCH_VAR / (BATCH_VAR + WEIGHT_VAR);
        double var = BATCH_VAR * (1 - k) + (1 - k) * (1 - k) * doubt.perGram + k * k * doubt.wet
                - 2 * k * (1 - k) * doubt.both;
        return new PerGram((1 - k) * lnPerGram + k * (Math.log(wetPerGram) - lnWetG), Math.sqrt(var));
    }

    /** What a nauplius weighs wet, out of the sieve, µg: one case in ten below, median, one in ten above. */
    public List<Double> wetMicrograms() {
        double spread = Math.exp(Normal.Z90 * Math.sqrt(doubt.wet));
        double median = MICROGRAMS_PER_G * Math.exp(lnWetG);
        return List.of(median / spread, median, median * spread);
    }
}
