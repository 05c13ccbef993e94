package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.Larkmoor;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** What a relay did is kept by facts, for the relay and not for the batch. */
class RelayBookTest {

    private static final Moment AT = new Moment("boot-1", 0, 1_772_000_000_000L, true);

    private Book book = Book.empty(Larkmoor.with(), AT);
    private long seq;

    private Moment at(double hours) {
        return AT.plusMs(Units.msOfHours(hours));
    }

    private RelayBookTest then(double hours, Change... changes) {
        for (Change c : changes) {
            seq++;
            book = book.after(new Fact(seq, at(hours), "a", "r" + seq, c));
        }
        return this;
    }

    private static Change did(Step step) {
        return new Change.Told(new Ask.Did(step));
    }

    private static Change withdrawn() {
        return new Change.Told(new Ask.Withdraw("last"));
    }

    private RelayBook relay() {
        return book.cone("a").heater().relay();
    }

    @Test
    void itCountsOnThroughBatches() {
        then(0, did(Step.STARTED), new Change.Told(new Ask.DidFill(2, 25)), new Change.Worn(50),
                new Change.Worn(103), did(Step.DRAINED), did(Step.CLEANED),
                new Change.Told(new Ask.DidFill(2, 25)));
        assertThat(relay().closings()).isEqualTo(103);
        assertThat(relay().used(110)).isEqualTo(110);
        assertThat(book.cone("b").heater().relay().closings()).as("of its own cone").isZero();
    }

    @Test
    void anotherRelayBeginsAnewAndAWithdrawalBringsTheOldOneBack() {
        then(0, new Change.Told(new Ask.DidFill(2, 25)), new Change.Worn(4_020), did(Step.RELAY_EXCHANGED),
                new Change.Worn(4_070));
        assertThat(relay().used(4_075)).isEqualTo(55);
        Batch before = book.cone("a").batch();
        then(0.1, withdrawn());
        assertThat(relay().used(4_075)).isEqualTo(4_075);
        assertThat(book.cone("a").batch()).as("the batch knows nothing of it").isEqualTo(before);
        assertThat(before.stage().word()).isEqualTo("filled");
        then(0.2, did(Step.RELAY_EXCHANGED), did(Step.SALTED), withdrawn());
        assertThat(relay().used(4_080)).as("the salt was withdrawn, not the relay").isEqualTo(10);
    }

    @Test
    void anExchangeLetsTheSwitchesBeTriedAnew() {
        then(0, new Change.Told(new Ask.DidFill(2, 25)), new Change.Tried("each switch opens alone"));
        assertThat(book.cone("a").heater().tried(book.cone("a").batch())).isTrue();
        then(1, did(Step.RELAY_EXCHANGED));
        assertThat(book.cone("a").heater().tried(book.cone("a").batch())).isFalse();
    }

    @Test
    void itIsWrittenOnceInFifty() {
        then(0, new Change.Worn(50));
        assertThat(relay().due(99)).isFalse();
        assertThat(relay().due(100)).isTrue();
    }

    @Test
    void thePaceIsThatOfTheLastDaysAndNotKnownBeforeOne() {
        then(0, new Change.Worn(50)).then(20, new Change.Worn(150));
        assertThat(relay().perDay(155, Boots.NONE, at(23))).isEmpty();
        assertThat(relay().perDay(170, Boots.NONE, at(24)).orElseThrow()).isCloseTo(120, within(1e-9));
        assertThat(relay().perDay(170, Boots.NONE, at(240)).orElseThrow()).as("it rests since")
                .isCloseTo(12, within(1e-9));
        for (int i = 1; i <= 40; i++) {
            then(100 + i, new Change.Worn(150 + 50L * i));
        }
        assertThat(relay().marks()).hasSize(32);
        assertThat(relay().perDay(2_150, Boots.NONE, at(141)).orElseThrow()).as("the slow days are forgotten")
                .isCloseTo(50 * 31 / 32.0 * 24, within(1.0));
    }

    @Test
    void aTimeThatNobodyKnowsTellsNoPace() {
        then(0, new Change.Worn(50));
        Moment later = new Moment("boot-2", 90_000_000, 0, false);
        assertThat(relay().perDay(500, Boots.NONE.heard(AT), later)).isEmpty();
        Moment known = new Moment("boot-2", 90_000_000, AT.wallMs() + 2 * 86_400_000L, true);
        assertThat(relay().perDay(350, Boots.NONE.heard(AT), known).orElseThrow())
                .as("to what two clocks may be off in two days").isCloseTo(150, within(0.01));
    }
}
