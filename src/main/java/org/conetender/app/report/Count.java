package org.conetender.app.report;

import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Lots;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Text;

/**
 * What a count of a sub-sample says of a batch (science.md §4): of a hundred full cysts, how many hatched
 * (H%), and how many nauplii a gram of the product gave (HE), each with the error of counting alone. Taking
 * and mixing the sample adds to it.
 *
 * @param told what was counted
 * @param degreeHours how far the cysts were, °C·h; empty where nobody knows
 * @param millilitresPerGram of the batch; 0 where its charge is not known
 */
record Count(Ask.DidCount told, Optional<Double> degreeHours, double millilitresPerGram) {

    private static final double ML_PER_L = 1_000;
    private static final double ALL = 100;

    /** The last count of that batch; a later one says more of what hatches in all. */
    static Optional<Count> last(Story s, Lots lots) {
        return s.facts().stream().filter(f -> f.change() instanceof Change.Told(Ask.DidCount _))
                .reduce((a, b) -> b).map(f -> new Count((Ask.DidCount) ((Change.Told) f.change()).ask(),
                        taught(f, lots.all()), perGram(s)));
    }

    /** The same, where it can be used and may be of a ripe batch. @param speed of the lot */
    static Optional<Count> ripe(Story s, Lots lots, Speed speed) {
        return last(s, lots).filter(Count::usable).filter(c -> !c.early(speed));
    }

    private static Optional<Double> taught(Fact f, List<Lots.Kept> all) {
        return all.stream().filter(k -> k.by(f)).findFirst().map(k -> k.what().lesson().at().degreeHours());
    }

    private static double perGram(Story s) {
        Optional<Batch.Fill> fill = s.batch().fill();
        return fill.isPresent() && s.stock().isPresent()
                ? fill.get().litres() * ML_PER_L / s.stock().get().cystsG() : 0;
    }

    int all() {
        return told.nauplii() + told.umbrella() + told.unhatched();
    }

    /** H%, 0..100. */
    double percent() {
        return 100.0 * told.nauplii() / all();
    }

    /**
     * Its standard deviation, as of a binomial; at none or all of them as if one more of each had been seen,
     * since a small count of one kind only proves little.
     */
    double percentSd() {
        double p = (told.nauplii() + 1.0) / (all() + 2.0);
        return 100 * Math.sqrt(p * (1 - p) / all());
    }

    /** With its error; near all of them or none that has no room on one side, and both ends are told. */
    String percentWords() {
        double low = percent() - percentSd();
        double high = percent() + percentSd();
        return low >= 0 && high <= ALL ? Text.of("%.0f ± %.0f", percent(), percentSd())
                : Text.of("%.0f (%.0f to %.0f)", percent(), Math.max(0, low), Math.min(ALL, high));
    }

    /** HE, nauplii a gram. */
    double perGram() {
        return told.nauplii() * each();
    }

    /** Its standard deviation, as of a Poisson count; of none counted as if it were one. */
    double perGramSd() {
        return Math.sqrt(Math.max(1, told.nauplii())) * each();
    }

    /** Whether it was taken surely before nine in ten of what hatches had hatched. @param speed of its lot */
    boolean early(Speed speed) {
        return degreeHours.isPresent() && degreeHours.get() < speed.within(0.9, false);
    }

    /** What one that was counted stands for, nauplii a gram. */
    double each() {
        return millilitresPerGram / told.sampleMl();
    }

    boolean usable() {
        return all() > 0 && millilitresPerGram > 0;
    }
}
