package org.conetender.sim.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.core.Ledger;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.alarm.Message;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.guard.AirFailed;
import org.conetender.core.guard.BackSiphon;
import org.conetender.core.guard.CookedBatch;
import org.conetender.core.guard.DamagedRecord;
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
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.LevelTrack;
import org.conetender.core.judge.Water;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.conetender.sim.search.Move.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The search finds nothing in the daemon, and whatever is planted in it. */
class SearchTest {

    /**
     * So many states are enough to meet each planted bug; the longest way to one is a few moves off a batch.
     */
    private static final int ENOUGH = 12_000;

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
        assertThat(states).isGreaterThan(80_000);
    }

    @Test
    void theSameBoundsGiveTheSameStates() {
        Bounds b = new Bounds(500, Set.of(Trouble.RECORD_REFUSES), 1, false);
        Daemon d = Daemon.real(Fitted.BARE.settings(), Guards.ALL);
        assertThat(searched(Fitted.BARE, d, b)).isEqualTo(searched(Fitted.BARE, d, b));
    }

    @Test
    void aStateThatManyPassesMeetIsCountedOnce() throws Exception {
        Plan plan = new Plan(Fitted.BARE, new Bounds(300, Set.of(), 0, false));
        Plan other = new Plan(Fitted.SIPHONING, plan.bounds());
        long one = Passes.run(List.of(plan), 1, _ -> { }).distinct();
        assertThat(Passes.run(List.of(plan, plan), 2, _ -> { }).distinct()).isEqualTo(one)
                .isBetween(300L, 400L);
        assertThat(Passes.run(List.of(plan, other), 2, _ -> { }).distinct()).isGreaterThan(one + 299);
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
                bent(s, (_, image) -> image, (_, _, r) -> r, SearchTest::noTrips),
                "lock-lost"),
        A_LOCK_THAT_GOES_BY_ITSELF(Fitted.BARE, HEATED_TOO_FAR, s -> deciding(s, SearchTest::unlocked),
                "lock-gone", "heat-locked"),
        AN_ANSWER_BEFORE_ITS_COMMIT(Fitted.BARE, Set.of(), s -> deciding(s, SearchTest::answered),
                "answer-early"),
        OUTPUTS_THAT_ARE_MIXED_UP(Fitted.BARE, Set.of(), s ->
                deciding(s, SearchTest::crossed), "air-stage",
                "air-unwritten", "lamps-hands"),
        AN_ALARM_THAT_ENDS_BEFORE_IT_IS_SEEN(Fitted.SIPHONING, Set.of(), alarms(SearchTest::unlatched),
                "alarm-gone"),
        AN_OFF_DELAY_THAT_IS_FORGOTTEN(Fitted.BARE, Set.of(Trouble.PROBE_GONE),
                alarms(SearchTest::fluttering), "alarm-gone"),
        NOBODY_IS_CALLED_AGAIN(Fitted.BARE, Set.of(Trouble.PROBE_GONE), alarms(SearchTest::toldOnce),
                "uncalled"),
        PEOPLE_ARE_CALLED_ALL_THE_TIME(Fitted.BARE, Set.of(Trouble.PROBE_GONE), alarms(SearchTest::nagging),
                "told-often"),
        A_PROBE_THAT_SAYS_NO_FIGURE_IS_BELIEVED(Fitted.BARE, Set.of(Trouble.PROBE_GONE), s ->
                misread(s, SearchTest::lastFigure), "heat-blind", "untold"),
        A_STALE_READING_IS_BELIEVED(Fitted.BARE, Set.of(Trouble.PROBE_LATE), s ->
                misread(s, SearchTest::fresh), "heat-blind", "untold"),
        A_DAMAGED_RECORD_THAT_LOCKS_NOTHING(Fitted.BARE, Set.of(Trouble.RECORD_DAMAGED),
                without(DamagedRecord.class), "heat-locked", "air-locked");

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

    /** What a daemon makes of what the real one decided. */
    private interface Decides {
        Result result(State before, Image image, Result r);
    }

    /** The daemon, but for what it is shown, what it decides, or what it reads when it begins. */
    private static Daemon bent(Settings s, BiFunction<State, Image, Image> shown, Decides decides,
                               UnaryOperator<List<Fact>> reads) {
        Daemon real = Daemon.real(s, Guards.ALL);
        return new Daemon() {
            @Override
            public Result step(State before, Image image) {
                return decides.result(before, image, real.step(before, shown.apply(before, image)));
            }

            @Override
            public State begin(List<Fact> facts, Optional<Checkpoint> checkpoint, Moment now) {
                return real.begin(reads.apply(facts), checkpoint, now);
            }
        };
    }

    private static Daemon deciding(Settings s, Decides decides) {
        return bent(s, (_, image) -> image, decides, f -> f);
    }

    /** The daemon, but for what its list of alarms has become at the end of each tick. */
    private static Function<Settings, Daemon> alarms(BiFunction<Alarms, Moment, Alarms> bent) {
        return s -> deciding(s, (_, image, r) -> with(r, bent.apply(r.next().live().alarms(), image.now()),
                r.words().messages()));
    }

    private static Result with(Result r, Alarms alarms, List<Message> messages) {
        State.Live l = r.next().live();
        State next = new State(r.next().ledger(), new State.Live(l.begun(), l.cones(), alarms, l.timers(),
                l.beat(), l.diary(), l.day()));
        return new Result(next, r.outputs(), r.record(), new Result.Words(r.words().replies(), messages,
                r.words().notes()), r.findings());
    }

    private static Alarms standing(Alarms a, UnaryOperator<Stream<Alarm>> left) {
        return new Alarms(left.apply(a.standing().values().stream())
                .collect(Collectors.toMap(Alarm::key, x -> x, (x, _) -> x, TreeMap::new)), a.seen(),
                a.shelves(), a.calls());
    }

    private static Alarm told(Alarm a, Alarm.Told told) {
        return new Alarm(a.cone(), a.kind(), a.what(), a.latest(), a.held(), a.course(), told, a.aside());
    }

    /** What stands until it is seen ends with its cause, like all else. */
    private static Alarms unlatched(Alarms alarms, Moment now) {
        return standing(alarms, all -> all.filter(a -> a.goneMs(now.monoMs()) < Units.MINUTE_MS));
    }

    private static Alarms fluttering(Alarms alarms, Moment now) {
        return standing(alarms, all -> all.filter(a -> a.course().goneAtMs().isEmpty()
                || a.kind().standsUntilSeen()));
    }

    /** What was acknowledged once counts as seen whenever it comes again. */
    private static Alarms silenced(Alarms alarms, Moment now) {
        List<Alarm> seen = Stream.concat(alarms.seen().alarms().stream(), alarms.raised().stream()
                .filter(a -> a.acknowledged() && alarms.seen().alarms().stream()
                .noneMatch(x -> x.key().equals(a.key())))).toList();
        return new Alarms(alarms.standing(), new Alarms.Seen(seen, Long.MAX_VALUE / 2), alarms.shelves(),
                alarms.calls());
    }

    /** What has followed from another follows from it for ever, and nobody is called of it. */
    private static Result swallowed(State before, Image image, Result r) {
        Map<String, Alarm> was = before.live().alarms().standing();
        Alarms is = r.next().live().alarms();
        Set<String> freed = is.standing().values().stream().filter(a -> !a.follows()
                && was.containsKey(a.key()) && was.get(a.key()).follows()).map(Alarm::key)
                .collect(Collectors.toSet());
        return with(r, standing(is, all -> all.map(a -> freed.contains(a.key()) ? was.get(a.key()) : a)),
                r.words().messages().stream().filter(m -> m.alarms().stream()
                        .noneMatch(a -> freed.contains(a.key()))).toList());
    }

    private static Alarms toldOnce(Alarms alarms, Moment now) {
        return standing(alarms, all -> all.map(a -> a.told().times() == 0 ? a : told(a, new Alarm.Told(
                a.told().times(), a.told().firstMs(), now.monoMs(), a.told().acknowledgedAtMs(),
                a.told().with(), a.told().way(), false, false))));
    }

    /** It forgets that it has just called. */
    private static Alarms nagging(Alarms alarms, Moment now) {
        return standing(alarms, all -> all.map(a -> a.told().times() == 0 ? a : told(a, new Alarm.Told(
                a.told().times(), a.told().firstMs(), now.monoMs() - Units.HOUR_MS,
                a.told().acknowledgedAtMs(), a.told().with(), a.told().way(), false, false))));
    }

    /** Who answers one is taken to have answered all. */
    private static Alarms answeredForAll(Alarms alarms, Moment now) {
        boolean any = alarms.raised().stream().anyMatch(Alarm::acknowledged);
        return !any ? alarms : standing(alarms, all -> all.map(a -> a.acknowledged() ? a
                : told(a, new Alarm.Told(a.told().times(), a.told().firstMs(), a.told().atMs(),
                        OptionalLong.of(now.monoMs()), a.told().with(), a.told().way(), false, false))));
    }

    /** The daemon, whose judgement takes an answer of a probe for another. */
    private static Daemon misread(Settings s, BiFunction<Water, ProbeSample, ProbeSample> takes) {
        return bent(s, (before, image) -> {
            Water w = before.live().cones().get(Fitted.CONE).judged().water();
            return new Image(image.now(), image.probes().stream().map(p -> takes.apply(w, p)).toList(),
                    image.contacts(), image.inbox(), image.pipes());
        }, (_, _, r) -> r, f -> f);
    }

    /** Where there is no figure, the last one that there was. */
    private static ProbeSample lastFigure(Water w, ProbeSample p) {
        return p.reading() instanceof Reading.Value || Double.isNaN(w.lastC()) ? p
                : new ProbeSample(p.probe(), new Reading.Value(w.lastC()), p.ageMs());
    }

    private static ProbeSample fresh(Water w, ProbeSample p) {
        return new ProbeSample(p.probe(), p.reading(), 0);
    }

    private static List<Fact> noTrips(List<Fact> facts) {
        return facts.stream().filter(f -> !(f.change() instanceof Change.Tripped)).toList();
    }

    /** As soon as a trip is recorded it is forgotten. */
    private static Result unlocked(State before, Image image, Result r) {
        Ledger l = r.next().ledger();
        if (!l.pending().isEmpty()) {
            return r;
        }
        Book b = l.book();
        Map<String, ConeBook> cones = new TreeMap<>(b.cones());
        cones.replaceAll((_, c) -> new ConeBook(c.before(), c.facts(), c.batch(), c.usual(), List.of(),
                c.alarms(), c.bridges(), c.heater()));
        Book without = new Book(cones, b.recentIds(), b.away(), b.boots(), b.lives(), b.lots());
        return new Result(new State(Ledger.of(without, l.nextSeq()), r.next().live()), r.outputs(),
                r.record(),
                r.words(), r.findings());
    }

    private static Result answered(State before, Image image, Result r) {
        List<Result.Reply> all = new ArrayList<>(r.words().replies());
        image.inbox().requests().stream().filter(q -> all.stream().noneMatch(x -> x.request().equals(q)))
                .forEach(q -> all.add(new Result.Reply(q, true, "It is done.")));
        return new Result(r.next(), r.outputs(), r.record(), new Result.Words(all, r.words().messages(),
                r.words().notes()), r.findings());
    }

    /** The lamp's output and the pump's are mixed up. */
    private static Result crossed(State before, Image image, Result r) {
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
            return new View(v.settings(), v.cone(), v.book(), v.coneBook(), v.judged(),
                    new View.Scene(s.image(), s.begun(),
                    s.wants(), s.site(), s.beside(), twice, s.unwritten()));
        });
    }

    private static List<Guard> upsideDown() {
        return shown(new DryHeater(), v -> {
            ConeJudgement j = v.judged();
            LevelTrack other = new LevelTrack(j.level().says() == Level.CLOSED ? Level.OPEN : Level.CLOSED,
                    j.level().closedForMs());
            return new View(v.settings(), v.cone(), v.book(), v.coneBook(),
                    new ConeJudgement(j.water(), j.roomC(), other,
                    j.heat(), j.thermal(), j.air(), j.motion(), j.tried()), v.scene());
        });
    }

    /** Bugs so many moves off a calm batch that a course leads there, and the rule that must see each. */
    private enum Deep {
        AN_ACKNOWLEDGEMENT_FOR_ALL_TIME(Fitted.BARE, alarms(SearchTest::silenced), "seen-by-nobody",
                "say 'started'; +; begins: probe gone; ...; ...; ...; acknowledge 'probe'; +;"
                + " ends: probe gone; ...; ...; begins: probe gone; ...; ..."),
        ONE_ANSWER_FOR_ALL(Fitted.SIPHONING, alarms(SearchTest::answeredForAll), "seen-by-nobody",
                "say 'started'; +; say 'first-seen'; +; begins: probe gone; ...; ...; ...; begins: no air;"
                + " ...; ...; ...; acknowledge 'probe'; +; ...; ..."),
        WHAT_FOLLOWED_NEVER_COMES_BACK(Fitted.SIPHONING, s -> deciding(s, SearchTest::swallowed), "uncalled",
                "say 'started'; +; say 'first-seen'; +; begins: no air; ...; ...; ...; ...; ...; ...; ...;"
                + " ends: no air; ...; ...; ...; ...; ...; ...; ...");

        private final Fitted fitted;
        private final Function<Settings, Daemon> daemon;
        private final String rule;
        private final List<String> course;

        /** @param course its moves; {@code +} for a second, {@code ...} for time until something changes */
        Deep(Fitted fitted, Function<Settings, Daemon> daemon, String rule, String course) {
            this.fitted = fitted;
            this.daemon = daemon;
            this.rule = rule;
            this.course = Stream.of(course.split("; ")).map(m -> m.equals("+") ? new Move.Waits(true).words()
                    : m.equals("...") ? new Move.Waits(false).words() : m).toList();
        }

        private List<String> broken(Function<Settings, Daemon> made) {
            Settings s = fitted.settings();
            return new Search(s, made.apply(s), new Bounds(1, Set.of(), 0, false), _ -> { }).replay(course);
        }
    }

    /** While no record can keep it, an acknowledgement silences all the same, and is answered with a no. */
    @ParameterizedTest
    @ValueSource(strings = {"begins: record refuses", "begins: record silent"})
    void whatIsSeenWhileTheRecordFailsCountsAsSeen(String trouble) {
        Settings s = Fitted.BARE.settings();
        List<String> course = List.of("say 'started'", new Move.Waits(true).words(), trouble,
                new Move.Waits(false).words(), new Move.Waits(false).words(), "acknowledge 'record'",
                new Move.Waits(true).words());
        assertThat(new Search(s, Daemon.real(s, Guards.ALL), new Bounds(1, Set.of(), 0, false), _ -> { })
                .replay(course)).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Deep.class)
    void aBugThatLiesDeepIsSeenOnItsCourseAndOnlyByItsRule(Deep bug) {
        assertThat(bug.broken(s -> Daemon.real(s, Guards.ALL))).as("without the bug").isEmpty();
        assertThat(bug.broken(bug.daemon)).isNotEmpty().allMatch(w -> w.startsWith(bug.rule + ":"));
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
