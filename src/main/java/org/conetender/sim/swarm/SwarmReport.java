package org.conetender.sim.swarm;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.StaleCommand;
import org.conetender.core.unit.Text;
import org.conetender.sim.Coverage;
import org.conetender.sim.Invariants.Violation;
import org.conetender.sim.Jobs;
import org.conetender.sim.Parts;
import org.conetender.sim.trial.Target;

/** What many stories came to: how much was lived, what was reached, and what broke. */
public final class SwarmReport {

    /** Tellings that shrinking may take in all; one takes seconds, and a story some dozens of them. */
    private static final int TELLINGS = 400;
    private static final double LIVED = 0.6;
    /** Cone-hours in which all that can be said should have been said once (guess). */
    private static final double MANY_H = 20_000;
    private static final double S_PER_H = 3_600;

    private final Swarm.Plan plan;
    private final Coverage coverage;
    private final List<Swarm.Broken> broken = new ArrayList<>();
    private final Map<String, Shrink.Shrunk> shrunk = new LinkedHashMap<>();
    private Play.Hours hours = Play.Hours.NONE;
    private int quiet;
    private int different;
    private double cpuS;

    SwarmReport(Swarm.Plan plan, Coverage coverage) {
        this.plan = plan;
        this.coverage = coverage;
    }

    void add(Swarm.One one) {
        hours = hours.plus(one.played().hours());
        cpuS += one.cpuS();
        coverage.add(one.played().coverage());
        quiet += one.tale().events().isEmpty() ? 1 : 0;
        different += one.same() ? 0 : 1;
        one.played().broken().stream().findFirst()
                .ifPresent(v -> broken.add(new Swarm.Broken(one.tale(), v)));
    }

    /**
     * Shrinks the first story of each rule that broke, on the threads of the plan.
     *
     * @param progress is told the share that is done, on any of them; it may leap at the end
     */
    public void shrink(Consumer<Double> progress) throws InterruptedException {
        shrink(Parts.WHOLE, progress);
    }

    void shrink(Parts parts, Consumer<Double> progress) throws InterruptedException {
        Map<String, Swarm.Broken> first = new LinkedHashMap<>();
        broken.forEach(b -> first.putIfAbsent(b.violation().rule(), b));
        AtomicInteger told = new AtomicInteger();
        List<Callable<Runnable>> jobs = new ArrayList<>();
        first.forEach((rule, b) -> {
            shrunk.put(rule, new Shrink.Shrunk(b.tale(), false));
            Shrink.Most most = new Shrink.Most(TELLINGS / first.size(),
                    () -> progress.accept(Math.min(1, told.incrementAndGet() / (double) TELLINGS)));
            jobs.add(() -> {
                Shrink.Shrunk s = Shrink.of(b.tale(), b.violation(), parts, most);
                return () -> shrunk.put(rule, s);
            });
        });
        Jobs.run(jobs, plan.threads(), share -> { });
    }

    public List<Swarm.Broken> broken() {
        return List.copyOf(broken);
    }

    /** Alarms that no story raised. */
    Set<String> missedAlarms() {
        Set<String> left = new TreeSet<>();
        for (AlarmKind k : AlarmKind.values()) {
            left.add(k.id());
        }
        left.removeAll(coverage.alarms());
        return left;
    }

    /** Guards that found nothing in any story. */
    Set<String> missedGuards() {
        Set<String> left = new TreeSet<>();
        // One only refuses.
        Guards.ALL.stream().filter(g -> !(g instanceof StaleCommand)).forEach(g -> left.add(g.id()));
        left.removeAll(coverage.guards());
        return left;
    }

    private double coneHours() {
        return hours.all() / S_PER_H;
    }

    /** Enough that everything should have come about. */
    private boolean many() {
        return coneHours() >= MANY_H;
    }

    /** For a person. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(Text.of("%d stories of %d h, seeds %d to %d: %.0f cone-hours",
                plan.seeds(), plan.hours(), plan.from(), plan.from() + plan.seeds() - 1, coneHours()));
        if (broken.isEmpty()) {
            lines.add(Text.of("None failed: in so many hours that bounds the rate of the modelled faults at"
                    + " %.1e an hour (95 %%)", 3 / coneHours()));
        }
        lines.add("Stages reached: " + String.join(", ", coverage.stages()));
        lines.add("Never: alarms " + missedAlarms() + ", guards " + missedGuards()
                + (many() ? "" : "; so few stories cannot bring all about, some hundreds do"));
        for (Swarm.Broken b : broken) {
            lines.add(Text.of("%s, seed %d", line(b.violation()), b.tale().place().seed()));
        }
        if (broken.size() > broken.stream().map(b -> b.violation().rule()).distinct().count()) {
            lines.add("Of each rule the first story is shrunk; 'soak --seeds 1 --from SEED', with the same"
                    + " '--hours', shrinks another");
        }
        return lines;
    }

    /** The shrunk stories, each as it is told again. */
    public List<String> stories() {
        return shrunk.entrySet().stream()
                .map(e -> text(e.getKey(), e.getValue(), TELLINGS / shrunk.size())).toList();
    }

    /** A story as it is printed and told again. @param tellings that it might take to shrink */
    static String text(String rule, Shrink.Shrunk s, int tellings) {
        return "# " + rule + (s.whole() ? "" : Text.of("; perhaps not as short as it can be: the %d tellings"
                + " that it had are spent", tellings)) + "\n" + s.tale().text();
    }

    /** The shortest story of each rule that broke. */
    Map<String, Shrink.Shrunk> shrunk() {
        return Collections.unmodifiableMap(shrunk);
    }

    /** One broken rule, for a person. */
    public static String line(Violation v) {
        return Text.of("BROKEN %s%s: %s, at %02d:%02d:%02d", v.rule(), v.cone().isEmpty() ? ""
                : " at " + v.cone(), v.what(), v.atMs() / 3_600_000, v.atMs() / 60_000 % 60,
                v.atMs() / 1_000 % 60);
    }

    /** How quick it was: cone-hours in an hour of one processor. */
    public double hoursPerCpuHour() {
        return hours.all() / cpuS;
    }

    /** What was aimed at. */
    public List<Target> targets() {
        List<Target> t = new ArrayList<>(List.of(
                new Target("stories that broke an invariant", broken.size(), 0),
                new Target("stories without any trouble", quiet, 0),
                new Target("share of hours without water and animals",
                        1 - (double) hours.lived() / Math.max(1, hours.all()), 1 - LIVED)));
        if (many()) {
            t.add(new Target("alarms never raised", missedAlarms().size(), 0));
            t.add(new Target("guards that never found anything", missedGuards().size(), 0));
        }
        if (plan.twice()) {
            t.add(new Target("stories that came to something else when told again", different, 0));
        }
        return t;
    }
}
