package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.conetender.core.guard.Guards;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Text;
import org.conetender.sim.Jobs;

/** All passes of a plan on the daemon as it is, several at a time; each alone on its thread. */
public final class Passes {

    /** Rules that may break in one pass before it is given up: the first is mostly the cause of the rest. */
    private static final int MOST_FINDINGS = 5;

    private Passes() {}

    /** @param plan what was asked  @param outcome what came of it */
    public record Done(Plan plan, Search.Outcome outcome) {

        /** One line with its figures, and each rule that broke with its course, a numbered line a move. */
        public List<String> lines() {
            List<String> out = new ArrayList<>();
            Search.Outcome o = outcome;
            out.add(Text.of("%-9s  %-40s %8d states  %9d moves  %9d ticks  %s", plan.fitted().word(),
                    plan.bounds().words(), o.states(), o.edges(), o.ticks(),
                    o.complete() ? "all there are" : Text.of("all within %d moves", o.depth())));
            o.findings().values().forEach(f -> {
                out.add("BROKEN  " + f.what());
                for (int i = 0; i < f.course().size(); i++) {
                    out.add(Text.of("  %2d. %s", i + 1, f.course().get(i)));
                }
            });
            return out;
        }
    }

    /** @param done in the order of their plans  @param distinct states, each once however many met it */
    public record All(List<Done> done, long distinct) {}

    /**
     * Does all of them.
     *
     * @param progress hears the share of the states that were asked for, 0..1, on any thread
     * @throws InterruptedException if the caller was interrupted; what was begun is given up
     */
    public static All run(List<Plan> plans, int threads, Consumer<Double> progress)
            throws InterruptedException {
        double all = plans.stream().mapToDouble(p -> p.bounds().states()).sum();
        AtomicIntegerArray reached = new AtomicIntegerArray(plans.size());
        Done[] done = new Done[plans.size()];
        Map<Fitted, Seen> seen = new EnumMap<>(Fitted.class);
        List<Callable<Runnable>> jobs = new ArrayList<>();
        for (int i = 0; i < plans.size(); i++) {
            int place = i;
            jobs.add(() -> {
                Plan p = plans.get(place);
                Consumer<Integer> hears = states -> {
                    reached.set(place, states);
                    progress.accept(IntStream.range(0, plans.size()).mapToLong(reached::get).sum() / all);
                };
                Settings s = p.fitted().settings();
                Search search = new Search(s, Daemon.real(s, Guards.ALL), p.bounds(), hears);
                Search.Outcome o = search.run(MOST_FINDINGS);
                // What is passed over because it was complete counts as reached.
                hears.accept(p.bounds().states());
                return () -> {
                    done[place] = new Done(p, o);
                    seen.computeIfAbsent(p.fitted(), _ -> new Seen()).add(search.seen());
                };
            });
        }
        Jobs.run(jobs, threads, share -> { });
        return new All(List.of(done), seen.values().stream().mapToLong(Seen::size).sum());
    }
}
