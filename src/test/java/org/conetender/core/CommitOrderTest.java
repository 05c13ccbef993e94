package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What grants acts when it is durable, what takes away acts at once (style.md, commit order). */
class CommitOrderTest {

    @Test
    void aGrantActsAndIsAnsweredOnlyWhenItIsDurable() {
        Story s = Story.at(Larkmoor.Fitting.MAT);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.STARTED));
        s.minutes(2);
        assertThat(s.stage()).isEqualTo("clean");
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.replies()).isEmpty();
        s.paper.mood(Paper.Mood.KEEPING);
        s.tick();
        assertThat(s.stage()).isEqualTo("hydrating");
        assertThat(s.on("a.cut-out")).isTrue();
        assertThat(s.replies()).singleElement().satisfies(r -> assertThat(r.accepted()).isTrue());
    }

    @ParameterizedTest
    @ValueSource(strings = {"DRAINED", "ABANDONED", "HANDS_IN"})
    void aTakingActsInItsOwnTickAndIsAnsweredWhenItIsDurable(Step step) {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(10);
        assertThat(s.on("a.cut-out")).isTrue();
        s.paper.mood(Paper.Mood.WAITING);
        long answers = s.replies().size();
        s.send("a", new Ask.Did(step));
        s.tick();
        assertThat(s.on("a.cut-out")).isFalse();
        s.minutes(1);
        assertThat(s.replies()).hasSize((int) answers);
        s.paper.mood(Paper.Mood.KEEPING);
        s.tick();
        assertThat(s.replies()).hasSize((int) answers + 1);
    }

    @Test
    void aGrantThatCouldNotBeRecordedIsNotDone() {
        Story s = Story.at();
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.STARTED));
        s.seconds(3);
        s.paper.next(false);
        s.seconds(3);
        assertThat(s.stage()).isEqualTo("clean");
        assertThat(s.replies().getLast().sentence())
                .startsWith("Cone a: not recorded, so not done: the disk is full");
        assertThat(s.replies().getLast().accepted()).isFalse();
    }

    /** Its last write failed only to last: nobody may be told that it is surely not recorded. */
    @Test
    void aGrantThatARestartMayFindIsCalledPerhapsRecorded() {
        Story s = Story.at();
        s.paper.mood(Paper.Mood.FALTERING);
        Result.Reply r = s.did("a", Step.STARTED);
        assertThat(r.accepted()).isFalse();
        assertThat(r.sentence()).startsWith("Cone a: not done, but perhaps recorded: the disk is full")
                .endsWith("look at the cone ('watch' or 'report') before you say it again.");
        assertThat(s.stage()).isEqualTo("clean");
        s.restart("boot-1", 1_000).tick();
        assertThat(s.stage()).isEqualTo("hydrating");
    }

    @Test
    void aTakingThatCouldNotBeRecordedIsInForceAndOfferedAgainUntilItIs() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.paper.mood(Paper.Mood.REFUSING);
        assertThat(s.did("a", Step.DRAINED).sentence()).isEqualTo(
                "Cone a: done, but not recorded: the disk is full; free some space. It is tried again every "
                        + "minute; whatever it allows waits for that.");
        s.minutes(5);
        assertThat(s.stage()).isEqualTo("drained");
        assertThat(s.paper.facts().getLast().change().toString()).doesNotContain("DRAINED");
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(2);
        assertThat(s.paper.facts().getLast().change().toString()).contains("DRAINED");
        assertThat(s.replies().stream().filter(r -> r.sentence().contains("drained"))).as("answered once")
                .isEmpty();
        s.restart("boot-1", 1_000).tick();
        assertThat(s.stage()).isEqualTo("drained");
    }

    @Test
    void aLaterReportDoesNotOvertakeOneThatWasRefused() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.DRAINED));
        s.seconds(2);
        s.paper.next(false);
        s.seconds(2);
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(2);
        s.does(Step.CLEANED);
        s.minutes(2);
        assertThat(s.stage()).isEqualTo("clean");
        s.restart("boot-1", 1_000).tick();
        assertThat(s.stage()).isEqualTo("clean");
    }

    @Test
    void aWithdrawalIsRecordedAfterTheReportItTakesBackThoughThatWasRefused() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.paper.mood(Paper.Mood.REFUSING);
        s.did("a", Step.DRAINED);
        s.send("a", new Ask.Withdraw("last"));
        s.paper.mood(Paper.Mood.KEEPING);
        s.seconds(3);
        assertThat(s.stage()).isEqualTo("hatching");
        s.restart("boot-1", 1_000).tick();
        assertThat(s.stage()).as("not the report before it").isEqualTo("hatching");
    }

    @Test
    void aReportOnItsWayIsNotUndoneByAMoveDecidedMeanwhile() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        s.seconds(350);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.CLEANED));
        s.seconds(30);
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(2);
        assertThat(s.stage()).isEqualTo("clean");
        // For half an hour 'cleaned' may be taken back: what its animals spent counts until air repays it.
        s.does(Step.STARTED, Step.FIRST_SEEN).minutes(4).does(Step.SETTLE);
        s.seconds(350);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.DRAWING));
        s.seconds(30);
        s.paper.mood(Paper.Mood.KEEPING);
        s.seconds(5);
        assertThat(s.stage()).isEqualTo("drawing");
    }

    @Test
    void aSettleThatTookTooLongToRecordDoesNotStopTheAirForLonger() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.SETTLE));
        s.minutes(11);
        s.paper.mood(Paper.Mood.KEEPING);
        s.seconds(3);
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.stage()).isEqualTo("ready");
    }

    @Test
    void aLatchHoldsThoughItsRecordIsStillOnItsWay() {
        Story s = new Story(Larkmoor.with(Larkmoor.Fitting.ROOM_PROBE));
        s.senses.water("a", 22).room(22).dead("a");
        s.does(Step.STARTED);
        s.paper.mood(Paper.Mood.WAITING);
        s.minutes(30);
        assertThat(s.state().book().cone("a").latch("no-effect")).isPresent();
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void anAlarmNeverWaitsForTheRecord() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(5);
        s.paper.mood(Paper.Mood.REFUSING);
        s.senses.probe("a-water", new org.conetender.core.image.Reading.Absent());
        s.minutes(3);
        assertThat(s.standing("a")).contains("probe");
    }

    /** Seeded: any requests, any interleaving of commits and failures, compared after every tick. */
    @ParameterizedTest
    @ValueSource(ints = {0, 100, 200, 300})
    void theEffectiveBookIsWhatWasKeptAndWhatTakesAwayInTheOrderOfTheirNumbers(int from) {
        for (int seed = from + 1; seed <= from + 40; seed++) {
            Random random = new Random(seed);
            Story s = Story.at();
            s.paper.mood(Paper.Mood.WAITING);
            for (int i = 0; i < 150; i++) {
                if (random.nextInt(4) == 0) {
                    s.send("abc".substring(random.nextInt(3)).substring(0, 1), new Ask.Did(
                            Step.values()[random.nextInt(Step.values().length)]));
                }
                if (random.nextInt(3) == 0) {
                    s.paper.next(random.nextInt(4) > 0);
                }
                s.tick();
                assertThat(s.state().book().cones()).as("seed " + seed + ", tick " + i)
                        .isEqualTo(expected(s.state().ledger(), s).cones());
            }
            s.paper.mood(Paper.Mood.KEEPING);
            s.minutes(3);
            String live = told(s.state().book());
            s.restart("boot-1", 0);
            assertThat(told(s.state().book())).as("seed " + seed + ", restarted").isEqualTo(live);
        }
    }

    /** All of a book but the moment at which it was opened. */
    private static String told(Book book) {
        StringBuilder out = new StringBuilder();
        book.cones().forEach((id, b) -> out.append(id).append(' ').append(b.batch().number()).append(' ')
                .append(b.batch().stage().word()).append(' ').append(b.batch().marks()).append(' ')
                .append(b.facts().stream().map(Fact::seq).toList()).append(' ').append(b.latches())
                        .append('\n'));
        return out.append(book.recentIds()).toString();
    }

    private static Book expected(Ledger ledger, Story s) {
        List<Fact> facts = new ArrayList<>();
        // What a commit told in this tick is known to the paper but not yet to the book: ask the ledger's
        // own list.
        Book b = ledger.committed();
        for (Pending p : ledger.pending()) {
            if (p.takesAway() || s.paper.facts().containsAll(p.facts()) && p.way() == Pending.Way.KEPT) {
                facts.addAll(p.facts());
            }
        }
        assertThat(facts).isSortedAccordingTo((x, y) -> Long.compare(x.seq(), y.seq()));
        for (Fact f : facts) {
            b = b.after(f);
        }
        return b;
    }

    @Test
    void anyPrefixOfTheRecordIsAPlaceToStandAndAirOffNeverOutlivesARestart() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(7);
        s.does(Step.DRAWING, Step.PART_DRAWN);
        s.minutes(9);
        s.does(Step.SETTLE, Step.HANDS_IN, Step.DRAINED, Step.CLEANED);
        List<Fact> all = s.paper.facts();
        for (int n = 0; n <= all.size(); n++) {
            List<Fact> prefix = all.subList(0, n);
            Book book = Book.empty(s.settings(), all.getFirst().at());
            for (Fact f : prefix) {
                book = book.after(f);
            }
            State begun = State.begin(s.settings(), prefix, s.paper.checkpoint(), s.now());
            assertThat(begun.book().cones()).isEqualTo(n == 0 ? begun.book().cones() : book.cones());
            Result r = new Tick(s.settings())
                    .step(begun, new org.conetender.core.image.Image(s.now().plusMs(1),
                    s.senses.probes(0), s.senses.contacts(), org.conetender.core.image.Image.Inbox.EMPTY,
                    org.conetender.core.image.Image.Pipes.HEALTHY));
            boolean water = r.next().book().cone("a").batch().stage().hasWater();
            assertThat(water && r.outputs().get("a.air-pause")).as("after " + n + " facts").isFalse();
            assertThat(r.next().book().cone("a").batch().stage().airOff()).isNull();
        }
    }
}
