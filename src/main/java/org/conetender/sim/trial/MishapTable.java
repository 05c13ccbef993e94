package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.core.unit.Text;
import org.conetender.sim.trial.ControlTrial.Met;

/** What the trial has shown of mishaps: how soon each was named and what it was called. */
final class MishapTable {

    private static final double P95 = 0.95;
    private static final double P99 = 0.99;
    /** Less than 2.4 steps of the probe, against noise of 0.027 K, is hard to see in fifteen seconds, K. */
    private static final double FAR_K = 0.15;

    /** A frozen probe should be found so soon, s (issue). */
    private static final double FROZEN_S = 4_500;

    private final int cones;
    private final ControlTrial.Outcome all;

    MishapTable(int cones, ControlTrial.Outcome all) {
        this.cones = cones;
        this.all = all;
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(Text.of("Mishaps, each on %d cones: seconds until named, and the name", cones));
        for (Switches on : Switches.values()) {
            for (Mishap what : Mishap.values()) {
                List<Met> met = of(on, what);
                Quantiles delay = delays(met);
                Map<Suspect, Integer> names = new TreeMap<>();
                met.forEach(m -> names.merge(m.notice().named(), 1, Integer::sum));
                lines.add(Text.of("  %-24s %-14s median %5.0f  p95 %5.0f  p99 %5.0f  %s", on.words(),
                        what.words(), delay.at(0.5), delay.at(P95), delay.at(P99), names));
            }
        }
        List<Met> far = all.met().stream()
                .filter(m -> m.what() == Mishap.IN_AIR && m.notice().seen().leavesK() >= FAR_K).toList();
        long inAir = all.met().stream().filter(m -> m.what() == Mishap.IN_AIR).count();
        lines.add(Text.of("  of probes in air %.0f %% move by %.2f K or more in 15 s: p95 %.0f, p99 %.0f s",
                100.0 * far.size() / inAir, FAR_K, delays(far).at(P95), delays(far).at(P99)));
        lines.add(Text.of("  named before anything was wrong, in %d runs: %s", all.met().size(),
                TrialReport.named(all.met().stream().map(Met::notice).filter(MishapRun.Notice::early)
                        .map(MishapRun.Notice::named))));
        List<Met> late = all.met().stream().filter(m -> m.what() == Mishap.FROZEN)
                .filter(m -> !(m.notice().delayS() <= FROZEN_S)).toList();
        lines.add(Text.of("  of frozen probes %d were not named within %.0f min, %d of them shown as"
                + " untestable", late.size(), FROZEN_S / 60,
                late.stream().filter(m -> m.notice().seen().untestable()).count()));
        for (Switches on : Switches.values()) {
            lines.add(fallen(on));
        }
        return lines;
    }

    private String fallen(Switches on) {
        List<FallRun.Told> runs = all.fallen().stream().filter(f -> f.on() == on)
                .map(ControlTrial.Fallen::told).toList();
        List<FallRun.Told> told = runs.stream().filter(t -> !Double.isNaN(t.gone())).toList();
        return Text.of("  %-24s water seeps away: told in %d of %d before half was gone (%d before any was),"
                + " at a median of %.0f %% after %.1f h; named before that: %s", on.words(), told.size(),
                runs.size(), runs.stream().filter(FallRun.Told::early).count(),
                100 * quantiles(told, FallRun.Told::gone).at(0.5),
                quantiles(told, FallRun.Told::hours).at(0.5),
                TrialReport.named(runs.stream().map(FallRun.Told::named)));
    }

    /** What was aimed at. */
    List<Target> targets() {
        List<Target> targets = new ArrayList<>();
        for (Switches on : Switches.values()) {
            List<Met> welded = of(on, Mishap.WELDED);
            targets.add(Target.of("welded, " + on.words() + ": excess over its bound, p99",
                    quantiles(welded, MishapTable::excessShare), P99, 1));
            targets.add(Target.of("welded, " + on.words() + ": delay over its bound, p99",
                    quantiles(welded, MishapTable::delayShare), P99, 1));
            targets.add(Target.of("probe in air, " + on.words() + ": p99, s",
                    delays(of(on, Mishap.IN_AIR)), P99, 15));
            targets.add(Target.of("probe frozen, " + on.words() + ": p99, min",
                    quantiles(of(on, Mishap.FROZEN), m -> delayS(m) / 60), P99, FROZEN_S / 60));
        }
        return targets;
    }

    private static double excessShare(Met m) {
        double lags = m.cone().build().quirks().lagS() + m.cone().probeS();
        return m.notice().excessK() / Excess.boundK(m.cone().riseKPerS(), lags);
    }

    /** Delay over max(120 s, the time in which the water rises by three steps of the probe). */
    private static double delayShare(Met m) {
        double net = m.cone().riseKPerS() * Math.max(0.02, 1 - m.notice().duty());
        return ControlTrial.noticed(m) ? m.notice().delayS() / Math.max(120, 3 * 0.0625 / net) : Double.NaN;
    }

    private static Quantiles delays(List<Met> met) {
        return quantiles(met, MishapTable::delayS);
    }

    private static double delayS(Met m) {
        return ControlTrial.noticed(m) ? m.notice().delayS() : Double.NaN;
    }

    private List<Met> of(Switches on, Mishap what) {
        return all.met().stream().filter(m -> m.on() == on && m.what() == what).toList();
    }

    private static <T> Quantiles quantiles(List<T> some, ToDoubleFunction<T> of) {
        return new Quantiles(some.stream().mapToDouble(of).toArray());
    }
}
