package org.conetender.sim.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.conetender.core.Ledger;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.guard.AirFailed;
import org.conetender.core.guard.BackSiphon;
import org.conetender.core.guard.CookedBatch;
import org.conetender.core.guard.DryHeater;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.Handled;
import org.conetender.core.guard.ShutValve;
import org.conetender.core.guard.StillWater;
import org.conetender.core.guard.StuckHeater;
import org.conetender.core.guard.Suffocation;
import org.conetender.core.guard.SwitchesTried;
import org.conetender.core.guard.Unwritten;
import org.conetender.core.guard.View;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Image;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.sim.search.Move.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The search finds nothing in the daemon, and whatever is planted in it. */
class SearchTest {

    /**
     * So many states are enough to meet each planted bug; the longest way to one is a few moves off a batch.
     */
    private static final int ENOUGH = 6_000;

    /** Cold water poured in is heated; then it is hot at once. */
    private static final Set<Trouble> HEATED_TOO_FAR = Set.of(Trouble.COLD_WATER, Trouble.HOT_ROOM);

    private static Search.Outcome searched(Fitted fitted, Daemon daemon, Bounds bounds) {
        return new Search(fitted.settings(), daemon, bounds, _ -> { }).run(1);
    }

    @Test
    @Timeout(1200)
    void nothingIsFoundInTheDaemonOnAnyShortCourse() {
        long states = 0;
        for (Plan p : Plan.passes(Plan.REDUCED)) {
            Settings s = p.fitted().settings();
            Search.Outcome o = searched(p.fitted(), Daemon.real(s, Guards.ALL), p.bounds());
            assertThat(o.findings()).as(p.fitted() + ", " + p.bounds().words()).isEmpty();
            assertThat(o.states()).as(p.fitted() + ", " + p.bounds().words())
                    .isGreaterThanOrEqualTo(p.bounds().states());
            states += o.states();
        }
        assertThat(states).isGreaterThan(70_000);
    }

    @Test
    void theSameBoundsGiveTheSameStates() {
        Bounds b = new Bounds(500, Set.of(Trouble.RECORD_REFUSES), 1, false);
        Daemon d = Daemon.real(Fitted.BARE.settings(), Guards.ALL);
        assertThat(searched(Fitted.BARE, d, b)).isEqualTo(searched(Fitted.BARE, d, b));
    }

    /** What is wrong with a daemon, where it must show, and by which rules it may be found. */
    private enum Planted {
        NO_SIPHON_GUARD(Fitted.SIPHONING, without(BackSiphon.class), "siphon"),
        NO_CAP(Fitted.SIPHONING, without(Suffocation.class), "air-cap", "air-restart"),
        A_CAP_OF_TWICE_THE_TIME(Fitted.SIPHONING, twiceTheCap(), "air-cap"),
        A_LEVEL_CONTACT_READ_UPSIDE_DOWN(Fitted.SIPHONING, Set.of(Trouble.LEVEL_LIES), upsideDown(),
                "heat-dry",
                "untold"),
        HEAT_WITH_HANDS_IN(Fitted.BARE, without(Handled.class), "heat-hands", "lamps-hands", "air-hands"),
        POWER_BEFORE_IT_IS_RECORDED(Fitted.BARE, Set.of(Trouble.RECORD_SILENT), without(Unwritten.class),
                "air-unwritten", "heat-unwritten"),
        HEAT_IN_STILL_WATER(Fitted.SIPHONING, Set.of(Trouble.NO_AIR), without(StillWater.class),
                "heat-still"),
        NOBODY_IS_TOLD_OF_AIR(Fitted.SIPHONING, Set.of(Trouble.NO_AIR), without(AirFailed.class), "untold"),
        NOBODY_IS_TOLD_OF_A_SHUT_VALVE(Fitted.SIPHONING, Set.of(), without(ShutValve.class), "untold"),
        A_STUCK_HEATER_IS_NOT_SEEN(Fitted.BARE, Set.of(Trouble.HEAT_UNSET), without(StuckHeater.class),
                "heat-stuck", "untold"),
        SWITCHES_ARE_NOT_TRIED(Fitted.SIPHONING, without(SwitchesTried.class), "heat-untried"),
        HEAT_IN_HOT_WATER(Fitted.BARE, Set.of(Trouble.HOT_ROOM), without(CookedBatch.class), "lamps-hot",
                "heat-hot"),
        A_LOCK_THAT_IS_LOST_AT_A_RESTART(Fitted.BARE, HEATED_TOO_FAR, s ->
                bent(s, (_, r) -> r, SearchTest::noTrips),
                "lock-lost"),
        A_LOCK_THAT_GOES_BY_ITSELF(Fitted.BARE, HEATED_TOO_FAR, s -> bent(s, SearchTest::unlocked, f -> f),
                "lock-gone", "heat-locked"),
        AN_ANSWER_BEFORE_ITS_COMMIT(Fitted.BARE, Set.of(), s -> bent(s, SearchTest::answered, f -> f),
                "answer-early"),
        OUTPUTS_THAT_ARE_MIXED_UP(Fitted.BARE, Set.of(), s ->
                bent(s, SearchTest::crossed, f -> f), "air-stage",
                "air-unwritten", "lamps-hands");

        private final Fitted fitted;
        private final Set<Trouble> troubles;
        private final Function<Settings, Daemon> daemon;
        private final Set<String> rules;

        Planted(Fitted fitted, List<Guard> guards, String... rules) {
            this(fitted, Set.of(), guards, rules);
        }

        Planted(Fitted fitted, Set<Trouble> troubles, List<Guard> guards, String... rules) {
            this(fitted, troubles, s -> Daemon.real(s, guards), rules);
        }

        Planted(Fitted fitted, Set<Trouble> troubles, Function<Settings, Daemon> daemon, String... rules) {
            this.fitted = fitted;
            this.troubles = troubles;
            this.daemon = daemon;
            this.rules = Set.of(rules);
        }
    }

    /** The daemon, but for what it decides, or what it reads of its record when it begins. */
    private static Daemon bent(Settings s, BiFunction<Image, Result, Result> decides,
                               UnaryOperator<List<Fact>> reads) {
        Daemon real = Daemon.real(s, Guards.ALL);
        return new Daemon() {
            @Override
            public Result step(State before, Image image) {
                return decides.apply(image, real.step(before, image));
            }

            @Override
            public State begin(List<Fact> facts, Optional<Checkpoint> checkpoint, Moment now) {
                return real.begin(reads.apply(facts), checkpoint, now);
            }
        };
    }

    private static List<Fact> noTrips(List<Fact> facts) {
        return facts.stream().filter(f -> !(f.change() instanceof Change.Tripped)).toList();
    }

    /** As soon as a trip is recorded it is forgotten. */
    private static Result unlocked(Image image, Result r) {
        Ledger l = r.next().ledger();
        if (!l.pending().isEmpty()) {
            return r;
        }
        Book b = l.book();
        Map<String, ConeBook> cones = new TreeMap<>(b.cones());
        cones.replaceAll((_, c) -> new ConeBook(c.base(), c.facts(), c.batch(), c.usual(), List.of(),
                c.alarms(), c.bridges(), c.heater()));
        Book without = new Book(cones, b.recentIds(), b.away(), b.boots(), b.lives(), b.lots());
        return new Result(new State(Ledger.of(without, l.nextSeq()), r.next().live()), r.outputs(),
                r.record(),
                r.words(), r.findings());
    }

    private static Result answered(Image image, Result r) {
        List<Result.Reply> all = new ArrayList<>(r.words().replies());
        image.inbox().requests().stream().filter(q -> all.stream().noneMatch(x -> x.request().equals(q)))
                .forEach(q -> all.add(new Result.Reply(q, true, "It is done.")));
        return new Result(r.next(), r.outputs(), r.record(), new Result.Words(all, r.words().messages(),
                r.words().notes()), r.findings());
    }

    /** The lamp's output and the pump's are mixed up. */
    private static Result crossed(Image image, Result r) {
        Map<String, Boolean> out = new TreeMap<>(r.outputs());
        out.put("a.air-pause", r.outputs().get("a.trigger"));
        out.put("a.trigger", r.outputs().get("a.air-pause"));
        return new Result(r.next(), out, r.record(), r.words(), r.findings());
    }

    private static List<Guard> without(Class<? extends Guard> guard) {
        return Guards.ALL.stream().filter(g -> !guard.isInstance(g)).toList();
    }

    /** The same guards, one of which is shown something else. */
    private static List<Guard> shown(Guard real, UnaryOperator<View> as) {
        List<Guard> out = new ArrayList<>(without(real.getClass()));
        out.add(new Guard() {
            @Override
            public String id() {
                return real.id();
            }

            @Override
            public List<Finding> look(View v) {
                return real.look(as.apply(v));
            }
        });
        return out;
    }

    private static List<Guard> twiceTheCap() {
        return shown(new Suffocation(), v -> {
            View.Scene s = v.scene();
            View.Caps twice = new View.Caps(2 * s.caps().settledMs(), 2 * s.caps().drawingMs(), s.caps()
                    .waitMs());
            return new View(v.settings(), v.cone(), v.book(), v.judged(), new View.Scene(s.image(), s.begun(),
                    s.wants(), s.site(), s.beside(), twice, s.unwritten()));
        });
    }

    private static List<Guard> upsideDown() {
        return shown(new DryHeater(), v -> {
            ConeJudgement j = v.judged();
            Level other = j.level() == Level.CLOSED ? Level.OPEN : Level.CLOSED;
            return new View(v.settings(), v.cone(), v.book(), new ConeJudgement(j.water(), j.roomC(), other,
                    j.heat(), j.thermal(), j.air(), j.motion(), j.tried()), v.scene());
        });
    }

    @ParameterizedTest
    @EnumSource(Planted.class)
    void eachPlantedBugIsFoundAndItsCourseBreaksTheSameRuleAgain(Planted bug) {
        Settings settings = bug.fitted.settings();
        Bounds bounds = new Bounds(ENOUGH, bug.troubles, 1, false);
        Search.Outcome o = searched(bug.fitted, bug.daemon.apply(settings), bounds);
        assertThat(o.findings().keySet()).as("within %d states", o.states()).containsAnyElementsOf(bug.rules);
        o.findings().forEach((rule, f) -> assertThat(new Search(settings, bug.daemon.apply(settings), bounds,
                _ -> { }).replay(f.course())).as("%s on %s", rule, f.course()).contains(f.what()));
        o.findings().forEach((rule, f) -> assertThat(new Search(settings, Daemon.real(settings, Guards.ALL),
                bounds, _ -> { }).replay(f.course())).as("without the bug, on %s", f.course()).isEmpty());
    }
}
