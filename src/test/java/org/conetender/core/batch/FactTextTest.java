package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.Random;
import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FactTextTest {

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyChangeComesBackAsItWasWritten(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 2_000; i++) {
            Change change = RandomFacts.change(random);
            String text = FactText.write(change);
            assertThat(text).as("seed %d, change %d", seed, i).doesNotContain("\n", "\r");
            assertThat(FactText.read(text)).as("seed %d, change %d", seed, i).isEqualTo(change);
        }
    }

    @Test
    void everyKindOfChangeIsTriedByTheSeeds() {
        Random random = new Random(1);
        var kinds = new java.util.HashSet<Class<?>>();
        for (int i = 0; i < 2_000; i++) {
            Change change = RandomFacts.change(random);
            kinds.add(change.getClass());
            if (change instanceof Change.Told told) {
                kinds.add(told.ask().getClass());
            }
        }
        assertThat(kinds).hasSize(Change.class.getPermittedSubclasses().length
                + org.conetender.core.image.Ask.class.getPermittedSubclasses().length);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "told", "told\tdid", "told\tdid\tdances", "told\tfill\t2",
            "told\tfill\ttwo\t30", "moved\tready", "began\ta\tb",
            "began\tboot\t1\t2\tyes", "clock-set\tx", "bridged\tb\t1\t2\ttrue", "moved\tready\twhy\tmore",
            "doubted\tends in \\", "doubted\t\\q", "told\tcount\t1.5\t0\t0\t1", "told\tready-by",
            "told\tready-by\tsoon", "told\tready-by\tFRI 7:30", "sang\ta"})
    void aTextThatNobodyWroteIsRefused(String text) {
        assertThatThrownBy(() -> FactText.read(text)).isInstanceOf(IllegalArgumentException.class);
    }

    /** What the release before wrote: one nominal time constant, and a heater whose cooling is not known. */
    @Test
    void whatAnOlderReleaseLearnedAndBridgedIsReadAsItWasMeant() {
        Change.Bridged b = (Change.Bridged) FactText.read("bridged\tb\t1\t2\ttrue\tc\t3\t4\ttrue\t27.0\t23.0"
                + "\t18.0\t2.4");
        assertThat(b.bridge().ends()).isEqualTo(new Bridge.Ends(27, 23, 18, Cooling.nominal(2.4)));
        Change.Learned l = (Change.Learned) FactText.read("learned\t25.0\t2.0\t0.9\t1.1\t60.0");
        assertThat(l.what()).isEqualTo(new HeaterBook.Learned(25, 2, 0.9, 1.1, 60, 0));
        assertThat(l.what().coolingKnown()).isFalse();
        assertThat(l.what().fits(25, 2)).isTrue();
    }

    @Test
    void aLifeThatKnowsOfNoneBeforeIsReadBackSo() {
        Moment m = new Moment("", 0, -5, true);
        assertThat(FactText.read(FactText.write(new Change.Began(Optional.of(m)))))
                .isEqualTo(new Change.Began(Optional.of(m)));
        assertThat(FactText.read(FactText.write(new Change.Began(Optional.empty()))))
                .isEqualTo(new Change.Began(Optional.empty()));
    }
}
