package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.judge.Watch;
import org.junit.jupiter.api.Test;

/**
 * The whole daemon in sixty simulated worlds: every danger is brought about, every invariant is held
 * against the truth after every second, and each guard is shown to be needed.
 */
class SeedsTest {

    private static final int SEEDS = 60;
    /** Runs over days with whatever life brings; the other seeds bring one danger about each. */
    private static final int OF_DAYS = 12;

    /** One run, replayed by its theme and seed. */
    private record Run(Theme theme, long seed, List<Guard> guards) {
        Rig play() {
            return theme.run(new Rig(Larkmoor.settings(), seed, Bench.larkmoor(), guards));
        }
    }

    private static Run run(int seed) {
        Theme[] brief = brief();
        Theme theme = seed < OF_DAYS ? Theme.DAYS : brief[seed % brief.length];
        return new Run(theme, seed, Guards.ALL);
    }

    private static Theme[] brief() {
        return Arrays.stream(Theme.values()).filter(t -> t != Theme.DAYS).toArray(Theme[]::new);
    }

    private static <T> List<T> onAllCores(List<Callable<T>> calls) throws InterruptedException,
            ExecutionException {
        try (ExecutorService pool = Executors.newFixedThreadPool(Runtime.getRuntime()
                .availableProcessors())) {
            List<T> out = new ArrayList<>();
            for (Future<T> f : pool.invokeAll(calls)) {
                out.add(f.get());
            }
            return out;
        }
    }

    /** What one seed came to, small enough to keep. */
    private record Outcome(String run, List<Invariants.Violation> broken, Coverage coverage) {}

    @Test
    void everyInvariantHoldsInSixtyWorldsAndEverythingOccurs() throws Exception {
        List<Callable<Outcome>> calls = IntStream.range(0, SEEDS).<Callable<Outcome>>mapToObj(i -> () -> {
            Rig rig = run(i).play();
            return new Outcome(run(i).theme() + " seed " + i, rig.invariants().broken(), rig.coverage());
        }).toList();
        Coverage all = new Coverage();
        List<String> broken = new ArrayList<>();
        for (Outcome o : onAllCores(calls)) {
            o.broken().forEach(v -> broken.add(o.run() + ": " + v));
            all.add(o.coverage());
        }
        assertThat(broken).as("replay with the theme and seed named").isEmpty();
        assertThat(all.stages())
                .containsExactlyInAnyOrder("clean", "filled", "hydrating", "incubating", "hatching",
                "ready", "settling", "settled", "drawing", "drained", "abandoned");
        assertThat(all.alarms()).containsExactlyInAnyOrder(
                Arrays.stream(AlarmKind.values()).map(AlarmKind::id).toArray(String[]::new));
        // A dead heater is known sooner by its energy, a probe in air by its jump; WatchedConeTest has both.
        assertThat(all.suspects()).as("what the watch names").contains(Watch.Suspect.WELDED,
                Watch.Suspect.FROZEN);
        assertThat(String.join("\n", all.refusals())).contains(REFUSALS);
    }

    /** A piece of every refusal the core can speak (Fits, the guards, the desk, the face). */
    private static final String[] REFUSALS = {
        "before 'started'", "before 'filled'", "before 'stocked'", "no water in it to salt",
                "no cysts are in it; report",
        "report 'filled' instead", "settling already", "nothing has hatched yet", "nothing to harvest",
        "drawing was reported already", "nothing has settled yet", "nobody is drawing", "nothing to drain",
        "its cysts have not hatched", "it still holds a batch", "no harvest to judge yet",
        "no batch to abandon",
        "could be flooded", "lying at the broker", "time had run out", "already carried out", "so not done",
        "cannot be right", "a lot needs a label", "is not safe; give", "a set-point belongs to its batch",
        "there is no report to withdraw", "over half an hour old", "only the last one can be withdrawn",
        "no alarm 'no-such-alarm' stands", "no step 'dance'", "is missing", "expected '{'",
        "must be a number",
        "cannot be set", "no cysts are in it to count", "not had air for long enough",
        "no air arrives although", "hands are in the water as reported", "valve has been shut for too long"};

    /** Where a guard is missed first. Saves time only: all the others are tried as well. */
    private static final Map<String, Theme> LIKELY = Map.ofEntries(
            Map.entry("air-failed", Theme.NO_AIR), Map.entry("air-while-drawing", Theme.DRAWS_FOR_EVER),
            Map.entry("siphon", Theme.FLOOD), Map.entry("too-hot", Theme.HEAT_WAVE),
            Map.entry("dry", Theme.LEAK), Map.entry("hands-in", Theme.HANDS),
            Map.entry("record", Theme.DISK), Map.entry("no-effect", Theme.DEAD_HEATER),
            Map.entry("power-cut", Theme.DARKNESS), Map.entry("shut-valve", Theme.VALVE_STAYS_SHUT),
            Map.entry("late", Theme.STALLS), Map.entry("stale", Theme.STALE),
            Map.entry("heater-stuck", Theme.DEAF_OUTPUTS), Map.entry("output-stuck", Theme.DEAF_OUTPUTS),
            Map.entry("suffocation", Theme.NOBODY_COMES), Map.entry("unwritten", Theme.DISK_HANGS),
            Map.entry("welded", Theme.WELDED), Map.entry("clock", Theme.CLOCK),
            Map.entry("crash-loop", Theme.CRASH_LOOP), Map.entry("probe", Theme.NO_PROBE),
            Map.entry("watts", Theme.COLD_START), Map.entry("frozen", Theme.FROZEN_PROBE),
            Map.entry("switch", Theme.CUT_OUT_STUCK));

    private static List<Theme> likelyFirst(Guard g) {
        List<Theme> all = new ArrayList<>(List.of(brief()));
        Optional.ofNullable(LIKELY.get(g.id())).ifPresent(t -> {
            all.remove(t);
            all.addFirst(t);
        });
        return all;
    }

    @Test
    void everyGuardIsNeeded() throws Exception {
        List<Callable<String>> calls = Guards.ALL.stream().<Callable<String>>map(g -> () -> {
            List<Guard> others = Guards.ALL.stream().filter(x -> x != g).toList();
            for (Theme theme : likelyFirst(g)) {
                if (!new Run(theme, 1, others).play().invariants().broken().isEmpty()) {
                    return g.id() + " needed";
                }
            }
            return g.id() + " is never missed";
        }).toList();
        assertThat(onAllCores(calls)).allMatch(s -> s.endsWith(" needed"));
    }

    @Test
    void theSameSeedGivesTheSameLifeTwice() {
        for (Theme theme : List.of(Theme.CLUMSY, Theme.KILLED, Theme.DARKNESS)) {
            Run run = new Run(theme, 77, Guards.ALL);
            assertThat(run.play().fingerprint()).as(theme.name()).isEqualTo(run.play().fingerprint());
        }
    }
}
