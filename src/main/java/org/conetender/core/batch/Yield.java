package org.conetender.core.batch;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.conetender.core.image.Ask;

/**
 * What a batch gave: nauplii as they were weighed, wet, rinsed and drained in the sieve; what was weighed in
 * several sieves, or of several harvests, together.
 *
 * @param wetG g
 * @param cystsG dry product that was stocked, g
 */
public record Yield(double wetG, double cystsG) {

    /**
     * No gram of cysts gives more, g wet (*guess*: 300,000 nauplii of at most 3.3 µg are 1 g dry,
     * science.md §4; wet, and with the water that a sieve holds, no more than fifteen times that).
     */
    private static final double MOST_PER_G = 15;

    /** Of that batch; empty while nobody has weighed it. @param facts of it, without what was withdrawn */
    public static Optional<Yield> of(Batch b, List<Fact> facts) {
        double[] weighed = facts.stream().map(Fact::change).flatMapToDouble(c ->
                c instanceof Change.Told(Ask.DidWeigh w) ? DoubleStream.of(w.wetG()) : DoubleStream.empty())
                .toArray();
        return weighed.length == 0 ? Optional.empty()
                : b.stock().map(s -> new Yield(DoubleStream.of(weighed).sum(), s.cystsG()));
    }

    /** g wet of each g of cysts. */
    public double perGram() {
        return wetG / cystsG;
    }

    /** Whether cysts can give so much. */
    public boolean possible() {
        return perGram() <= MOST_PER_G;
    }
}
