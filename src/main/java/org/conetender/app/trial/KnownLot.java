package org.conetender.app.trial;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.hatch.Learnt;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Rate;
import org.conetender.core.hatch.Speed;
import org.conetender.sim.LoneBatch;
import org.conetender.sim.trial.TrialHatch;

/** A lot as it is known to somebody who watched it hatch, often, at one temperature. */
final class KnownLot {

    /** In the middle of the usual range, °C (science.md §1). */
    static final double USUAL_C = 26;
    /** Seen often: what is left is the scatter of batches. */
    private static final double LITTLE = 0.02;
    private static final int OFTEN = 9;
    /** Standard score of the 90 % point. */
    private static final double Z90 = 1.2816;

    /** Where a lot was watched that is learnt from reports, °C (guess). */
    private static final double[] WATCHED_C = {23, 29, 25, 28, 24, 27};
    /** After so many times its T90 nothing hatches any more. */
    private static final double OVER = 1.8;
    /** Animals of a counted sub-sample. */
    private static final int COUNTED = 150;

    private KnownLot() {}

    /** As the daemon learns it from three counts in each of six batches: at 50 and 90 %, and when over. */
    static Speed learnt(TrialHatch h) {
        List<List<Lesson>> batches = new ArrayList<>();
        for (double c : WATCHED_C) {
            LoneBatch watched = h.watchedAt(c);
            batches.add(List.of(counted(h, watched.hoursTo(50), c, 0.5),
                    counted(h, watched.hoursTo(90), c, 0.9), counted(h, OVER * watched.hoursTo(90), c, 1)));
        }
        return Learnt.of(Learnt.Prior.UNKNOWN, batches, List.of());
    }

    private static Lesson counted(TrialHatch h, double hours, double waterC, double share) {
        double done = hours * Rate.USUAL.perHour(waterC);
        int nauplii = (int) Math.round(COUNTED * share * h.lot().viable());
        return new Lesson(new Lesson.At(done, done, hours),
                new Lesson.Sight.Counted(nauplii, 0, COUNTED - nauplii));
    }

    /** Its figures by the daemon's own form, right at that temperature only. @param waterC °C */
    static Speed at(TrialHatch h, double waterC) {
        LoneBatch watched = h.watchedAt(waterC);
        double half = watched.hoursTo(50);
        double sigma = Math.log(watched.hoursTo(90) / half) / Z90;
        return new Speed(half * Rate.USUAL.perHour(waterC), sigma, LITTLE, OFTEN);
    }
}
