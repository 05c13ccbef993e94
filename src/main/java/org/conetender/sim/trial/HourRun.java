package org.conetender.sim.trial;

import java.util.Optional;
import org.conetender.core.heat.Predict;
import org.conetender.core.judge.Thermal;
import org.conetender.sim.LoneBatch;

/** One batch from its wetting until nine in ten have hatched, held by the heating law where a pilot aims. */
final class HourRun {

    private static final int HOUR_S = 3_600;
    private static final int MINUTE_S = 60;
    private static final int LOOK_S = 10;
    /** No batch is followed for longer, s. */
    private static final int GIVEN_UP_S = 120 * HOUR_S;

    private final TrialHatch hatch;
    private final double speed;
    private final Predict.Switching kind;

    /** @param speed factor of the batch on its lot's speed */
    HourRun(TrialHatch hatch, double speed, Switches on) {
        this.hatch = hatch;
        this.speed = speed;
        this.kind = on.kind();
    }

    /** Hours from wetting to the true T90 when it is held there from the asking on; NaN where it never is. */
    double held(double setC) {
        return run(new Steady(setC), Double.NaN).t90H();
    }

    /**
     * @param t90H hours from wetting until nine in ten had hatched; NaN if they never had
     * @param promised whether the hour was said to be kept when it was asked for
     * @param leastC, mostC range of the aims, °C  @param moves how often the aim changed
     */
    record End(double t90H, boolean promised, double leastC, double mostC, int moves) {}

    /** With an hour that is asked for. @param hourH hours after wetting; NaN where none is */
    End run(Pilot pilot, double hourH) {
        TrialBench bench = new TrialBench(hatch.cone());
        LoneBatch batch = new LoneBatch(hatch.lot(), speed);
        int askedAtS = (int) (hatch.askedAtH() * HOUR_S) / LOOK_S * LOOK_S;
        Thermal known = null;
        Predict law = Predict.IDLE;
        End end = new End(Double.NaN, false, Double.MAX_VALUE, -Double.MAX_VALUE, 0);
        double aimC = hatch.usualC();
        boolean on = false;
        for (int t = 0; t < GIVEN_UP_S && Double.isNaN(batch.hoursTo(90)); t++) {
            bench.step(on);
            batch.step(bench.waterC(), 1);
            Law.Seen s = bench.seen(on);
            if (t % LOOK_S == 0) {
                pilot.seen(t == 0 ? 0 : LOOK_S, new Pilot.Look(s.probeC(), s.roomC(),
                        Optional.ofNullable(known).map(Thermal::estimate)));
            }
            double toGoH = hourH - t / (double) HOUR_S;
            boolean asked = t == askedAtS && pilot.asked(toGoH);
            if (t >= askedAtS && (t - askedAtS) % MINUTE_S == 0) {
                double next = pilot.aimC(toGoH);
                end = new End(Double.NaN, end.promised() || asked, Math.min(end.leastC(), next),
                        Math.max(end.mostC(), next), end.moves() + (next == aimC ? 0 : 1));
                aimC = next;
            }
            known = known == null ? Thermal.from(hatch.nominal(), s.probeC()) : known.after(s.step(), aimC);
            law = law.steered(known, aimC, new Predict.Around(s.roomC(), 1), kind);
            on = law.on();
        }
        return new End(batch.hoursTo(90), end.promised(), end.leastC(), end.mostC(), end.moves());
    }

    /** Aims at one temperature for good. */
    private record Steady(double setC) implements Pilot {

        @Override
        public void seen(double seconds, Look look) {
            // Aims by nothing that is measured.
        }

        @Override
        public boolean asked(double hoursToGo) {
            return false;
        }

        @Override
        public double aimC(double hoursToGo) {
            return setC;
        }
    }
}
