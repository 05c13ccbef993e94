package org.conetender.sim.swarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.conetender.core.Ledger;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.alarm.Message;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Stage;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.Power;
import org.conetender.core.guard.StuckHeater;
import org.conetender.core.guard.View;
import org.conetender.core.image.Image;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.conetender.sim.Parts;
import org.conetender.sim.swarm.PlantedBugsTest.Bug;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Bugs by which the daemon's book, or what it makes of it, departs from what was said and what is: those that
 * a rule which asks that same book does not see. As in {@link PlantedBugsTest}.
 */
class PlantedReadingsTest {

    /** Nobody comes; what happens is in the story. */
    private static final String ALONE = "story larkmoor-plain nobody seed 5 hours ";
    /** A batch of cone {@code a} that hatches early and is separated. */
    private static final String SETTLED = "00:00:20 begin a\n01:00:00 say a first-seen\n"
            + "01:01:00 say a settle\n";

    static Stream<Bug> bugs() {
        return Stream.of(
                new Bug("a shut valve that the next filling does not open", book(
                        PlantedReadingsTest::valveStaysShut), Set.of("siphon"), ALONE + "2\n"
                        + "00:00:20 begin b\n00:20:00 valve b shut\n00:20:01 say b valve-shut\n"
                        + "00:30:00 say b drained\n00:31:00 say b cleaned\n00:40:00 valve b open\n"
                        + "00:40:01 say b started\n00:50:00 say b first-seen\n00:50:30 say b settle"),
                new Bug("hands that a move of the batch forgets", book((was, is) -> was.stage().word()
                        .equals(is.stage().word()) ? is : marked(is, is.marks().valveShut(),
                        is.marks().held(), Optional.empty())), Set.of("hands-in"), ALONE + "2\n"
                        + "00:00:20 begin a\n01:00:00 say a hands-in\n01:00:30 say a first-seen"),
                new Bug("a set-point that outlives its batch", book((was, is) -> is.number() > was.number()
                        ? marked(is, is.marks().valveShut(), was.marks().held(), is.marks().handsIn()) : is),
                        Set.of("aim-told"), ALONE + "5\n00:00:20 begin b\n00:30:00 set b water/setpoint 29\n"
                        + "01:00:00 say b drained\n01:01:00 say b cleaned\n01:02:00 say b started"),
                new Bug("hands that never leave the water", ticks(PlantedReadingsTest::handled),
                        Set.of("probe"), ALONE + "4\n00:00:20 begin c\n01:00:00 say c hands-in\n"
                        + "02:00:00 probe c 0 absent 7200s"),
                new Bug("water that counts as touched for ever", PlantedBugsTest.guard("hands-in",
                        g -> looks(g, (v, found) -> v.batch().marks().toppedUp().isPresent()
                        ? List.of(Finding.veto("hands-in", "planted", Power.HEAT, Power.CUT_OUT)) : found)),
                        Set.of("cold-told"), ALONE + "9\n00:00:20 begin c\n00:10:00 say c topped-up"),
                new Bug("a contact that says wet is believed, whatever was reported",
                        PlantedBugsTest.guard("dry", g -> looks(g, (v, found) -> found.stream()
                        .filter(f -> f.alarm().filter(AlarmKind.WET_CONTACT::equals).isEmpty()).toList())),
                        Set.of("wet-told"), ALONE + "2\n00:00:20 begin a\n"
                        + "00:20:00 contact a level stuck-closed 6000s\n00:30:00 say a drained"),
                new Bug("any acknowledgement releases", PlantedBugsTest.guard("welded", g -> looks(g,
                        (v, found) -> Stream.concat(found.stream(), found.stream()
                        .map(f -> f.alarm(AlarmKind.AIR_FAILED))).toList())), Set.of("latch"), ALONE + "5\n"
                        + "00:00:20 begin b\n03:00:00 switch b heat welded 3000s\n"
                        + "04:20:00 air b pump-stopped 900s\n04:25:00 set b hand/acknowledge air-failed"),
                new Bug("a second probe that is never compared", image(PlantedReadingsTest::asTheFirst),
                        Set.of("pair-told"), ALONE + "5\n00:00:20 begin a\n"
                        + "02:00:00 probe a 0 drifting 20000s"),
                new Bug("watts of a heater that nobody can switch off", PlantedBugsTest.guard("watts",
                        g -> shown(g, PlantedReadingsTest::allHome)), Set.of("watts-at-large"), AT_LARGE),
                new Bug("a crash loop that is forgotten after a while", PlantedBugsTest.guard("crash-loop",
                        g -> looks(g, (v, found) -> v.book().lives().lock().filter(l -> v.since(l.since())
                        .leastMs() > 20 * Units.MINUTE_MS).isPresent() ? List.of() : found)),
                        Set.of("crash-loop", "crash-loop-told"), ALONE + "2\n00:00:20 begin c\n"
                        + "00:30:00 kill now\n00:31:00 kill now\n00:32:00 kill now"));
    }

    /** A valve that is shut before a separation, and a board whose supply breaks down. */
    private static final String VALVE_ASIDE = ALONE + "3\n00:00:20 begin c\n01:00:00 say c first-seen\n"
            + "01:10:00 valve c shut\n01:10:01 say c valve-shut\n01:10:20 kill now\n01:11:00 kill now\n"
            + "01:11:40 kill now\n01:20:00 set c hand/acknowledge crash-loop";

    private static final String AT_LARGE = ALONE + "3\n00:00:20 begin a\n00:00:20 begin b\n00:00:20 begin c\n"
            + "00:00:30 site room-cold 9000s\n" + Stream.of("00:45:00", "00:55:00", "01:05:00", "01:15:00",
            "01:25:00", "01:35:00", "01:45:00", "01:55:00").map(t -> t + " switch a heat deaf 240s\n" + t
            + " switch a cut-out deaf 240s\n").reduce("", String::concat);

    static Stream<Bug> more() {
        return Stream.concat(hot(), dispatched());
    }

    private static Stream<Bug> hot() {
        return Stream.of(
                new Bug("hot water that counts only where its reading is believed", PlantedBugsTest.guard(
                        "too-hot", g -> looks(g, (v, found) -> v.water().known() ? found : List.of())),
                        Set.of("too-hot-told"), ALONE + "2\n00:00:20 begin b\n"
                        + "01:00:00 water b hot-poured 60s"));
    }

    private static Stream<Bug> dispatched() {
        return Stream.of(
                new Bug("refused facts that are never offered again", ticks((_, image, before, r) ->
                        new Result(r.next(), r.outputs(), new Result.Record(r.record().transactions().stream()
                        .filter(t -> t.getFirst().seq() >= before.ledger().nextSeq()).toList(),
                        r.record().minute()), r.words(), r.findings())), Set.of("unkept"), ALONE + "5\n"
                        + "00:00:20 begin b\n02:59:00 disk full 2400s\n03:00:00 switch b heat welded 1800s"),
                new Bug("nauplii that count only while they hatch", PlantedBugsTest.guard("air-failed",
                        g -> looks(g, (v, found) -> v.stage() instanceof Stage.Hatching ? found
                        : found.stream().map(f -> f.alarm().filter(k -> k == AlarmKind.AIR_FAILED_ANIMALS)
                        .map(_ -> f.alarm(AlarmKind.AIR_FAILED)).orElse(f)).toList())),
                        Set.of("air-failed-animals"), ALONE + "2\n" + SETTLED
                        + "01:30:00 air a pump-stopped 1200s"),
                new Bug("want of air that a restart silences", ticks(PlantedReadingsTest::silenced),
                        Set.of("silenced"), ALONE + "3\n00:00:20 begin a\n01:00:00 say a first-seen\n"
                        + "01:10:00 air a pump-stopped 9000s\n"
                        + "01:12:00 set a hand/acknowledge air-failed-animals\n01:20:00 kill now\n"
                        + "01:29:00 kill now\n01:42:00 kill now\n01:51:00 kill now"),
                new Bug("two silent probes of which nobody is told", PlantedBugsTest.guard("probe",
                        g -> looks(g, (v, found) -> v.cone().fittings().probes().water().size() < 2 ? found
                        : found.stream().filter(f -> f.alarm().filter(k -> k == AlarmKind.PROBE).isEmpty())
                        .toList())), Set.of("probe"), ALONE + "3\n00:00:20 begin a\n"
                        + "01:00:00 probe a 0 absent 7200s\n01:00:00 probe a 1 absent 7200s"),
                new Bug("a separation that goes on after a restart", PlantedBugsTest.guard("suffocation",
                        g -> shown(g, PlantedReadingsTest::longAlive)), Set.of("air-restart"), ALONE + "2\n"
                        + SETTLED + "01:04:00 kill now"),
                new Bug("a shut valve that matters to nauplii only", PlantedBugsTest.guard("shut-valve",
                        g -> looks(g, (v, found) -> v.stage().hasAnimals() ? found : List.of())),
                        Set.of("shut-valve"), ALONE + "2\n00:00:20 begin b\n01:00:00 valve b shut\n"
                        + "01:00:00 say b valve-shut"),
                new Bug("a damaged book that is taken at its word", PlantedBugsTest.guard("suffocation",
                        g -> looks(g, (v, found) -> found.stream().filter(f -> !f.what().startsWith(
                        "nothing was reported of it since")).toList())), Set.of("air-off-unheard"),
                        ALONE.replace("plain", "mixed") + "2\n00:00:20 begin c\n01:00:00 damage 0\n"
                        + "01:10:00 set c hand/acknowledge record-damaged"),
                new Bug("a shelf from which nothing comes back", ticks(PlantedReadingsTest::forgotten),
                        Set.of("called-back"), ALONE + "4\n00:00:20 begin c\n"
                        + "01:00:00 probe c 0 absent 14000s\n"
                        + "02:25:00 set c hand/shelve {\"alarm\":\"probe\",\"hours\":0.5}"),
                new Bug("a drawing that is announced by the house's cap", PlantedBugsTest.guard(
                        "air-while-drawing", g -> shown(g, PlantedReadingsTest::houseCap)),
                        Set.of("drawing-due"), ALONE.replace("plain", "mixed") + "21\n00:00:20 begin c\n"
                        + "01:00:00 set c water/setpoint 28\n20:00:00 say c settle\n"
                        + "20:00:20 say c drawing"),
                new Bug("a separation that is never refused for want of air", PlantedBugsTest.serves(
                        "suffocation"), Set.of("lack-settled"), ALONE + "2\n00:00:20 begin b\n"
                        + "01:00:00 say b first-seen\n01:01:00 valve b shut\n01:01:00 say b valve-shut\n"
                        + "01:12:00 say b settle"),
                new Bug("nobody is called a third time", ticks(PlantedReadingsTest::calledTwice),
                        Set.of("called-again"), ALONE + "6\n00:00:20 begin c\n"
                        + "01:00:00 probe c 0 absent 40000s"),
                new Bug("whoever acknowledges one lock has seen all that its message named",
                        ticks(PlantedReadingsTest::seenWithAnother), Set.of("lock-told-again"), ALONE + "7\n"
                        + "00:00:20 begin c\n00:00:30 switch c heat open 30000s\n"
                        + "01:30:00 probe c 0 absent 3000s\n01:40:00 set c hand/acknowledge probe"),
                new Bug("a cut that is held against the longest cap", PlantedBugsTest.guard("power-cut",
                        g -> shown(g, PlantedReadingsTest::longCaps)), Set.of("power-cut"), ALONE + "2\n"
                        + "00:00:20 begin a\n01:00:00 say a first-seen\n"
                        + "01:10:00 site power-cut 700s"));
    }

    static Stream<Bug> setAside() {
        return Stream.of(
                new Bug("a shut valve that is set aside in silence", PlantedBugsTest.guard("crash-loop",
                        g -> looks(g, (_, found) -> found.stream().filter(f -> f.alarm()
                        .filter(AlarmKind.AIR_SHUT_IN::equals).isEmpty()).toList())), Set.of("valve-aside"),
                        VALVE_ASIDE),
                new Bug("a shut valve that is not asked for again", PlantedBugsTest.guard("crash-loop",
                        g -> new PlantedBugsTest.Bent(g) {
                            @Override
                            public boolean causeGone(View v) {
                                return true;
                            }
                        }), Set.of("valve-aside-heat"), VALVE_ASIDE));
    }

    @ParameterizedTest
    @MethodSource({"bugs", "more", "setAside"})
    void itIsSeenByARuleOfItsOwnDanger(Bug bug) {
        Tale tale = Tale.parse(bug.story());
        assertThat(Play.of(tale, Parts.WHOLE).broken()).as("without the bug").isEmpty();
        assertThat(Play.of(tale, bug.parts()).broken()).as("with it").isNotEmpty()
                .allMatch(v -> bug.rules().contains(v.rule()));
    }

    /** What a tick makes of what the real one decided. */
    private interface Bend {
        Result after(BiFunction<State, Image, Result> real, Image image, State before, Result r);
    }

    private static Parts parts(UnaryOperator<BiFunction<State, Image, Result>> tick) {
        return new Parts(Guards.ALL, UnaryOperator.identity(), UnaryOperator.identity(), tick);
    }

    private static Parts ticks(Bend bend) {
        return parts(real -> (before, image) -> bend.after(real, image, before, real.apply(before, image)));
    }

    private static Parts image(UnaryOperator<Image> shown) {
        return parts(real -> (before, image) -> real.apply(before, shown.apply(image)));
    }

    /** What becomes of each cone's batch, once nothing is on its way to the record. */
    private static Parts book(BiFunction<Batch, Batch, Batch> bend) {
        return ticks((_, _, before, r) -> amended(r, (id, is) -> bend.apply(before.book().cone(id).batch(),
                is)));
    }

    private static Result amended(Result r, BiFunction<String, Batch, Batch> bend) {
        Ledger l = r.next().ledger();
        if (!l.pending().isEmpty()) {
            return r;
        }
        Book b = l.book();
        Map<String, ConeBook> cones = new TreeMap<>(b.cones());
        cones.replaceAll((id, c) -> new ConeBook(c.before(), c.facts(), bend.apply(id, c.batch()), c.usual(),
                c.latches(), c.alarms(), c.bridges(), c.heater()));
        Book next = new Book(cones, b.recentIds(), b.away(), b.boots(), b.lives(), b.lots());
        return new Result(new State(Ledger.of(next, l.nextSeq()), r.next().live()), r.outputs(), r.record(),
                r.words(), r.findings());
    }

    private static Batch marked(Batch b, boolean valveShut, Batch.Held held, Optional<Moment> handsIn) {
        Batch.Marks m = b.marks();
        return new Batch(b.number(), b.stage(), b.fill(), b.stock(), new Batch.Marks(m.salted(), valveShut,
                m.harvests(), held, handsIn, m.toppedUp(), m.words()));
    }

    private static Batch valveStaysShut(Batch was, Batch is) {
        return is.number() > was.number() ? marked(is, was.marks().valveShut(), is.marks().held(),
                is.marks().handsIn()) : is;
    }

    private static Result handled(BiFunction<State, Image, Result> real, Image image, State before,
                                  Result r) {
        return amended(r, (_, is) -> marked(is, is.marks().valveShut(), is.marks().held(),
                is.marks().handsIn().map(_ -> image.now())));
    }

    private static Image asTheFirst(Image image) {
        Optional<ProbeSample> first = image.probes().stream()
                .filter(p -> p.probe().equals("28-00000a000001")).findFirst();
        return new Image(image.now(), image.probes().stream().map(p -> p.probe().equals("28-00000a00000a")
                && p.reading() instanceof Reading.Value ? new ProbeSample(p.probe(), first.get().reading(),
                first.get().ageMs()) : p).toList(), image.contacts(), image.inbox(), image.pipes());
    }

    /** What somebody acknowledged before the restart counts as seen just now. */
    private static Result silenced(BiFunction<State, Image, Result> real, Image image, State before,
                                   Result r) {
        Moment now = image.now();
        State.Live l = before.live();
        if (l.timers().last().isPresent()) {
            return r;
        }
        List<Alarm> seen = before.book().cones().entrySet().stream().filter(e -> e.getValue().acknowledged()
                .contains(AlarmKind.AIR_FAILED_ANIMALS.id())).map(e -> new Alarm(e.getKey(),
                AlarmKind.AIR_FAILED_ANIMALS, "", "", Alarm.Held.BY_CAUSE, new Alarm.Course(now,
                OptionalLong.empty(), true), new Alarm.Told(1, OptionalLong.empty(), 0, OptionalLong.of(
                now.monoMs()), List.of(), Alarm.Way.ALONE, false, false), new Alarm.Aside(Optional.empty(),
                OptionalLong.empty()))).toList();
        Alarms with = new Alarms(l.alarms().standing(), new Alarms.Seen(seen, l.alarms().seen().sinceMs()),
                l.alarms().shelves(), l.alarms().calls());
        return real.apply(new State(before.ledger(), new State.Live(l.begun(), l.cones(), with, l.timers(),
                l.beat(), l.diary(), l.day())), image);
    }

    private static Guard looks(Guard real, BiFunction<View, List<Finding>, List<Finding>> says) {
        return new PlantedBugsTest.Bent(real) {
            @Override
            public List<Finding> look(View v) {
                return says.apply(v, real.look(v));
            }
        };
    }

    private static Guard shown(Guard real, UnaryOperator<View> as) {
        return new PlantedBugsTest.Bent(real) {
            @Override
            public List<Finding> look(View v) {
                return real.look(as.apply(v));
            }
        };
    }

    /** What comes back from the shelf counts as told. */
    private static Result forgotten(BiFunction<State, Image, Result> real, Image image, State before,
                                    Result r) {
        Map<String, Alarm> was = before.live().alarms().standing();
        return told(r, a -> was.containsKey(a.key()) && was.get(a.key()).shelved() && !a.shelved()
                ? was.get(a.key()).told() : a.told());
    }

    /** Whoever was called twice and did not answer is let alone. */
    private static Result calledTwice(BiFunction<State, Image, Result> real, Image image, State before,
                                      Result r) {
        return told(r, a -> a.told().times() < 2 || a.acknowledged() ? a.told() : new Alarm.Told(
                a.told().times(), a.told().firstMs(), image.now().monoMs(), a.told().acknowledgedAtMs(),
                a.told().with(), a.told().way(), a.told().mended(), a.told().onceMore()));
    }

    /** What the answer to another's acknowledgement names counts as acknowledged with it. */
    private static Result seenWithAnother(BiFunction<State, Image, Result> real, Image image, State before,
                                          Result r) {
        long now = image.now().monoMs();
        return told(r, a -> a.held() != Alarm.Held.ONLY_BY_LATCH || a.told().way() != Alarm.Way.NAMED
                || !a.acknowledged() && (a.told().atMs() != now || !r.words().messages().isEmpty()) ? a.told()
                : new Alarm.Told(1, OptionalLong.empty(), now, OptionalLong.of(now), List.of(),
                Alarm.Way.NAMED, a.told().mended(), a.told().onceMore()));
    }

    /** With that told of each alarm, and no message of those of which that was not so. */
    private static Result told(Result r, Function<Alarm, Alarm.Told> of) {
        Alarms is = r.next().live().alarms();
        Map<String, Alarm> left = new TreeMap<>(is.standing());
        left.replaceAll((_, a) -> new Alarm(a.cone(), a.kind(), a.what(), a.latest(), a.held(), a.course(),
                of.apply(a), a.aside()));
        State.Live l = r.next().live();
        List<Message> messages = r.words().messages().stream().filter(m -> m.alarms().stream()
                .allMatch(a -> left.get(a.key()).told().atMs() == a.told().atMs())).toList();
        return new Result(new State(r.next().ledger(), new State.Live(l.begun(), l.cones(), new Alarms(left,
                is.seen(), is.shelves(), is.calls()), l.timers(), l.beat(), l.diary(), l.day())),
                r.outputs(), r.record(), new Result.Words(r.words().replies(), messages, r.words().notes()),
                r.findings());
    }

    private static View with(View v, Moment begun, View.SiteLoad site, View.Caps caps) {
        View.Scene s = v.scene();
        return new View(v.settings(), v.cone(), v.book(), v.coneBook(), v.judged(), new View.Scene(s.image(),
                begun, s.wants(), site, s.beside(), caps, s.unwritten()));
    }

    private static View houseCap(View v) {
        View.Caps c = v.scene().caps();
        return with(v, v.scene().begun(), v.scene().site(), new View.Caps(c.settledMs(),
                12 * Units.MINUTE_MS, c.waitMs()));
    }

    /** As if air were missed only after a quarter of an hour. */
    private static View longCaps(View v) {
        View.Caps c = v.scene().caps();
        return with(v, v.scene().begun(), v.scene().site(), new View.Caps(15 * Units.MINUTE_MS,
                c.drawingMs(), c.waitMs()));
    }

    /** As if no heater were on that nobody commands. */
    private static View allHome(View v) {
        double atLarge = StuckHeater.wattsAtLarge(v.settings(), v.book(), v.scene().image());
        return with(v, v.scene().begun(), new View.SiteLoad(v.scene().site().wattsBefore() - atLarge,
                v.scene().site().wallUntrustedForMs()), v.scene().caps());
    }

    /** As if this life had begun with the boot. */
    private static View longAlive(View v) {
        Moment b = v.scene().begun();
        return with(v, new Moment(b.boot(), 0, b.wallMs(), b.wallTrusted()), v.scene().site(),
                v.scene().caps());
    }
}
