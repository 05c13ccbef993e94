package org.conetender.sim.trial;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.sim.Jobs;

/**
 * The trial of the heating law: every law holds the same cones, every mishap happens to them, and calm
 * days pass without one. Seeds are fixed and were not looked at while the law's figures were chosen; after
 * a trial that led to changes they are replaced (64, 65 and 66 million were the last but these).
 */
public final class ControlTrial {

    private static final long FIRST_SEED = 111_000_000;
    private static final long FIRST_MISHAP_SEED = 112_000_000;
    private static final long FIRST_CALM_SEED = 113_000_000;
    /** A calm run is so long, h. */
    private static final int CALM_H = 72;

    /**
     * @param cones that every law holds, at least 1
     * @param mishapCones to which every mishap happens, at least 1
     * @param calmHours without a mishap in all, at least 1
     * @param threads that work on it
     */
    public record Plan(int cones, int mishapCones, int calmHours, int threads) {}

    /** One law on one cone. @param named although nothing was wrong */
    record Held(Laws law, TrialCone cone, Measures measures, Suspect named) {}

    /** One mishap. */
    record Met(Switches on, Mishap what, TrialCone cone, MishapRun.Notice notice) {}

    /** One cone that seeps. */
    record Fallen(Switches on, FallRun.Told told) {}

    /** All that came out. */
    record Outcome(List<Held> held, List<Met> met, List<Fallen> fallen, List<CalmRun.Calm> calm) {}

    private ControlTrial() {}

    /**
     * Runs it on so many threads of its own; takes minutes.
     *
     * @param progress hears the share that is done, 0..1, on the calling thread
     * @throws InterruptedException if the caller was interrupted; what was begun is given up
     */
    public static TrialReport run(Plan plan, Consumer<Double> progress) throws InterruptedException {
        Outcome all = new Outcome(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(),
                new ArrayList<>());
        List<Callable<Runnable>> jobs = jobs(plan, all);
        Jobs.run(jobs, plan.threads(), progress);
        return new TrialReport(plan, all);
    }

    /** Each job works alone and answers with what files its result, which the calling thread then does. */
    private static List<Callable<Runnable>> jobs(Plan plan, Outcome all) {
        List<Callable<Runnable>> jobs = new ArrayList<>();
        LongStream.range(0, plan.cones()).forEach(i -> jobs.add(() -> {
            TrialCone cone = TrialCone.draw(FIRST_SEED + i);
            List<Held> held = new ArrayList<>();
            for (Laws law : Laws.values()) {
                TrialRun run = new TrialRun(cone, law.of(cone));
                held.add(new Held(law, cone, run.run(), run.named()));
            }
            return () -> all.held().addAll(held);
        }));
        LongStream.range(0, plan.mishapCones()).forEach(i -> jobs.add(() -> {
            TrialCone cone = TrialCone.draw(FIRST_MISHAP_SEED + i);
            List<Met> met = mishaps(cone);
            List<Fallen> fallen = new ArrayList<>();
            for (Switches on : Switches.values()) {
                fallen.add(new Fallen(on, new FallRun(cone, new Laws.Ours(cone, on.kind())).run()));
            }
            return () -> {
                all.met().addAll(met);
                all.fallen().addAll(fallen);
            };
        }));
        LongStream.range(0, Math.ceilDiv(plan.calmHours(), CALM_H)).forEach(i -> jobs.add(() -> {
            TrialCone cone = TrialCone.draw(FIRST_CALM_SEED + i);
            Switches on = Switches.values()[(int) (i % Switches.values().length)];
            ThreadMXBean thread = ManagementFactory.getThreadMXBean();
            long began = thread.getCurrentThreadCpuTime();
            CalmRun.Calm calm = new CalmRun(cone, new Laws.Ours(cone, on.kind())).run(CALM_H);
            double cpuS = (thread.getCurrentThreadCpuTime() - began) / 1e9;
            return () -> all.calm().add(calm.took(cpuS));
        }));
        return jobs;
    }

    private static List<Met> mishaps(TrialCone cone) {
        List<Met> met = new ArrayList<>();
        for (Switches on : Switches.values()) {
            for (Mishap what : Mishap.values()) {
                met.add(new Met(on, what, cone,
                        new MishapRun(cone, what, new Laws.Ours(cone, on.kind())).run()));
            }
        }
        return met;
    }

    /** Whether a mishap was noticed at all, after it had happened. */
    static boolean noticed(Met met) {
        return met.notice().named() != Suspect.NONE && !met.notice().early();
    }
}
