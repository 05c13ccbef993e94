package org.conetender.sim.trial;

import java.util.SplittableRandom;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.sim.Seeds;

/** One cone that is held for some hours until it begins to seep, and how much has gone when that is told. */
final class FallRun {

    private static final int HOUR_S = 3_600;
    /** It begins so long after the start, s (guess: at most a proof or two after the first). */
    private static final int LEAST_S = 4 * HOUR_S;
    private static final int MOST_S = 12 * HOUR_S;
    /** Followed until so much is gone, and most heaters are about to stand bare (guess). */
    private static final double MOST_GONE = 0.5;
    /** A whole filling seeps away in so many hours (guess). */
    private static final double LEAST_H = 10;
    private static final double MOST_H = 40;
    /** Drained each minute. */
    private static final int STEP_S = 60;

    /**
     * @param gone share of the water that was when it was told; NaN if it was not
     * @param hours since it began, until then
     * @param early whether it was told before
     * @param named what else was named first; NONE for nothing
     */
    record Told(double gone, double hours, boolean early, Suspect named) {}

    private final Laws.Ours law;
    private final TrialBench bench;
    private final int fromS;
    private final double litresPerS;

    FallRun(TrialCone cone, Laws.Ours law) {
        this.law = law;
        this.bench = new TrialBench(cone);
        SplittableRandom random = Seeds.of(cone.seed(), "trial seep");
        this.fromS = random.nextInt(LEAST_S, MOST_S);
        this.litresPerS = cone.build().litres() / HOUR_S / random.nextDouble(LEAST_H, MOST_H);
    }

    Told run() {
        boolean on = false;
        Suspect named = Suspect.NONE;
        double full = bench.plant().litres();
        for (int t = 0;; t++) {
            full = t == fromS ? bench.plant().litres() : full;
            if (t >= fromS && t % STEP_S == 0) {
                bench.plant().drain(litresPerS * STEP_S);
            }
            bench.step(on);
            on = law.on(bench.seen(on));
            named = named == Suspect.NONE ? law.suspect() : named;
            double gone = 1 - bench.plant().litres() / full;
            if (law.falling()) {
                return t < fromS ? new Told(Double.NaN, Double.NaN, true, named)
                        : new Told(gone, (double) (t - fromS) / HOUR_S, false, named);
            }
            if (t > fromS && gone > MOST_GONE) {
                return new Told(Double.NaN, Double.NaN, false, named);
            }
        }
    }
}
