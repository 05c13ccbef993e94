package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.hatch.Lesson.Sight;

/**
 * A count that can hardly be of such a lot, and that was not let move what is known of it.
 *
 * @param lesson the count
 * @param many whether too many had hatched in it, rather than too few
 * @param bound share that would be expected at most, or at least, 0..1
 */
public record Slip(Lesson lesson, boolean many, double bound) {

    /** Those among the looks at one batch, each held against what the others tell. */
    public static List<Slip> among(Learnt.Prior prior, List<Lesson> looks) {
        Speed all = Learnt.of(prior, List.of(), looks);
        List<Slip> slips = new ArrayList<>();
        for (Lesson l : looks) {
            if (l.sight() instanceof Sight.Counted c) {
                List<Lesson> others = new ArrayList<>(looks);
                others.remove(l);
                Speed without = Learnt.of(prior, List.of(), others);
                Plausible p = Plausible.of(without, l.at());
                double moved = Math.abs(Math.log(all.k50DegreeHours() / without.k50DegreeHours()));
                if (!p.fits(c) && moved <= p.sd()) {
                    slips.add(new Slip(l, p.tooMany(c), p.tooMany(c) ? p.most() : p.least()));
                }
            }
        }
        return slips;
    }
}
