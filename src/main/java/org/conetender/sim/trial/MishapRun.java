package org.conetender.sim.trial;

import java.util.SplittableRandom;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.sim.Seeds;

/**
 * One cone that is held for some hours until something breaks, and how it is noticed. When it is, all heat
 * ends, as with a second switch in series.
 */
final class MishapRun {

    private static final int HOUR_S = 3_600;
    /** The mishap comes so long after the water was warm. */
    private static final int LEAST_S = 2 * HOUR_S;
    private static final int MOST_S = 6 * HOUR_S;
    private static final int LIMIT_S = 36 * HOUR_S;
    /** Unnoticed for so long is missed. */
    private static final int MISSED_S = 4 * HOUR_S;
    /** The water goes on rising for so long after the heat has ended. */
    private static final int AFTER_S = 600;
    /** A probe in air should be found so soon (issue). */
    private static final double SOON_S = 15;
    private static final double WARM_K = 0.3;
    private static final double DUTY_S = 1_800;

    /**
     * @param named what it was called; NONE if it was not noticed
     * @param delayS from the first second in which it mattered until it was named
     * @param excessK highest water after it over the highest of the hour before, K
     * @param duty the heater's share of the time in the half hour before
     * @param early whether the watch spoke before anything was wrong
     * @param seen what was seen of the probe
     */
    record Notice(Suspect named, double delayS, double excessK, double duty, boolean early, Seen seen) {}

    /**
     * What was seen of the probe.
     *
     * @param leavesK how far a reading in air would have moved in fifteen seconds, K
     * @param untestable whether a reading that stood was shown as one that cannot be tested now
     */
    record Seen(double leavesK, boolean untestable) {}

    private final TrialCone cone;
    private final Mishap what;
    private final Laws.Ours law;
    private final TrialBench bench;
    private final int atS;
    private boolean on;
    private boolean broken;
    private long mattersSince = -1;
    private double duty = 0.5;
    private double leavesK;
    private boolean untestable;
    private final Excess excess = new Excess();

    MishapRun(TrialCone cone, Mishap what, Laws.Ours law) {
        this.cone = cone;
        this.what = what;
        this.law = law;
        this.bench = new TrialBench(cone);
        SplittableRandom random = Seeds.of(cone.seed(), "trial mishap");
        this.atS = random.nextInt(LEAST_S, MOST_S);
    }

    Notice run() {
        int warmAt = -1;
        for (int t = 0; t < LIMIT_S && (mattersSince < 0 || t < mattersSince + MISSED_S); t++) {
            second(t, warmAt >= 0 && t > warmAt + atS);
            if (warmAt < 0 && bench.waterC() > cone.known().setpointC() - WARM_K) {
                warmAt = t;
            }
            if (law.suspect() != Suspect.NONE) {
                return noticed(t);
            }
        }
        return new Notice(Suspect.NONE, Double.NaN, excess(), duty, false, seen());
    }

    private void second(int t, boolean due) {
        if (due && !broken && (what != Mishap.WELDED || on)) {
            broken = true;
            leavesK = bench.leavesK(SOON_S);
            bench.probe(what == Mishap.IN_AIR ? TrialBench.Probe.IN_AIR
                    : what == Mishap.FROZEN ? TrialBench.Probe.FROZEN : TrialBench.Probe.IN_WATER);
        }
        if (broken && mattersSince < 0 && (what != Mishap.WELDED || !on)) {
            mattersSince = t;
        }
        bench.step(broken && what == Mishap.WELDED || on && !(broken && what == Mishap.DEAD));
        if (!broken) {
            duty += ((on ? 1 : 0) - duty) / DUTY_S;
            excess.before(t, bench.waterC());
        } else {
            excess.after(bench.waterC());
        }
        on = law.on(bench.seen(on));
        untestable |= mattersSince >= 0 && law.untestable();
    }

    private Notice noticed(int t) {
        if (mattersSince < 0) {
            return new Notice(law.suspect(), Double.NaN, 0, duty, true, seen());
        }
        for (int i = 0; i < AFTER_S; i++) {
            bench.step(false);
            excess.after(bench.waterC());
        }
        return new Notice(law.suspect(), t - mattersSince, excess(), duty, false, seen());
    }

    private Seen seen() {
        return new Seen(leavesK, untestable);
    }

    private double excess() {
        return excess.overK(cone.known().setpointC());
    }
}
