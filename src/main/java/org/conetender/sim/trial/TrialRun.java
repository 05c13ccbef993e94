package org.conetender.sim.trial;

import org.conetender.core.judge.Watch.Suspect;

/** One cone under one law, second by second, from a cold fill to a day after it was warm. */
final class TrialRun {

    private static final int HOUR_S = 3_600;
    /** Warm-up may take so long, and then it is held so long, s. */
    private static final int WARMING_S = 30 * HOUR_S;
    private static final int HOLDING_S = 24 * HOUR_S;
    private static final int OVERSHOOT_S = 2 * HOUR_S;
    private static final double WARM_K = 0.2;

    private final TrialCone cone;
    private final Law law;
    private final TrialBench bench;
    private Suspect named = Suspect.NONE;

    TrialRun(TrialCone cone, Law law) {
        this.cone = cone;
        this.law = law;
        this.bench = new TrialBench(cone);
    }

    /** What was named first although nothing was wrong; NONE for nothing or where the law has no watch. */
    Suspect named() {
        return named;
    }

    /** From cold to held; the measures of it. Nothing is done about what is named. */
    Measures run() {
        Measures.Taker taker = new Measures.Taker(cone.known().setpointC());
        boolean on = false;
        int warmAt = -1;
        for (int t = 0; t < (warmAt < 0 ? WARMING_S : warmAt + OVERSHOOT_S + HOLDING_S); t++) {
            boolean was = on;
            bench.step(on);
            on = law.on(bench.seen(on));
            if (named == Suspect.NONE && law instanceof Laws.Ours ours) {
                named = ours.suspect();
            }
            if (warmAt < 0 && bench.waterC() >= cone.known().setpointC() - WARM_K) {
                warmAt = t;
            }
            if (warmAt >= 0) {
                taker.take(bench.waterC(), t < warmAt + OVERSHOOT_S, on, was);
            }
        }
        return taker.taken(warmAt, cone.riseKPerS());
    }
}
