package org.conetender.sim.swarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.Power;
import org.conetender.core.guard.View;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.port.Store;
import org.conetender.port.Switch;
import org.conetender.sim.Parts;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Bugs that somebody could write, each planted in one part of the daemon and left to the stories. A story
 * must break, by a rule of that bug's own danger, and end well without the bug. That each guard is needed is
 * {@code SeedsTest}'s part.
 */
class PlantedBugsTest {

    /** @param name what was done wrong  @param parts with it  @param rules that see it  @param story where */
    record Bug(String name, Parts parts, Set<String> rules, String story) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static final String PLACE = "story larkmoor-plain careful seed 5 hours 5\n";
    /** A batch that hatches early and is separated, without anybody near. */
    private static final String SETTLED = "story larkmoor-plain nobody seed 5 hours 2\n"
            + "00:00:20 begin a\n01:00:00 say a first-seen\n01:01:00 say a settle\n";

    static Stream<Bug> bugs() {
        return Stream.of(
                new Bug("a lease of an hour", wire(s -> held(s, 3_600_000)), Set.of("lease"),
                        PLACE + "02:00:00 hang 40s"),
                new Bug("a lease that is never asked for", wire(s -> held(s, Long.MAX_VALUE / 4)),
                        Set.of("lease"), PLACE + "02:00:00 kill now\n02:00:01 hang 30s"),
                new Bug("an answer before its commit", store(EarlyStore::new), Set.of("answered", "restart"),
                        PLACE),
                new Bug("a latch that no restart remembers", store(s -> new Forgetful(s,
                        f -> f.change() instanceof Change.Tripped)), Set.of("latch", "restart"), PLACE
                        + "03:00:00 switch b heat welded 3000s\n03:20:00 kill now"),
                new Bug("a filling that no restart remembers", store(s -> new Forgetful(s,
                        f -> f.change() instanceof Change.Told(Ask.Did(Step st)) && st == Step.FILLED
                        || f.change() instanceof Change.Told(Ask.DidFill _))), Set.of("restart"),
                        PLACE + "02:00:00 kill now"),
                new Bug("a stage that no restart remembers", store(s -> new Forgetful(s,
                        f -> f.change() instanceof Change.Moved)), Set.of("restart"),
                        PLACE + "04:30:00 kill now"),
                new Bug("a heater's line that is inverted in the adapter", wire(s ->
                        s.id().endsWith(".heat") ? inverted(s) : s), Set.of("watts", "blind-heat"), PLACE),
                new Bug("an air pump that is paused when it should run", wire(s ->
                        s.id().endsWith(".air-pause") ? inverted(s) : s), Set.of("siphon", "suffocation",
                        "air-off-full", "still-water", "air-cap"), PLACE),
                new Bug("a heartbeat that sticks", wire(s -> s.id().equals("site.heartbeat") ? stuck(s) : s),
                        Set.of("pulse"), PLACE),
                new Bug("a pump that may stop where water runs back", flipped("siphon"), Set.of("siphon"),
                        SETTLED.replace(" a", " b")),
                new Bug("a damage that no restart is told of", store(Trusting::new), Set.of("damage-told",
                        "damage"), PLACE + "03:00:00 damage 100"),
                new Bug("a damage that is told and left", blind("record-damaged", Power.HEAT,
                        Power.CUT_OUT), Set.of("damage"), PLACE + "03:00:00 damage 100"),
                new Bug("hands that switch nothing off", blind("hands-in", Power.HEAT, Power.LAMPS,
                        Power.AIR_OFF, Power.CUT_OUT), Set.of("hands-in"), PLACE
                        + "03:00:00 say a hands-in"),
                new Bug("a welded switch that is told and left", blind("welded", Power.HEAT, Power.CUT_OUT),
                        Set.of("welded", "excess"), SETTLED + "00:30:00 switch a heat welded 6000s"),
                new Bug("a cap that denies nothing", blind("suffocation", Power.AIR_OFF), Set.of("air-cap",
                        "suffocation", "oxygen", "deaths"), SETTLED),
                new Bug("a limit in watts that is never reached", blind("watts", Power.HEAT), Set.of("watts"),
                        PLACE + "00:00:01 site room-cold 9000s"),
                new Bug("a stale command that is served", serves("stale"), Set.of("stale"),
                        PLACE + "02:00:00 stale a drained retained"),
                new Bug("a full disk that is not noticed", store(Careless::new), Set.of("answered", "record"),
                        PLACE + "02:00:00 disk full 6000s\n02:05:00 say a first-seen"));
    }

    @ParameterizedTest
    @MethodSource("bugs")
    void itIsSeenByARuleOfItsOwnDanger(Bug bug) {
        Tale tale = Tale.parse(bug.story());
        assertThat(Play.of(tale, Parts.WHOLE).broken()).as("without the bug").isEmpty();
        assertThat(Play.of(tale, bug.parts()).broken()).as("with it").isNotEmpty()
                .allMatch(v -> bug.rules().contains(v.rule()));
    }

    static Parts wire(UnaryOperator<Switch> w) {
        return new Parts(Guards.ALL, UnaryOperator.identity(), w, UnaryOperator.identity());
    }

    static Parts store(UnaryOperator<Store> s) {
        return new Parts(Guards.ALL, s, UnaryOperator.identity(), UnaryOperator.identity());
    }

    static Parts guard(String id, UnaryOperator<Guard> bent) {
        return Parts.with(Guards.ALL.stream().map(g -> g.id().equals(id) ? bent.apply(g) : g).toList());
    }

    /** Finds something where the real one finds nothing, and the other way round. */
    private static Parts flipped(String id) {
        return guard(id, g -> new Bent(g) {
            @Override
            public List<Finding> look(View v) {
                return g.look(v).isEmpty() ? List.of(Finding.veto(id, "planted", Power.LAMPS)) : List.of();
            }

            @Override
            public Optional<String> refuses(Request r, View v) {
                return Optional.empty();
            }
        });
    }

    /** Tells everything, and withholds nothing of these. */
    private static Parts blind(String id, Power... of) {
        return guard(id, g -> new Bent(g) {
            @Override
            public List<Finding> look(View v) {
                return g.look(v).stream().map(f -> {
                    Set<Power> left = new TreeSet<>(f.denies());
                    left.removeAll(Set.of(of));
                    return new Finding(f.guard(), left, f.clears(), f.alarm(), f.what(), f.doubt(),
                            f.mended(), f.nearly());
                }).toList();
            }
        });
    }

    /** Refuses nothing. */
    static Parts serves(String id) {
        return guard(id, g -> new Bent(g) {
            @Override
            public Optional<String> refuses(Request r, View v) {
                return Optional.empty();
            }
        });
    }

    /** A guard that does in all as the real one. */
    static class Bent implements Guard {
        private final Guard real;

        Bent(Guard real) {
            this.real = real;
        }

        @Override
        public String id() {
            return real.id();
        }

        @Override
        public List<Finding> look(View v) {
            return real.look(v);
        }

        @Override
        public Optional<String> refuses(Request r, View v) {
            return real.refuses(r, v);
        }

        @Override
        public boolean causeGone(View v) {
            return real.causeGone(v);
        }

        @Override
        public List<String> takesBack(View v) {
            return real.takesBack(v);
        }
    }

    private interface Hold {
        boolean hold(boolean energised, long validForMs);
    }

    private static Switch bent(Switch s, Hold how) {
        return new Switch() {
            @Override
            public String id() {
                return s.id();
            }

            @Override
            public boolean hold(boolean energised, long validForMs) {
                return how.hold(energised, validForMs);
            }
        };
    }

    private static Switch held(Switch s, long ms) {
        return bent(s, (on, forMs) -> s.hold(on, ms));
    }

    private static Switch inverted(Switch s) {
        return bent(s, (on, forMs) -> s.hold(!on, forMs));
    }

    private static Switch stuck(Switch s) {
        return bent(s, (on, forMs) -> s.hold(true, forMs));
    }

    /** Goes on with what could be read as if it were all. */
    private static final class Trusting extends Through {
        Trusting(Store real) {
            super(real);
        }

        @Override
        public Kept load() throws StoreException {
            Kept all = real.load();
            return new Kept(all.facts(), all.checkpoint(), List.of());
        }
    }

    /** A record that does in all as the real one. */
    private static class Through implements Store {
        final Store real;

        Through(Store real) {
            this.real = real;
        }

        @Override
        public Kept load() throws StoreException {
            return real.load();
        }

        @Override
        public void append(List<Fact> facts) throws StoreException {
            real.append(facts);
        }

        @Override
        public void minute(Checkpoint checkpoint) throws StoreException {
            real.minute(checkpoint);
        }

        @Override
        public void history(Minute minute) throws StoreException {
            real.history(minute);
        }

        @Override
        public void close() {
            real.close();
        }
    }

    /** Says that it has kept what it will only keep with the next. */
    private static final class EarlyStore extends Through {
        private final List<Fact> held = new ArrayList<>();

        EarlyStore(Store real) {
            super(real);
        }

        @Override
        public void append(List<Fact> facts) throws StoreException {
            real.append(List.copyOf(held));
            held.clear();
            held.addAll(facts);
        }
    }

    /** Swallows what the disk says. */
    private static final class Careless extends Through {
        private final List<StoreException> swallowed = new ArrayList<>();

        Careless(Store real) {
            super(real);
        }

        @Override
        public void append(List<Fact> facts) {
            try {
                real.append(facts);
            } catch (StoreException e) {
                swallowed.add(e);
            }
        }

        @Override
        public void minute(Checkpoint checkpoint) {
            try {
                real.minute(checkpoint);
            } catch (StoreException e) {
                swallowed.add(e);
            }
        }
    }

    /** Reads back all but some. */
    private static final class Forgetful extends Through {
        private final Predicate<Fact> lost;

        Forgetful(Store real, Predicate<Fact> lost) {
            super(real);
            this.lost = lost;
        }

        @Override
        public Kept load() throws StoreException {
            Kept all = real.load();
            return new Kept(all.facts().stream().filter(lost.negate()).toList(), all.checkpoint(),
                    all.damages());
        }
    }
}
