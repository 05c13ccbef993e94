package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.judge.CutShort.Answer;
import org.junit.jupiter.api.Test;

/** Water that seems to be heated by a welded switch, and the second switch opens. */
class CutShortTest {

    /** Of 25 W in 2 L, K/s. */
    private static final double RISE = 0.003;
    private static final double START_C = 27.3;

    private CutShort cut = CutShort.NONE;

    private void seconds(int n, double fromC, double kPerS, double rise) {
        seconds(n, fromC, kPerS, new Rate(Double.NaN, rise));
    }

    /** @param off with the heat off, NaN for not known  @param full at full power; both K/s */
    private record Rate(double off, double full) {}

    private void seconds(int n, double fromC, double kPerS, Rate rise) {
        if (cut.equals(CutShort.NONE)) {
            cut = cut.after(seen(true, false, new Belief.Trusted(fromC), rise));
        }
        for (int i = 1; i <= n; i++) {
            cut = cut.after(seen(true, true, new Belief.Trusted(fromC + i * kPerS), rise));
        }
    }

    private static CutShort.Seen seen(boolean left, boolean open, Belief water, double rise) {
        return seen(left, open, water, new Rate(Double.NaN, rise));
    }

    private static CutShort.Seen seen(boolean left, boolean open, Belief water, Rate rise) {
        return new CutShort.Seen(1_000, left, open, water,
                Double.isNaN(rise.off()) ? Optional.empty() : Optional.of(rise.off()), rise.full());
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
    void aCutOutThatWasOpenAnywayTellsNothing() {
        for (int i = 0; i < 1_000; i++) {
            cut = cut.after(seen(true, true, new Belief.Trusted(START_C), RISE));
        }
        assertThat(cut).isEqualTo(CutShort.NONE);
        assertThat(cut.tells()).isFalse();
    }

    @Test
    void handsAndAProbeThatLiesEndItWithoutAnAnswerAndOnlyAClosedCutOutBeginsItAnew() {
        seconds(300, START_C, 0, RISE);
        CutShort handled = cut.after(seen(false, true, new Belief.Trusted(START_C), RISE));
        assertThat(handled).isEqualTo(CutShort.NONE);
        assertThat(cut.after(seen(true, true, new Belief.Untrusted("gone"), RISE))).isEqualTo(CutShort.NONE);
        cut = handled;
        for (int i = 0; i < 1_000; i++) {
            cut = cut.after(seen(true, true, new Belief.Trusted(START_C), RISE));
        }
        assertThat(cut.answer()).isEmpty();
        cut = cut.after(seen(true, false, new Belief.Trusted(START_C), RISE));
        assertThat(cut.tells()).as("closed again").isFalse();
        seconds(400, START_C, 0, RISE);
        assertThat(cut.stopped()).isTrue();
    }

    @Test
    void anAnswerStandsThroughHandsAndALateReadingIsWaitedFor() {
        seconds(300, START_C, 0, RISE);
        cut = cut.after(seen(true, true, new Belief.Projected(START_C, 0.1, 20_000), RISE));
        assertThat(cut.openMs()).isEqualTo(300_000 + 1_000);
        seconds(100, START_C, 0, RISE);
        assertThat(cut.stopped()).isTrue();
        assertThat(cut.after(seen(false, true, new Belief.Trusted(20), RISE)).stopped()).isTrue();
    }

    @Test
    void aRiseOfAnyKnownSpeedIsHeldAgainstItself() {
        Rate slow = new Rate(RISE / 8, RISE);
        seconds(400, START_C, RISE / 8, slow);
        assertThat(cut.answer()).as("a warm room warms on as before").contains(Answer.WENT_ON);
        cut = CutShort.NONE;
        seconds(240, START_C, 0, slow);
        seconds(160, START_C, -RISE / 2, slow);
        assertThat(cut.answer()).as("a switch against the losses of a wide cone").contains(Answer.STOPPED);
    }
}
