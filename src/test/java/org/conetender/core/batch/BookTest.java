package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.conetender.core.Larkmoor;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The book as a fold: what each kind of fact leaves behind, and what it leaves alone. */
class BookTest {

    private static final Moment AT = new Moment("boot-1", 100_000, 0, true);

    private long seq;
    private Book book = Book.empty(Larkmoor.with(), AT);

    private Fact fact(String cone, String source, Change change) {
        return new Fact(++seq, AT.plusMs(seq * 1_000), cone, source, change);
    }

    private BookTest note(String cone, Change change) {
        book = book.after(fact(cone, "", change));
        return this;
    }

    private BookTest told(String source, Ask... asks) {
        for (Ask a : asks) {
            book = book.after(fact("a", source, new Change.Told(a)));
        }
        return this;
    }

    private BookTest withdraw() {
        return told("w" + seq, new Ask.Withdraw("last"));
    }

    private static Ask did(Step s) {
        return new Ask.Did(s);
    }

    private ConeBook a() {
        return book.cone("a");
    }

    private String stage() {
        return a().batch().stage().word();
    }

    private BookTest started(String source) {
        return told(source, did(Step.STARTED), new Ask.DidFill(2, 25), did(Step.SALTED),
                new Ask.DidStock("L-0417", 2));
    }

    @Test
    void aStartThatWasAMistakeLeavesTheConeAsItStoodBefore() {
        started("one").told("two", did(Step.DRAINED));
        Batch before = a().batch();
        started("three");
        assertThat(a().batch().number()).isEqualTo(2);
        withdraw();
        assertThat(a().batch()).isEqualTo(before);
        assertThat(a().lastReport().map(Fact::source)).as("and then the draining is the last word")
                .contains("two");
    }

    @Test
    void whatFollowedFromAWithdrawnReportIsRecomputed() {
        started("one").note("a", new Change.Moved("incubating", "")).told("two", did(Step.FIRST_SEEN))
                .note("a", new Change.Moved("ready", "")).withdraw();
        assertThat(stage()).isEqualTo("incubating");
        note("a", new Change.Moved("hatching", ""));
        assertThat(stage()).as("and it goes on from there").isEqualTo("hatching");
    }

    @Test
    void reportsCanBeTakenBackOneByOne() {
        started("one").told("two", did(Step.FIRST_SEEN)).told("three", new Ask.SetSetpoint(26));
        withdraw();
        assertThat(a().batch().marks().setpointC()).isEmpty();
        assertThat(stage()).isEqualTo("hatching");
        withdraw();
        assertThat(stage()).isEqualTo("hydrating");
        withdraw();
        assertThat(stage()).isEqualTo("clean");
        Book last = book;
        withdraw();
        assertThat(a()).as("nothing is left to take back").isEqualTo(last.cone("a"));
    }

    /** Hands stay in the water, the lock stays locked and a spoilt batch stays spoilt. */
    @Test
    void whatNobodyReportedIsNotTakenBack() {
        started("one").note("a", new Change.Tripped("cooked-batch", "too warm"))
                .note("a", new Change.Doubted("it was at 40 °C"))
                .told("u", new Ask.SetUsual(Optional.of("L-0500"), Optional.empty(), Optional.empty(),
                        Optional.empty()))
                .told("seen", new Ask.Acknowledge("overheat")).told("two", did(Step.FIRST_SEEN))
                .told("hands", did(Step.HANDS_IN)).withdraw();
        assertThat(stage()).isEqualTo("hydrating");
        assertThat(a().latch("cooked-batch")).isPresent();
        assertThat(a().batch().marks().words().doubts()).containsExactly("it was at 40 °C");
        assertThat(a().batch().marks().handsIn()).isPresent();
        assertThat(a().usual().lot()).isEqualTo("L-0500");
        assertThat(a().acknowledged()).containsExactly("overheat");
    }

    @Test
    void aLatchKeepsItsFirstReasonAndEndsOnlyByItsOwnRelease() {
        note("a", new Change.Tripped("dry", "first")).note("a", new Change.Tripped("dry", "second"))
                .note("a", new Change.Tripped("welded", "other"));
        assertThat(a().latches()).hasSize(2);
        assertThat(a().latch("dry").orElseThrow().why()).isEqualTo("first");
        assertThat(a().latch("dry").orElseThrow().since().monoMs()).isEqualTo(101_000);
        note("a", new Change.Released("dry", "acknowledged"));
        assertThat(a().latch("dry")).isEmpty();
        assertThat(a().latch("welded")).isPresent();
        started("one");
        assertThat(a().latch("welded")).as("a new batch frees nothing").isPresent();
    }

    @Test
    void anAcknowledgementIsStruckWhenItsAlarmEnds() {
        told("x", new Ask.Acknowledge("probe")).told("y", new Ask.Acknowledge("dry"))
                .told("z", new Ask.Acknowledge("probe"));
        assertThat(a().acknowledged()).containsExactly("dry", "probe");
        note("a", new Change.AlarmOver("probe"));
        assertThat(a().acknowledged()).containsExactly("dry");
    }

    @Test
    void whatNobodyHasSeenIsKeptUntilItIsSeenOverOrFilledOver() {
        note("a", new Change.AlarmRaised("air-back", "it is back"))
                .note("a", new Change.AlarmRaised("siphon", ""));
        assertThat(a().alarms().unseen()).extracting(AlarmBook.Unseen::alarm).containsExactly("air-back",
                "siphon");
        told("x", new Ask.Acknowledge("siphon"));
        assertThat(a().alarms().unseen()).extracting(AlarmBook.Unseen::what).containsExactly("it is back");
        assertThat(a().alarms().knows("siphon")).as("as one that a person has seen").isTrue();
        note("a", new Change.AlarmRaised("siphon", "again"));
        assertThat(a().acknowledged()).as("a new incident").isEmpty();
        note("a", new Change.AlarmOver("siphon"));
        assertThat(a().alarms().knows("siphon")).isFalse();
        started("one");
        assertThat(a().alarms().unseen()).isEmpty();
    }

    @Test
    void theLastWordOnAShelfCounts() {
        told("x", new Ask.Shelve("dry", 8)).told("y", new Ask.Shelve("probe", 1))
                .told("z", new Ask.Shelve("dry", 2));
        started("one");
        assertThat(a().alarms().shelves()).extracting(AlarmBook.Shelf::alarm, AlarmBook.Shelf::hours)
                .containsExactly(org.assertj.core.groups.Tuple.tuple("probe", 1.0),
                        org.assertj.core.groups.Tuple.tuple("dry", 2.0));
        told("w", new Ask.Shelve("dry", 0));
        assertThat(a().alarms().shelves()).hasSize(1);
    }

    @Test
    void eachConeHasItsOwnBook() {
        started("one").note("b", new Change.Tripped("dry", ""));
        assertThat(book.cone("b").batch().stage().word()).isEqualTo("clean");
        assertThat(a().latches()).isEmpty();
        book = book.after(fact("b", "w", new Change.Told(new Ask.Withdraw("last"))));
        assertThat(stage()).as("b took nothing of a's back").isEqualTo("hydrating");
    }

    /** Somebody took a cone out of the configuration: its old facts must not stop the start. */
    @Test
    void aConeThatIsNoLongerThereIsPassedOver() {
        Book before = book;
        note("gone", new Change.Tripped("dry", ""));
        assertThat(book.cones()).isEqualTo(before.cones());
    }

    @Test
    void awayHoldsForTheSiteUntilSomebodyIsNear() {
        book = book.after(fact("", "x", new Change.Told(new Ask.Away("neighbour"))));
        assertThat(book.away().orElseThrow().helper()).isEqualTo("neighbour");
        started("one");
        assertThat(book.away()).isPresent();
        book = book.after(fact("", "y", new Change.Told(new Ask.Away(""))));
        assertThat(book.away()).isEmpty();
    }

    /** A repeated id is refused; the memory for it is bounded, and the daemon's own facts take none of it. */
    @Test
    void theLastRequestIdsAreRememberedOnceEach() {
        for (int i = 0; i < Book.REMEMBERED_IDS + 10; i++) {
            told("id-" + i, new Ask.Acknowledge("x"), new Ask.Acknowledge("y"));
            note("a", new Change.AlarmOver("x"));
        }
        assertThat(book.recentIds()).hasSize(Book.REMEMBERED_IDS).doesNotHaveDuplicates()
                .doesNotContain("", "id-9").startsWith("id-10").endsWith("id-265");
    }

    /** Seeded: whatever was ever recorded can be read back, and the same facts make the same book. */
    @Test
    @Tag("slow")
    void everyRecordFolds() {
        for (int seed = 1; seed <= 200; seed++) {
            Random r = new Random(seed);
            List<Fact> facts = new ArrayList<>();
            for (int i = 1; i <= 60; i++) {
                Change c = RandomFacts.change(r);
                facts.add(new Fact(i, AT.plusMs(i * 1_000L), r.nextInt(4) == 0 ? "b" : "a", "r" + i / 3,
                        c instanceof Change.Moved ? new Change.Moved("ready", "") : c));
            }
            assertThat(folded(facts)).as("seed " + seed).isEqualTo(folded(facts));
            assertThat(folded(facts).cone("a").batch().number()).isNotNegative();
        }
    }

    /** Seeded: a start folds years in one go, and stands where whoever lived through them stands. */
    @Test
    @Tag("slow")
    void foldsAllAtOnceAsOneByOne() {
        for (int seed = 1; seed <= 300; seed++) {
            foldsAllAtOnce(seed, 900);
        }
    }

    /** The same, in a moment. */
    @Test
    void foldsSomeAtOnceAsOneByOne() {
        for (int seed = 1; seed <= 40; seed++) {
            foldsAllAtOnce(seed, 150);
        }
        foldsAllAtOnce(1, 900);
    }

    private static void foldsAllAtOnce(int seed, int count) {
        Set<Long> aside = Set.of(6L, 7L, 14L, 15L);
        Random r = new Random(seed);
        List<Fact> facts = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            Change c = switch (r.nextInt(4)) {
                case 0 -> new Change.Told(new Ask.Withdraw("last"));
                case 1 -> new Change.Told(did(Step.values()[r.nextInt(Step.values().length)]));
                default -> RandomFacts.change(r);
            };
            facts.add(new Fact(i, new Moment("boot-" + i / 200, i * 1_000L, r.nextInt(20_000),
                    r.nextBoolean()), r.nextInt(4) == 0 ? "" : "abx".charAt(r.nextInt(3)) + "", "r" + (
                    r.nextInt(9) == 0 ? r.nextInt(900) : i / 2), c instanceof Change.Moved
                    ? new Change.Moved("ready", "") : c));
        }
        assertThat(Book.empty(Larkmoor.with(), AT).after(facts, aside)).as("seed " + seed)
                .isEqualTo(oneByOne(facts, aside));
    }

    @Test
    void forgetsTheSameLessonsAllAtOnceAsOneByOne() {
        List<Fact> facts = new ArrayList<>();
        for (int i = 1; i <= Lots.MOST + 300; i++) {
            facts.add(new Fact(2 * i - 1, AT, "a", "r" + i, new Change.Told(did(Step.FIRST_SEEN))));
            facts.add(new Fact(2 * i, AT, "a", "r" + i, new Change.Taught("L-0417", i, new Lesson(
                    new Lesson.At(i, i, 1), new Lesson.Sight.First()))));
        }
        for (int i = 1; i <= 3; i++) {
            facts.add(new Fact(facts.size() + 1, AT, "a", "w" + i,
                    new Change.Told(new Ask.Withdraw("last"))));
        }
        Book book = Book.empty(Larkmoor.with(), AT).after(facts, Set.of());
        assertThat(book).isEqualTo(oneByOne(facts, Set.of()));
        assertThat(book.lots().all()).hasSize(Lots.MOST - 3);
    }

    private static Book oneByOne(List<Fact> facts, Set<Long> aside) {
        Book b = Book.empty(Larkmoor.with(), AT);
        for (Fact f : facts) {
            b = aside.contains(f.seq()) ? b.passing(f) : b.after(f);
        }
        return b;
    }

    private static Book folded(List<Fact> facts) {
        Book b = Book.empty(Larkmoor.with(), AT);
        for (Fact f : facts) {
            b = b.after(f);
        }
        return b;
    }
}
