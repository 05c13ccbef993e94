package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.core.unit.Text;
import org.conetender.sim.trial.ControlTrial.Held;

/** What the trial has shown, as lines to read and as targets that were met or missed. */
public final class TrialReport {

    /** Cones up to so many litres make one class of size. */
    private static final double[] SIZES_L = {0.5, 2, 7, 20};
    private static final double P95 = 0.95;
    private static final double CYCLES_EXCESS = 1.15;

    private final ControlTrial.Plan plan;
    private final ControlTrial.Outcome all;
    private final MishapTable mishaps;

    TrialReport(ControlTrial.Plan plan, ControlTrial.Outcome all) {
        this.plan = plan;
        this.all = all;
        this.mishaps = new MishapTable(plan.mishapCones(), all);
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
        lines.add(Text.of("In the hours in which ours held them, named although nothing was wrong: %s",
                named(all.held().stream().map(Held::named))));
        lines.addAll(mishaps.lines());
        lines.add(Text.of("Calm: %.0f h with lids, doors, top-ups and samples: %d false alarms, %d pauses,"
                + " %d third pauses in an hour with hands in the water each time; in %d of %d runs"
                + " water was told to have gone", calmHours(), falseAlarms(), sum(CalmRun.Calm::pauses),
                sum(CalmRun.Calm::latched), sum(c -> c.fell() ? 1 : 0), all.calm().size()));
        return lines;
    }

    private static String row(String name, List<Held> held) {
        return Text.of("  %-32s %8.4f %8.3f %8.3f %8.0f %8.0f %8.2f", name,
                at(held, Measures::rmsK), at(held, Measures::peakK), at(held, Measures::overshootK),
                at(held, m -> m.warmS() < 0 ? Double.NaN : m.warmS() / 60), at(held, Measures::cycles),
                at(held, Measures::excess));
    }

    /** How quick the calm hours were reckoned: plant, room, probe, estimate, watch and law at 1 s. */
    public double hoursPerCpuHour() {
        return calmHours() * 3_600 / all.calm().stream().mapToDouble(CalmRun.Calm::cpuS).sum();
    }

    /** What was aimed at in speed. */
    public Target speed() {
        return new Target("processor hours for five million simulated hours at a step a second",
                5e6 / hoursPerCpuHour(), 1);
    }

    /** What was aimed at. */
    public List<Target> targets() {
        List<Held> solid = of(Laws.OURS_SOLID, h -> true);
        List<Held> relay = of(Laws.OURS_400, h -> true);
        List<Target> targets = new ArrayList<>(List.of(
                target("overshoot, solid-state, p95, K", solid, Measures::overshootK, 0.10),
                target("rms, solid-state, p95, K", solid, Measures::rmsK, 0.05),
                target("rms, relay at 400 cycles a day, p95, K", relay, Measures::rmsK, 0.15),
                target("cycles over the least for the ripple, relay 400, p95", relay, Measures::excess,
                        CYCLES_EXCESS),
                target("cycles a day, relay 400, p95", relay, Measures::cycles, 400),
                target("cycles a day, relay 150, p95", of(Laws.OURS_150, h -> true), Measures::cycles,
                        150)));
        targets.addAll(mishaps.targets());
        targets.add(new Target(Text.of("false alarms in %.0f h", calmHours()), falseAlarms(), 0));
        return targets;
    }

    /** Lines of the targets, missed ones in capitals. */
    public List<String> targetLines() {
        return targets().stream().map(Target::line).toList();
    }

    private double calmHours() {
        return all.calm().stream().mapToDouble(CalmRun.Calm::hours).sum();
    }

    private int falseAlarms() {
        return sum(CalmRun.Calm::falseAlarms);
    }

    private int sum(ToIntFunction<CalmRun.Calm> of) {
        return all.calm().stream().mapToInt(of).sum();
    }

    /** How often each cause was named, those that are none left out; in words. */
    static String named(Stream<Suspect> names) {
        Map<Suspect, Integer> counts = new TreeMap<>();
        names.filter(n -> n != Suspect.NONE).forEach(n -> counts.merge(n, 1, Integer::sum));
        return counts.isEmpty() ? "nothing" : counts.toString();
    }

    private List<Held> of(Laws law, Predicate<Held> which) {
        return all.held().stream().filter(h -> h.law() == law).filter(which).toList();
    }

    private static Target target(String what, List<Held> held, ToDoubleFunction<Measures> of, double most) {
        return Target.of(what, quantiles(held, of), P95, most);
    }

    private static double at(List<Held> held, ToDoubleFunction<Measures> of) {
        return quantiles(held, of).at(P95);
    }

    private static Quantiles quantiles(List<Held> held, ToDoubleFunction<Measures> of) {
        return new Quantiles(held.stream().map(Held::measures).mapToDouble(of).toArray());
    }
}
