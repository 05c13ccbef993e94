package org.conetender.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.hatch.Development;
import org.conetender.core.batch.RandomFacts;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store.StoreException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every store promises. Each kind of store has a test class that extends this one. */
public abstract class StoreContract {

    /** Opens the one record of this test, as a starting daemon does. */
    protected abstract Store open() throws Exception;

    /** The process that holds {@code store} dies without a word; its record can then be opened again. */
    protected abstract void crash(Store store) throws Exception;

    private Store store;

    @BeforeEach
    void openTheRecord() throws Exception {
        store = open();
    }

    @AfterEach
    void closeTheRecord() {
        store.close();
    }

    protected static Fact fact(long seq) {
        Moment at = new Moment("boot-1", seq * 1_000, 1_795_581_286_000L + seq, false);
        return new Fact(seq, at, "a", "r-" + seq,
                new Change.Moved("incubating", "hydration over"));
    }

    protected static Checkpoint checkpoint(long monoMs, double degreeHours) {
        return new Checkpoint(new Moment("boot-1", monoMs, 1_795_581_286_000L, true),
                List.of(new Checkpoint.Temperature("a", 27.0625), new Checkpoint.Temperature("room", 19.5)),
                List.of(new Checkpoint.ConePoint("a", 1,
                        new Development(degreeHours, degreeHours + 0.5, 0, 0, 0),
                        new Checkpoint.At("boot-1", monoMs))));
    }

    private void reopen() throws Exception {
        store.close();
        store = open();
    }

    private void crashAndReopen() throws Exception {
        crash(store);
        store = open();
    }

    @Test
    void aNewRecordIsEmpty() throws Exception {
        assertThat(store.load()).isEqualTo(new Store.Kept(List.of(), Optional.empty(), List.of()));
    }

    @Test
    void factsAreReadBackInOrderAfterARestart() throws Exception {
        store.append(List.of(fact(1)));
        store.append(List.of(fact(2), fact(3)));
        reopen();
        assertThat(store.load().facts()).containsExactly(fact(1), fact(2), fact(3));
    }

    @Test
    void everyKindOfFactAndTextSurvives() throws Exception {
        Random random = new Random(417);
        List<Fact> facts = new ArrayList<>();
        for (long seq = 1; seq <= 300; seq++) {
            facts.add(RandomFacts.fact(random, seq));
        }
        store.append(facts);
        reopen();
        assertThat(store.load().facts()).isEqualTo(facts);
    }

    @Test
    void onlyTheLastCheckpointIsKept() throws Exception {
        store.minute(checkpoint(60_000, 12.5));
        store.minute(checkpoint(120_000, 12.9));
        reopen();
        assertThat(store.load().checkpoint()).contains(checkpoint(120_000, 12.9));
    }

    @Test
    void theSameMinuteToldTwiceIsNoTrouble() throws Exception {
        store.minute(checkpoint(60_000, 12.5));
        store.minute(checkpoint(60_000, 12.6));
        assertThat(store.load().checkpoint()).contains(checkpoint(60_000, 12.6));
    }

    @Test
    void whateverWasAcknowledgedSurvivesACrash() throws Exception {
        store.append(List.of(fact(1)));
        store.minute(checkpoint(60_000, 12.5));
        store.append(List.of(fact(2)));
        crashAndReopen();
        assertThat(store.load().facts()).containsExactly(fact(1), fact(2));
        assertThat(store.load().checkpoint()).contains(checkpoint(60_000, 12.5));
    }

    @Test
    void theRecordGoesOnAfterACrash() throws Exception {
        store.append(List.of(fact(1)));
        crashAndReopen();
        store.append(List.of(fact(2)));
        crashAndReopen();
        assertThat(store.load().facts()).containsExactly(fact(1), fact(2));
    }

    @Test
    void aNumberIsNeverUsedTwice() throws Exception {
        store.append(List.of(fact(1)));
        assertThatThrownBy(() -> store.append(List.of(fact(1)))).isInstanceOf(StoreException.class)
                .hasMessageContaining("contradicts what is already recorded");
        assertThat(store.load().facts()).containsExactly(fact(1));
    }

    @Test
    void factsOfOneCallAreKeptTogetherOrNotAtAll() throws Exception {
        store.append(List.of(fact(1)));
        assertThatThrownBy(() -> store.append(List.of(fact(2), fact(3), fact(1))))
                .isInstanceOf(StoreException.class);
        crashAndReopen();
        assertThat(store.load().facts()).containsExactly(fact(1));
    }

    @Test
    void aRefusedCallDoesNotSpoilTheNextOne() throws Exception {
        Moment otherBoot = new Moment("boot-2", 5, 6, false);
        Fact second = new Fact(2, otherBoot, "", "", new Change.Began(Optional.empty()));
        assertThatThrownBy(() -> store.append(List.of(second, second))).isInstanceOf(StoreException.class);
        store.append(List.of(second));
        reopen();
        assertThat(store.load().facts()).containsExactly(second);
    }

    @Test
    void aCallWithoutFactsKeepsNothing() throws Exception {
        store.append(List.of());
        assertThat(store.load().facts()).isEmpty();
    }

    @Test
    void twoDaemonsNeverShareOneRecord() throws Exception {
        store.append(List.of(fact(1)));
        assertThatThrownBy(this::open).isInstanceOf(StoreException.class)
                .hasMessageContaining("in use by another conetender");
        store.append(List.of(fact(2)));
        assertThat(store.load().facts()).containsExactly(fact(1), fact(2));
    }
}
