package org.conetender.app.report;

import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;

/**
 * What is left of a lot: what somebody said last was in it, less what was stocked since. A report that was
 * withdrawn takes nothing.
 *
 * @param toldG dry product, g
 * @param at when that was told
 * @param stockedG since then, g
 */
record Tin(double toldG, Moment at, double stockedG) {

    /** Less is the sum's own rounding, g. */
    private static final double LEAST_G = 0.01;

    /** Empty while nobody told of it. */
    static Optional<Tin> of(Past past, String lot) {
        return past.counted().stream().filter(f -> f.change() instanceof Change.Told(Ask.TinHolds t)
                && t.lot().equals(lot)).reduce((a, b) -> b).map(f -> new Tin(told(f), f.at(),
                past.stories().stream().flatMap(s -> s.facts().stream()).filter(x -> x.seq() > f.seq())
                        .mapToDouble(x -> stocked(x, lot)).sum()));
    }

    private static double told(Fact f) {
        return f.change() instanceof Change.Told(Ask.TinHolds t) ? t.cystsG() : 0;
    }

    private static double stocked(Fact f, String lot) {
        return f.change() instanceof Change.Told(Ask.DidStock s) && s.lot().equals(lot) ? s.cystsG() : 0;
    }

    double leftG() {
        return Math.max(0, toldG - stockedG);
    }

    /** @param hours says the day on which it was told */
    String words(Hours hours) {
        String told = Text.of("%.1f g told on %s", toldG, hours.day(at));
        if (stockedG > toldG + LEAST_G) {
            return told + Text.of(", but %.1f g stocked since: look what is left, and say 'tin'", stockedG);
        }
        return Text.of("%.1f g left (%s, %.1f g stocked since)", leftG(), told, stockedG);
    }
}
