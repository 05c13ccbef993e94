package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.conetender.port.Store;
import org.conetender.port.Store.StoreException;
import org.conetender.port.StoreContract;
import org.conetender.sim.SimStore.Cut;
import org.conetender.sim.SimStore.Disk;
import org.conetender.sim.SimStore.Mood;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SimStoreTest extends StoreContract {

    private final Disk disk = new Disk();

    @Override
    protected Store open() throws StoreException {
        return SimStore.open(disk);
    }

    @Override
    protected void crash(Store store) {
        ((SimStore) store).crash();
    }

    @ParameterizedTest
    @EnumSource(value = Mood.class, names = "HEALTHY", mode = EnumSource.Mode.EXCLUDE)
    void aSickDiskRefusesWithASentenceAndKeepsNothing(Mood mood) throws Exception {
        Disk sick = new Disk();
        SimStore store = SimStore.open(sick);
        store.append(List.of(fact(1)));
        sick.mood(mood);
        assertThatThrownBy(() -> store.append(List.of(fact(2)))).isInstanceOf(StoreException.class);
        assertThatThrownBy(() -> store.minute(checkpoint(60_000, 1))).isInstanceOf(StoreException.class);
        assertThat(store.load().facts()).containsExactly(fact(1));
        assertThat(store.load().checkpoint()).isEmpty();
        sick.mood(Mood.HEALTHY);
        store.append(List.of(fact(2)));
        assertThat(store.load().facts()).containsExactly(fact(1), fact(2));
        assertThat(sick.takeWaitedMs()).isEqualTo(mood == Mood.SLOW ? 2 * SimStore.SLOW_MS : 0);
        assertThat(sick.takeWaitedMs()).isZero();
    }

    @Test
    void aPowerCutBeforeTheCommitLosesTheWriteAndOnlyThatOne() throws Exception {
        assertThat(factsAfterCut(Cut.BEFORE_COMMIT)).isEqualTo(1);
    }

    @Test
    void aPowerCutAfterTheCommitKeepsTheWriteThatNobodyWasToldOf() throws Exception {
        assertThat(factsAfterCut(Cut.AFTER_COMMIT)).isEqualTo(2);
    }

    private static int factsAfterCut(Cut cut) throws Exception {
        Disk disk = new Disk();
        SimStore store = SimStore.open(disk);
        store.append(List.of(fact(1)));
        disk.cutPowerAt(cut);
        assertThatThrownBy(() -> store.append(List.of(fact(2)))).isInstanceOf(SimStore.PowerCut.class);
        assertThatThrownBy(store::load).isInstanceOf(IllegalStateException.class);
        SimStore again = SimStore.open(disk);
        int kept = again.load().facts().size();
        again.append(List.of(fact(kept + 1)));
        return kept;
    }
}
