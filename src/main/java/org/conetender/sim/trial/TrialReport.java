package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.core.unit.Text;
import org.conetender.sim.trial.ControlTrial.Held;
import org.conetender.sim.trial.ControlTrial.Met;

/** What the trial has shown, as lines to read and as targets that were met or missed. */
public final class TrialReport {

    /** Cones up to so many litres make one class of size. */
    private static final double[] SIZES_L = {0.5, 2, 7, 20};
    private static final double P95 = 0.95;
    private static final double P99 = 0.99;
    /** Less than 2.4 steps of the probe, against noise of 0.027 K, is hard to see in fifteen seconds, K. */
    private static final double FAR_K = 0.15;
    private static final double CYCLES_EXCESS = 1.15;

    private final ControlTrial.Plan plan;
    private final ControlTrial.Outcome all;

    TrialReport(ControlTrial.Plan plan, ControlTrial.Outcome all) {
        this.plan = plan;
        this.all = all;
    }

    /** The tables. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(Text.of("True water of %d random cones, 0.5-20 L, 3-25 W/L; 95 %% of them are within",
                plan.cones()));
        lines.add(Text.of("  %-32s %8s %8s %8s %8s %8s %8s", "", "rms K", "peak K", "over K", "warm min",
                "cycles/d", "x least"));
        for (Laws law : Laws.values()) {
            lines.add(row(law.words(), of(law, h -> true)));
        }
        for (int i = 1; i < SIZES_L.length; i++) {
            double from = SIZES_L[i - 1];
            double to = SIZES_L[i];
            lines.add(Text.of("the same for cones of %.1f to %.1f L", from, to));
            for (Laws law : Laws.values()) {
                lines.add(row(law.words(), of(law, h -> h.cone().build().litres() >= from
                        && h.cone().build().litres() < to)));
            }
        }
        long weak = of(Laws.OURS_SOLID, h -> h.cone().weak()).size();
        lines.add(Text.of("%d cones cannot hold %.0f C in their coldest hour and hold what they can.", weak,
                TrialCone.USUAL_SETPOINT_C));
        lines.addAll(mishapLines());
        return lines;
    }

    private static String row(String name, List<Held> held) {
        return Text.of("  %-32s %8.4f %8.3f %8.3f %8.0f %8.0f %8.2f", name,
                at(held, Measures::rmsK), at(held, Measures::peakK), at(held, Measures::overshootK),
                at(held, m -> m.warmS() < 0 ? Double.NaN : m.warmS() / 60), at(held, Measures::cycles),
                at(held, Measures::excess));
    }

    private List<String> mishapLines() {
        List<String> lines = new ArrayList<>();
        lines.add(Text.of("Mishaps, each on %d cones: seconds until named, and the name",
                plan.mishapCones()));
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
                .filter(m -> m.what() == Mishap.IN_AIR && m.notice().leavesK() >= FAR_K).toList();
        long inAir = all.met().stream().filter(m -> m.what() == Mishap.IN_AIR).count();
        lines.add(Text.of("  of probes in air %.0f %% move by %.2f K or more in 15 s: p95 %.0f, p99 %.0f s",
                100.0 * far.size() / inAir, FAR_K, delays(far).at(P95), delays(far).at(P99)));
        lines.add(Text.of("Calm: %.0f h with lids, doors, top-ups and samples: %d false alarms, %d pauses,"
                + " %d third pauses in an hour with hands in the water each time", calmHours(), falseAlarms(),
                all.calm().stream().mapToInt(CalmRun.Calm::pauses).sum(),
                all.calm().stream().mapToInt(CalmRun.Calm::latched).sum()));
        return lines;
    }

    /** How quick the calm hours were reckoned: plant, room, probe, estimate, watch and law at 1 s. */
    public double hoursPerCpuHour() {
        return calmHours() * 3_600 / all.calm().stream().mapToDouble(CalmRun.Calm::cpuS).sum();
    }

    /** What was aimed at. */
    public List<Target> targets() {
        List<Held> solid = of(Laws.OURS_SOLID, h -> true);
        List<Held> relay = of(Laws.OURS_400, h -> true);
        List<Target> targets = new ArrayList<>(List.of(
                new Target("overshoot, solid-state, p95, K", at(solid, Measures::overshootK), 0.10),
                new Target("rms, solid-state, p95, K", at(solid, Measures::rmsK), 0.05),
                new Target("rms, relay at 400 cycles a day, p95, K", at(relay, Measures::rmsK), 0.15),
                new Target("cycles over the least for the ripple, relay 400, p95",
                        at(relay, Measures::excess), CYCLES_EXCESS),
                new Target("cycles a day, relay 400, p95", at(relay, Measures::cycles), 400),
                new Target("cycles a day, relay 150, p95",
                        at(of(Laws.OURS_150, h -> true), Measures::cycles), 150)));
        for (Switches on : Switches.values()) {
            List<Met> welded = of(on, Mishap.WELDED);
            targets.add(new Target("welded, " + on.words() + ": excess over its bound, p99",
                    p99(welded, TrialReport::excessShare), 1));
            targets.add(new Target("welded, " + on.words() + ": delay over its bound, p99",
                    p99(welded, TrialReport::delayShare), 1));
            targets.add(new Target("probe in air, " + on.words() + ": p99, s",
                    delays(of(on, Mishap.IN_AIR)).at(P99), 15));
            targets.add(new Target("probe frozen, " + on.words() + ": p99, min",
                    delays(of(on, Mishap.FROZEN)).at(P99) / 60, 75));
        }
        targets.add(new Target(Text.of("false alarms in %.0f h", calmHours()), falseAlarms(), 0));
        return targets;
    }

    /** Lines of the targets, missed ones in capitals. */
    public List<String> targetLines() {
        return targets().stream().map(Target::line).toList();
    }

    private static double p99(List<Met> met, ToDoubleFunction<Met> of) {
        return new Quantiles(met.stream().mapToDouble(of).toArray()).at(P99);
    }

    /** Excess over max(0.4 K, 1.5 times the rise during both lags and two seconds). */
    private static double excessShare(Met m) {
        double lags = m.cone().build().quirks().lagS() + m.cone().probeS() + 2;
        return m.notice().excessK() / Math.max(0.4, 1.5 * m.cone().riseKPerS() * lags);
    }

    /** Delay over max(120 s, the time in which the water rises by three steps of the probe). */
    private static double delayShare(Met m) {
        double net = m.cone().riseKPerS() * Math.max(0.02, 1 - m.notice().duty());
        return ControlTrial.noticed(m) ? m.notice().delayS() / Math.max(120, 3 * 0.0625 / net) : Double.NaN;
    }

    private static Quantiles delays(List<Met> met) {
        return new Quantiles(met.stream()
                .mapToDouble(m -> ControlTrial.noticed(m) ? m.notice().delayS() : Double.NaN).toArray());
    }

    private double calmHours() {
        return all.calm().stream().mapToDouble(CalmRun.Calm::hours).sum();
    }

    private int falseAlarms() {
        return all.calm().stream().mapToInt(CalmRun.Calm::falseAlarms).sum();
    }

    private List<Held> of(Laws law, Predicate<Held> which) {
        return all.held().stream().filter(h -> h.law() == law).filter(which).toList();
    }

    private List<Met> of(Switches on, Mishap what) {
        return all.met().stream().filter(m -> m.on() == on && m.what() == what).toList();
    }

    private static double at(List<Held> held, ToDoubleFunction<Measures> of) {
        return new Quantiles(held.stream().map(Held::measures).mapToDouble(of).toArray()).at(P95);
    }
}
