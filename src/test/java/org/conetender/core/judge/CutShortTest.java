package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.judge.CutShort.Answer;
import org.junit.jupiter.api.Test;

/** Water that seems to be heated by a welded switch, and the second switch opens. */
class CutShortTest {

    /** Of 25 W in 2 L, K/s. */
    private static final double RISE = 0.003;
    private static final double START_C = 27.3;

    private CutShort cut = CutShort.NONE;

    private void seconds(int n, double fromC, double kPerS, double rise) {
        for (int i = 1; i <= n; i++) {
            cut = cut.after(new CutShort.Seen(1_000, true, new Belief.Trusted(fromC + i * kPerS), rise));
        }
    }

    @Test
    void waterThatStopsOnceTheHeatOnItsWayHasArrivedWasHeatedByTheSwitch() {
        seconds(240, START_C, 0.001, RISE);
        assertThat(cut.answer()).as("heat was on its way").isEmpty();
        assertThat(cut.tells()).isTrue();
        seconds(140, START_C + 0.24, -0.0002, RISE);
        assertThat(cut.answer()).contains(Answer.STOPPED);
        assertThat(cut.stopped()).isTrue();
        assertThat(cut.tells()).isTrue();
    }

    @Test
    void waterThatGoesOnIsWarmedBySomethingElse() {
        seconds(380, START_C, RISE / 2, RISE);
        assertThat(cut.answer()).contains(Answer.WENT_ON);
        assertThat(cut.stopped()).isFalse();
        assertThat(cut.tells()).as("nothing is waited for any more").isFalse();
        seconds(600, START_C + 0.57, 0, RISE);
        assertThat(cut.answer()).as("what stops later has its own reasons").contains(Answer.WENT_ON);
    }

    @Test
    void aWeakHeaterIsWaitedForLonger() {
        seconds(240 + 300, START_C, 0, RISE / 4);
        assertThat(cut.answer()).isEmpty();
        seconds(240, START_C, 0, RISE / 4);
        assertThat(cut.answer()).contains(Answer.STOPPED);
    }

    @Test
    void aStepOfTheProbeDecidesNothing() {
        seconds(250, START_C, 0, RISE);
        seconds(130, START_C + 0.0625, 0, RISE);
        assertThat(cut.answer()).contains(Answer.STOPPED);
    }

    @Test
    void waterThatIsNotSeenOrACutOutThatClosesAgainBeginsAnew() {
        seconds(300, START_C, 0, RISE);
        assertThat(cut.after(new CutShort.Seen(1_000, false, new Belief.Trusted(START_C), RISE)))
                .isEqualTo(CutShort.NONE);
        assertThat(cut.after(new CutShort.Seen(1_000, true, new Belief.Untrusted("gone"), RISE)))
                .isEqualTo(CutShort.NONE);
        assertThat(CutShort.NONE.tells()).isFalse();
    }
}
