package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.guard.Finding;
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
        String name() {
            return theme + " seed " + seed;
        }

        Rig play() {
            boolean mixed = MIXED.contains(theme) || seed >= SECOND_ROUND
                    || theme == Theme.DAYS && seed % 3 == 2;
            return theme.run(new Rig(mixed ? Larkmoor.mixed() : Larkmoor.settings(), seed, Bench.larkmoor(),
                    guards));
        }
    }

    /** What happens only where the cones are fitted otherwise. */
    private static final Set<Theme> MIXED = Set.of(Theme.WRONG_CONE, Theme.BY_ITSELF);
    /** From this seed on every short theme has had its turn, and the other room has its own. */
    private static final int SECOND_ROUND = OF_DAYS + Theme.values().length - 1;

    private static Run run(int seed) {
        Theme[] brief = brief();
        Theme theme = seed < OF_DAYS ? Theme.DAYS : brief[seed % brief.length];
        return new Run(theme, seed, Guards.ALL);
    }

    private static Theme[] brief() {
        return Arrays.stream(Theme.values()).filter(t -> t != Theme.DAYS).toArray(Theme[]::new);
    }

    private static final long FURTHER_SEED = 1_000;
    private static final int FURTHER = 4;

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

    /** What one run came to, small enough to keep. */
    private record Outcome(Run run, List<Invariants.Violation> broken, Coverage coverage) {
        static Outcome of(Run run) {
            Rig rig = run.play();
            return new Outcome(run, rig.invariants().broken(), rig.coverage());
        }
    }

    /** Runs with every guard, played once for both tests: what a guard is missed in is clean with it. */
    private static final Map<Run, FutureTask<Outcome>> WHOLE = new ConcurrentHashMap<>();

    private static Outcome whole(Run run) throws InterruptedException, ExecutionException {
        FutureTask<Outcome> task = WHOLE.computeIfAbsent(run, r -> new FutureTask<>(() -> Outcome.of(r)));
        task.run(); // Does nothing where it was begun already.
        return task.get();
    }

    @Test
    void everyInvariantHoldsInSixtyWorldsAndEverythingOccurs() throws Exception {
        List<Callable<Outcome>> calls = IntStream.range(0, SEEDS)
                .<Callable<Outcome>>mapToObj(i -> () -> whole(run(i))).toList();
        Coverage all = new Coverage();
        List<String> broken = new ArrayList<>();
        for (Outcome o : onAllCores(calls)) {
            o.broken().forEach(v -> broken.add(o.run().name() + ": " + v));
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
        // A guard that only refuses finds nothing: its refusals are among those below.
        assertThat(all.guards()).containsExactlyInAnyOrder(Guards.ALL.stream().filter(SeedsTest::looks)
                .map(Guard::id).toArray(String[]::new));
        assertThat(told()).as("what ends the findings of each, as the worlds showed it")
                .isEqualTo(Guards.ALL.stream().collect(Collectors.toMap(g -> g.getClass().getSimpleName(),
                        g -> ends(all, g), (a, b) -> a, TreeMap::new)));
        String heard = String.join("\n", all.refusals());
        assertThat(Refusals.pieces()).hasSizeGreaterThan(60);
        assertThat(Refusals.pieces()).filteredOn(p -> !heard.contains(Coverage.plain(p)))
                .as("refusals that no world brought about")
                .containsExactlyInAnyOrderElementsOf(Refusals.UNHEARD.keySet());
    }

    private static String ends(Coverage all, Guard g) {
        return !looks(g) ? "it only refuses" : all.ends().getOrDefault(g.id(), Set.of()).stream()
                .map(Finding.Clears::words).collect(Collectors.joining("; "));
    }

    /** By guard, what the safety document says of that. */
    private static Map<String, String> told() throws IOException {
        String text = Files.readString(Path.of("src/site/markdown/safety.md"));
        return text.substring(text.indexOf("<!-- guards:"), text.indexOf("<!-- /guards -->")).lines()
                .map(l -> l.split("\\s*\\|\\s*")).filter(r -> r.length == 5 && r[2].startsWith("`"))
                .collect(Collectors.toMap(r -> r[2].replace("`", ""), r -> r[3], (a, b) -> a, TreeMap::new));
    }

    private static boolean looks(Guard g) {
        return Arrays.stream(g.getClass().getDeclaredMethods()).anyMatch(m -> m.getName().equals("look"));
    }

    /** @param in where it is missed  @param rules of the danger that it guards against, any of them */
    private record Missed(Theme in, Set<String> rules) {
        static Missed in(Theme theme, String... rules) {
            return new Missed(theme, Set.of(rules));
        }
    }

    /** What goes wrong without each guard: its own danger, and nothing else. */
    private static final Map<String, Missed> MISSED = Map.ofEntries(
            Map.entry("air-failed", Missed.in(Theme.CHATTER, "air-failed")),
            Map.entry("air-while-drawing", Missed.in(Theme.DRAWS_FOR_EVER, "drawing-told")),
            Map.entry("siphon", Missed.in(Theme.FLOOD, "siphon")),
            Map.entry("too-hot", Missed.in(Theme.HEAT_WAVE, "too-hot")),
            Map.entry("dry", Missed.in(Theme.LEAK, "dry", "dry-told")),
            Map.entry("falling", Missed.in(Theme.SEEP, "falling-told")),
            Map.entry("hands-in", Missed.in(Theme.HANDS, "hands-in")),
            Map.entry("record", Missed.in(Theme.DISK, "record")),
            Map.entry("no-effect", Missed.in(Theme.DEAD_HEATER, "no-effect")),
            Map.entry("power-cut", Missed.in(Theme.DARKNESS, "power-cut")),
            Map.entry("shut-valve", Missed.in(Theme.VALVE_STAYS_SHUT, "shut-valve", "air-due")),
            Map.entry("late", Missed.in(Theme.STALLS, "heartbeat")),
            Map.entry("stale", Missed.in(Theme.STALE, "stale", "twice")),
            Map.entry("heater-stuck",
                    Missed.in(Theme.DEAF_OUTPUTS, "stuck-told", "stuck-heat", "stuck-beat")),
            Map.entry("output-stuck", Missed.in(Theme.DEAF_OUTPUTS, "output-told")),
            Map.entry("suffocation", Missed.in(Theme.NOBODY_COMES, "air-cap")),
            Map.entry("unwritten", Missed.in(Theme.DISK_FILLS_WHILE_DRAWING, "unwritten-heat",
                    "unwritten-air-off")),
            Map.entry("welded", Missed.in(Theme.WELDED, "welded", "welded-soon")),
            Map.entry("wrong-cone", Missed.in(Theme.OUTPUTS_TOUCH, "crossed", "excess", "crossed-heat")),
            Map.entry("clock", Missed.in(Theme.CLOCK, "clock")),
            Map.entry("crash-loop", Missed.in(Theme.CRASH_LOOP, "crash-loop", "crash-loop-told")),
            Map.entry("record-damaged", Missed.in(Theme.DAMAGED_RECORD, "damage", "damage-told")),
            Map.entry("probe", Missed.in(Theme.NO_PROBE, "probe")),
            Map.entry("still-water", Missed.in(Theme.CHATTER, "still-water")),
            Map.entry("frozen", Missed.in(Theme.FROZEN_PROBE, "frozen-told")),
            Map.entry("switch", Missed.in(Theme.CUT_OUT_STUCK, "switch-tried")),
            Map.entry("watts", Missed.in(Theme.COLD_START, "watts")));

    /** Those of the sixty in which that theme is played, and a few more for what chance may hide in them. */
    private static List<Run> played(Theme theme) {
        return Stream.concat(IntStream.range(0, SEEDS).mapToObj(SeedsTest::run)
                .filter(r -> r.theme() == theme), LongStream.range(FURTHER_SEED, FURTHER_SEED + FURTHER)
                .mapToObj(seed -> new Run(theme, seed, Guards.ALL))).toList();
    }

    @Test
    void everyGuardIsNeeded() throws Exception {
        assertThat(MISSED.keySet()).containsExactlyInAnyOrder(
                Guards.ALL.stream().map(Guard::id).toArray(String[]::new));
        List<Callable<String>> calls = Guards.ALL.stream()
                .<Callable<String>>map(g -> () -> without(g)).toList();
        assertThat(onAllCores(calls)).allMatch(s -> s.endsWith(" is needed"));
    }

    /** The same run twice: clean with all guards, and without that one its danger comes about. */
    private static String without(Guard g) throws InterruptedException, ExecutionException {
        Missed missed = MISSED.get(g.id());
        List<Guard> others = Guards.ALL.stream().filter(x -> x != g).toList();
        List<String> seen = new ArrayList<>();
        for (Run run : played(missed.in())) {
            List<Invariants.Violation> with = whole(run).broken();
            if (!with.isEmpty()) {
                return g.id() + ": " + run.name() + " is not clean with all guards: " + with;
            }
            List<Invariants.Violation> broken = Outcome.of(new Run(run.theme(), run.seed(), others)).broken();
            if (!broken.isEmpty()) {
                boolean own = broken.stream().allMatch(v -> missed.rules().contains(v.rule()));
                return g.id() + (own ? " is needed" : " is missed in " + run.name() + " by " + broken);
            }
            seen.add(run.name());
        }
        return g.id() + " is missed in none of " + seen;
    }

    @Test
    void theSameSeedGivesTheSameLifeTwice() {
        for (Theme theme : List.of(Theme.CLUMSY, Theme.KILLED, Theme.DARKNESS)) {
            Run run = new Run(theme, 77, Guards.ALL);
            assertThat(run.play().fingerprint()).as(theme.name()).isEqualTo(run.play().fingerprint());
        }
    }
}
