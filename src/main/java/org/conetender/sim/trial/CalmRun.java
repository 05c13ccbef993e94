package org.conetender.sim.trial;

import java.util.SplittableRandom;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.sim.Seeds;

/**
 * One cone with nothing wrong for some days: lids come and go, doors are opened, water is topped up,
 * samples are taken and the probe is wiped. Whatever is called a fault is a false alarm, except what looks
 * like a probe in air: that is let off after three good minutes, and calls a person at the third in an
 * hour, as it should where hands really were in the water each time.
 */
final class CalmRun {

    private static final int HOUR_S = 3_600;
    /** Somebody does something every so many hours, on average (guess: a busy room). */
    private static final double EVERY_H = 4;
    private static final int GOOD_S = 180;
    /** The reading is back at the water's temperature so long after: three lags of the probe. */
    private static final int BACK_S = 60;
    private static final double TOPPED = 0.05;
    private static final double LEVEL_SHARE = 0.95;

    /**
     * @param falseAlarms that called a person
     * @param latched third pauses in an hour, with hands in the water before each: called for
     * @param pauses let off by themselves
     * @param fell whether water was told to have gone, of which five parts in a hundred did at most
     * @param first name of the first false alarm
     * @param cpuS of its thread, s
     */
    record Calm(int falseAlarms, int latched, int pauses, boolean fell, double hours, Suspect first,
                double cpuS) {

        Calm took(double seconds) {
            return new Calm(falseAlarms, latched, pauses, fell, hours, first, seconds);
        }
    }

    private final TrialCone cone;
    private final Laws.Ours law;
    private final TrialBench bench;
    private final SplittableRandom hands;
    private boolean lid;
    private int probeBackAt = -1;
    private int doorShutAt = -1;
    private int falseAlarms;
    private int latched;
    private int pauses;
    private boolean fell;
    private int clearAt = -1;
    private int pausedAt = -HOUR_S;
    private int inThatHour;
    private int reallyInThatHour;
    private int handsAt = -HOUR_S;
    private Suspect first = Suspect.NONE;

    CalmRun(TrialCone cone, Laws.Ours law) {
        this.cone = cone;
        this.law = law;
        this.bench = new TrialBench(cone);
        this.hands = Seeds.of(cone.seed(), "trial hands");
        this.lid = cone.lid();
    }

    Calm run(int hours) {
        boolean on = false;
        for (int t = 0; t < hours * HOUR_S; t++) {
            if (hands.nextDouble() < 1 / (EVERY_H * HOUR_S)) {
                something(t);
            }
            undo(t);
            handsAt = probeBackAt > t ? t : handsAt;
            bench.step(on);
            on = law.on(bench.seen(on)) && clearAt < 0;
            judge(t);
            fell |= law.falling();
        }
        return new Calm(falseAlarms, latched, pauses, fell, hours, first, 0);
    }

    private void something(int t) {
        switch (hands.nextInt(4)) {
            case 0 -> {
                lid = !lid;
                bench.plant().lid(lid);
            }
            case 1 -> {
                bench.room().add(-4);
                doorShutAt = t + hands.nextInt(300, 1_800);
            }
            case 2 -> {
                double more = TOPPED * cone.build().litres();
                bench.plant().drain(bench.plant().litres() + more - cone.build().litres());
                handsAt = t;
                bench.plant().pour(more, cone.climate().meanC(), TrialCone.PPT * LEVEL_SHARE);
            }
            default -> {
                bench.probe(TrialBench.Probe.IN_AIR);
                probeBackAt = t + hands.nextInt(5, 40);
            }
        }
    }

    private void undo(int t) {
        if (t == probeBackAt) {
            bench.probe(TrialBench.Probe.IN_WATER);
        }
        if (t == doorShutAt) {
            bench.room().add(0);
        }
    }

    private void judge(int t) {
        if (clearAt == t) {
            law.clear();
            clearAt = -1;
            return;
        }
        if (law.suspect() == Suspect.NONE || clearAt >= 0) {
            return;
        }
        clearAt = t + GOOD_S;
        boolean again = t - pausedAt < HOUR_S;
        inThatHour = again ? inThatHour + 1 : 1;
        boolean really = law.suspect() == Suspect.IN_AIR && t - handsAt < BACK_S;
        reallyInThatHour = (again ? reallyInThatHour : 0) + (really ? 1 : 0);
        pausedAt = again ? pausedAt : t;
        if (law.suspect() == Suspect.IN_AIR && inThatHour < 3) {
            pauses++;
        } else if (reallyInThatHour >= 3) {
            latched++;
        } else {
            falseAlarms++;
            first = first == Suspect.NONE ? law.suspect() : first;
        }
    }
}
