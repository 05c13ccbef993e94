package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.batch.HeaterBook.Learned;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** When what was learned of a heater is believed, and when it is news. */
class HeaterBookTest {

    private static final Learned USUAL = new Learned(25, 2, 1, 1, 60, 1);

    private static Learned with(double rise, double loss, double lagS, double cools) {
        return new Learned(25, 2, rise, loss, lagS, cools);
    }

    @Test
    void itIsBelievedOfItsOwnHeaterAndWaterOnly() {
        assertThat(USUAL.fits(25, 2)).isTrue();
        assertThat(USUAL.fits(50, 2)).isFalse();
        assertThat(USUAL.fits(25, 1.9)).isFalse();
    }

    @Test
    void itsBoundsThemselvesAreBelievedAndNothingBeyond() {
        assertThat(with(0.3, 0.3, 5, 0).fits(25, 2)).isTrue();
        assertThat(with(3, 3, 150, 0).fits(25, 2)).isTrue();
        for (Learned l : new Learned[] {with(0.29, 1, 60, 0), with(3.01, 1, 60, 0), with(1, 0.29, 60, 0),
            with(1, 3.01, 60, 0), with(1, 1, 4.9, 0), with(1, 1, 150.1, 0)}) {
            assertThat(l.fits(25, 2)).as(l.toString()).isFalse();
        }
    }

    @Test
    void itIsNewsByMoreThanThat() {
        assertThat(USUAL.differs(USUAL, 0.25)).isFalse();
        assertThat(with(1.25, 1, 60, 1).differs(USUAL, 0.25)).as("just so much").isFalse();
        assertThat(with(1.26, 1, 60, 1).differs(USUAL, 0.25)).isTrue();
        assertThat(with(0.74, 1, 60, 1).differs(USUAL, 0.25)).isTrue();
        assertThat(with(1, 1.25, 60, 1).differs(USUAL, 0.25)).isFalse();
        assertThat(with(1, 1.26, 60, 1).differs(USUAL, 0.25)).isTrue();
        assertThat(with(1, 1, 75, 1).differs(USUAL, 0.25)).isFalse();
        assertThat(with(1, 1, 76, 1).differs(USUAL, 0.25)).isTrue();
        assertThat(with(2.6, 2.6, 120, 2).differs(with(2.5, 2.5, 115, 2), 0.25)).as("relative").isFalse();
        assertThat(USUAL.differs(new Learned(50, 2, 1, 1, 60, 1), 0.25)).as("another heater").isTrue();
    }

    @Test
    void howFastItCoolsIsNewsByATenthOnceItIsKnown() {
        assertThat(with(1, 1, 60, 1.09).differs(USUAL, 0.25)).isFalse();
        assertThat(with(1, 1, 60, 1.11).differs(USUAL, 0.25)).isTrue();
        assertThat(with(1, 1, 60, 0.89).differs(USUAL, 0.25)).isTrue();
        assertThat(with(1, 1, 60, 2.1).differs(with(1, 1, 60, 2), 0.25)).as("relative").isFalse();
        assertThat(with(1, 1, 60, 0).differs(USUAL, 0.25)).as("it has not shown it").isFalse();
        assertThat(USUAL.differs(with(1, 1, 60, 0), 0.25)).as("for the first time").isTrue();
    }

    @Test
    void howFastItCoolsIsKnownWithinItsBounds() {
        assertThat(with(1, 1, 60, 0).coolingKnown()).isFalse();
        assertThat(with(1, 1, 60, 0.29).coolingKnown()).isFalse();
        assertThat(with(1, 1, 60, 0.3).coolingKnown()).isTrue();
        assertThat(with(1, 1, 60, 4).coolingKnown()).isTrue();
        assertThat(with(1, 1, 60, 4.01).coolingKnown()).isFalse();
    }

    @Test
    void switchesAreTriedForOneFilling() {
        Batch filled = FitsTest.in("filled").batch();
        Moment at = filled.fill().orElseThrow().at();
        assertThat(HeaterBook.NONE.tried(filled)).isFalse();
        assertThat(HeaterBook.NONE.tried(Optional.of(at)).tried(filled)).isTrue();
        assertThat(HeaterBook.NONE.tried(Optional.of(at.plusMs(1))).tried(filled)).isFalse();
        assertThat(HeaterBook.NONE.tried(FitsTest.in("clean").batch())).as("there is none").isFalse();
    }
}
