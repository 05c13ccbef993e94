package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** What a withdrawal takes with it, and what goes with the cysts. */
class ConeBookTest {

    private static final Moment AT = new Moment("boot-1", 900_000, 0, true);
    private static final Change BRIDGED = new Change.Bridged(new Bridge(AT, AT.plusMs(1),
            new Bridge.Ends(27, 23, 18, Cooling.nominal(2.4))));

    private ConeBook book = FitsTest.in("incubating");
    private long seq = 100;

    private ConeBookTest then(Change... changes) {
        for (Change c : changes) {
            book = book.after(new Fact(seq, AT.plusMs(seq), "a", c instanceof Change.Told ? "s" + seq : "",
                    c));
            seq++;
        }
        return this;
    }

    private static Change withdrawn() {
        return new Change.Told(new Ask.Withdraw("last"));
    }

    private static Change setpoint() {
        return new Change.Told(new Ask.SetSetpoint(26));
    }

    /** It was decided with the report in the book, and is decided again. */
    @Test
    void whatWeDerivedAfterAReportGoesWithItAndWhatCameBeforeStays() {
        then(setpoint(), new Change.Moved("hatching", ""), withdrawn());
        assertThat(book.batch().stage().word()).isEqualTo("incubating");
        assertThat(book.batch().marks().setpointC()).isEmpty();
        then(new Change.Moved("hatching", ""), setpoint(), withdrawn());
        assertThat(book.batch().stage().word()).isEqualTo("hatching");
    }

    @Test
    void theVeryFirstReportCanBeTakenBack() {
        book = Book.empty(Larkmoor.with(), AT).cone("a");
        then(new Change.Told(new Ask.DidFill(2, 25)));
        assertThat(book.lastReport()).isPresent();
        then(withdrawn());
        assertThat(book.batch().stage().word()).isEqualTo("clean");
        assertThat(book.lastReport()).isEmpty();
    }

    @Test
    void otherCystsHaveNotLivedThroughWhatWasBridged() {
        then(BRIDGED, BRIDGED, setpoint());
        assertThat(book.bridges()).hasSize(2);
        then(new Change.Told(new Ask.Did(Step.DRAINED)));
        assertThat(book.bridges()).as("they are the same yet").hasSize(2);
        then(new Change.Told(new Ask.DidFill(2, 25)));
        assertThat(book.bridges()).isEmpty();
        book = FitsTest.in("filled");
        then(new Change.Told(new Ask.DidStock("L-1", 2)), BRIDGED,
                new Change.Told(new Ask.DidStock("L-2", 2)));
        assertThat(book.bridges()).isEmpty();
        then(withdrawn());
        assertThat(book.bridges()).as("what was bridged is not found again").isEmpty();
    }

    private ConeBook started() {
        long first = seq;
        for (Change c : new Change[] {new Change.Told(new Ask.Did(Step.STARTED)),
            new Change.Told(new Ask.DidFill(2, 25)), new Change.Told(new Ask.Did(Step.SALTED)),
            new Change.Told(new Ask.DidStock("L-2", 2))}) {
            book = book.after(new Fact(seq, AT.plusMs(first), "a", "s" + first, c));
            seq++;
        }
        return book;
    }

    /** Begun over it by mistake: all that was noted of it is its own again. */
    @Test
    void theBatchThatIsBackHasItsFactsAgain() {
        then(BRIDGED, new Change.Told(new Ask.Did(Step.FIRST_SEEN)), new Change.Doubted("dark"));
        ConeBook was = book;
        assertThat(started().batch().number()).isEqualTo(was.batch().number() + 1);
        assertThat(book.bridges()).isEmpty();
        then(withdrawn());
        assertThat(book).isEqualTo(was);
        started();
        then(new Change.Doubted("warm"), new Change.Told(new Ask.Did(Step.HANDS_IN)), withdrawn());
        assertThat(book.facts()).startsWith(was.facts().toArray(Fact[]::new))
                .hasSize(was.facts().size() + 2);
        assertThat(book.batch().stage()).isEqualTo(was.batch().stage());
        then(withdrawn());
        assertThat(book.batch().stage().word()).as("and its last report is the last")
                .isEqualTo("incubating");
    }

    @Test
    void twoThatWereBegunByMistakeGoOneAfterTheOther() {
        then(new Change.Told(new Ask.Did(Step.FIRST_SEEN)));
        ConeBook was = book;
        started();
        then(new Change.Told(new Ask.Did(Step.DRAINED)));
        ConeBook first = book;
        started();
        then(withdrawn());
        assertThat(book).isEqualTo(first);
        then(withdrawn(), withdrawn());
        assertThat(book).isEqualTo(was);
    }

    /** It cannot come back, as no report can be withdrawn that is so old. */
    @Test
    void whatCannotComeBackIsForgotten() {
        started();
        seq += Fits.WITHDRAW_WITHIN_MS + 1;
        then(new Change.Told(new Ask.Did(Step.DRAINED)));
        started();
        assertThat(book.before().before()).isEmpty();
        assertThat(book.before().facts()).hasSize(5);
    }

    @Test
    void aTripLetsTheSwitchesBeTriedAnew() {
        then(new Change.Tried("each opens"));
        assertThat(book.heater().tried(book.batch())).isTrue();
        then(new Change.Tripped("welded", "why"));
        assertThat(book.heater().tried(book.batch())).isFalse();
    }

    @Test
    void theSiteIsLockedForEachCone() {
        Book site = Book.empty(Larkmoor.with(), AT).after(new Fact(1, AT, "", "",
                new Change.Tripped(Lives.LOOP, "why")));
        assertThat(site.latch("b", Lives.LOOP)).hasValueSatisfying(l -> assertThat(l.why()).isEqualTo("why"));
        assertThat(site.latch("b", Lives.DAMAGED)).isEmpty();
        assertThat(site.since(AT, AT.plusMs(5_000)).leastMs()).isEqualTo(5_000);
    }
}
