package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.hatch.Lesson.Sight;

/**
 * A count or first nauplii that can hardly be of such a lot, and that were not let move what is known of it.
 *
 * @param lesson the look
 * @param many whether too many had hatched by then, rather than too few
 * @param bound share that would be expected at most, or at least, 0..1
 */
public record Slip(Lesson lesson, boolean many, double bound) {

    /** Those among the looks at one batch, each held against what the others tell. */
    public static List<Slip> among(Learnt.Prior prior, List<Lesson> looks) {
        List<Lesson> learnt = believed(prior, looks);
        Speed all = Learnt.of(prior, List.of(), learnt);
        List<Slip> slips = new ArrayList<>();
        for (Lesson l : looks) {
            if (!learnt.contains(l)) {
                slips.add(new Slip(l, true, 0));
            } else if (l.sight() instanceof Sight.Counted c) {
                Speed without = Learnt.of(prior, List.of(), without(learnt, l));
                Plausible p = Plausible.of(without, l.at());
                double moved = Math.abs(Math.log(all.k50DegreeHours() / without.k50DegreeHours()));
                if (!p.fits(c) && moved <= p.sd()) {
                    slips.add(new Slip(l, p.tooMany(c), p.tooMany(c) ? p.most() : p.least()));
                }
            }
        }
        return slips;
    }

    /** Those that are learnt from: not first nauplii before any could swim, as the daemon has it. */
    public static List<Lesson> believed(Learnt.Prior prior, List<Lesson> looks) {
        return looks.stream().filter(l -> !(l.sight() instanceof Sight.First f) || !Plausible.of(
                Learnt.of(prior, List.of(), without(looks, l)), l.at()).tooEarly(f)).toList();
    }

    private static List<Lesson> without(List<Lesson> looks, Lesson l) {
        List<Lesson> others = new ArrayList<>(looks);
        others.remove(l);
        return others;
    }
}
