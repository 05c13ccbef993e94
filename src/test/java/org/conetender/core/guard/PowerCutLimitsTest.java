package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.Story;
import org.conetender.core.batch.Bridge;
import org.conetender.core.batch.Change;
import org.conetender.core.hatch.Growth;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Span;
import org.junit.jupiter.api.Test;

/** Which cuts are held against a batch, to the millisecond. */
class PowerCutLimitsTest {

    private static final long HALF_HOUR = 30 * 60_000;
    private static final long MINUTE = 60_000;
    private static final Change SWIM = new Change.Told(new Ask.Did(Step.FIRST_SEEN));

    private final Shown shown = new Shown();
    private final PowerCut guard = new PowerCut();
    private long downMs = HALF_HOUR;

    private View cut(boolean clock, Step... steps) {
        Story s = shown.story();
        s.does(steps).minutes(2);
        if (!clock) {
            s.wall(0, false);
        }
        s.restart("boot-2", downMs);
        if (!clock) {
            s.wall(-9_000_000_000L, false);
        }
        s.seconds(3);
        return shown.view();
    }

    private View swimming(boolean clock) {
        return cut(clock, Step.STARTED, Step.FIRST_SEEN);
    }

    private static Span length(View v) {
        return v.book().boots().heard(v.now()).cuts().getLast().off();
    }

    private static View cap(View v, long settledMs) {
        return Shown.caps(v, new View.Caps(settledMs, 0, 0));
    }

    private Optional<Boolean> doubted(View v) {
        return guard.look(v).stream().map(f -> f.doubt().isPresent()).findFirst();
    }

    /** So much monotonic time after the boot. */
    private static View at(View v, long monoMs) {
        return Shown.later(v, monoMs - v.now().monoMs());
    }

    @Test
    void aCutAsLongAsTheCapIsBorne() {
        downMs = 8 * MINUTE; // which is borne, and so not marked yet
        View v = swimming(true);
        assertThat(length(v).bounded()).isTrue();
        assertThat(doubted(cap(v, length(v).mostMs()))).isEmpty();
        assertThat(doubted(cap(v, length(v).mostMs() - 1))).contains(true);
    }

    @Test
    void whereNobodyKnowsItsLengthOnlyWhatItSurelyLastedMarksAtOnce() {
        View v = swimming(false);
        assertThat(length(v).bounded()).isFalse();
        assertThat(doubted(cap(v, length(v).leastMs()))).as("it is told").contains(false);
        assertThat(doubted(cap(v, length(v).leastMs() - 1))).contains(true);
    }

    @Test
    void aClockIsWaitedForAnHour() {
        View v = cap(swimming(false), MINUTE);
        assertThat(doubted(at(v, Growth.WAIT_MS - 1))).contains(false);
        assertThat(doubted(at(v, Growth.WAIT_MS))).contains(true);
    }

    @Test
    void waterThatNobodyHasReadIsWaitedForAMinute() {
        View v = Shown.water(cap(swimming(true), MINUTE), new Belief.Untrusted("silent"));
        long begun = v.scene().begun().monoMs();
        assertThat(doubted(at(v, begun + MINUTE - 1))).contains(false);
        assertThat(doubted(at(v, begun + MINUTE))).contains(true);
    }

    @Test
    void afterAnHourAndTwoMinutesWhatWasBorneIsForgotten() {
        downMs = 8 * MINUTE; // which is borne, and so not marked yet
        View v = cap(swimming(true), MINUTE);
        assertThat(doubted(at(v, Growth.WAIT_MS + 2 * MINUTE - 1))).contains(true);
        View over = at(v, Growth.WAIT_MS + 2 * MINUTE);
        assertThat(doubted(over)).isEmpty();
        assertThat(doubted(Shown.noting(over, "a", new Change.Doubted("too warm")))).isEmpty();
        assertThat(doubted(Shown.noting(over, "a", new Change.Doubted("the power was off for 30 min"))))
                .as("what was marked is told on").contains(true);
    }

    @Test
    void whatIsDrawnOffHasNoPartInIt() {
        View v = cap(swimming(true), MINUTE);
        assertThat(doubted(v)).isPresent();
        assertThat(doubted(Shown.noting(v, "a", new Change.Told(new Ask.Did(Step.DRAINED))))).isEmpty();
        assertThat(doubted(cap(cut(true, Step.STARTED), MINUTE))).as("cysts bear it").isEmpty();
    }

    @Test
    void whatSwimsWithinAMinuteOfTheStartMayHaveSwumBefore() {
        View v = cap(cut(true, Step.STARTED), MINUTE);
        long begun = v.scene().begun().monoMs();
        assertThat(doubted(Shown.noting(at(v, begun + MINUTE - 1), "a", SWIM))).contains(true);
        assertThat(doubted(Shown.noting(at(v, begun + MINUTE), "a", SWIM))).isEmpty();
    }

    @Test
    void afterATimeThatWasBridgedAnHourLonger() {
        View v = cap(cut(true, Step.STARTED), MINUTE);
        long seen = v.now().monoMs();
        View bridged = Shown.noting(v, "a", new Change.Bridged(new Bridge(v.scene().begun(), v.now(),
                new Bridge.Ends(27, 23, 18, Cooling.nominal(2.4)))));
        assertThat(doubted(Shown.noting(at(bridged, seen + Growth.WAIT_MS + MINUTE - 1), "a", SWIM)))
                .contains(true);
        assertThat(doubted(Shown.noting(at(bridged, seen + Growth.WAIT_MS + MINUTE), "a", SWIM))).isEmpty();
        assertThat(doubted(Shown.noting(at(v, seen + Growth.WAIT_MS + MINUTE - 1), "a", SWIM))).isEmpty();
    }

    @Test
    void aMarkWithoutALengthIsTakenBackOnceAllAreKnownWhileTheySwim() {
        String mark = "the power was off for an unknown time with nauplii in the water";
        Change doubt = new Change.Doubted(mark);
        assertThat(guard.takesBack(Shown.noting(swimming(true), "a", doubt))).containsExactly(mark);
        assertThat(guard.takesBack(Shown.noting(swimming(false), "a", doubt))).isEmpty();
        View cysts = cut(true, Step.STARTED);
        assertThat(guard.takesBack(Shown.noting(cysts, "a", doubt))).as("none swam").containsExactly(mark);
        for (String other : new String[] {"the power was off for about 30 min with nauplii in the water",
            "the power was off for about 30 min, soon after another time without air, with nauplii in it",
            "for an unknown time nobody looked"}) {
            assertThat(guard.takesBack(Shown.noting(swimming(true), "a", new Change.Doubted(other))))
                    .as(other).isEmpty();
        }
    }

    @Test
    void aMarkOfALengthThatNoCutHasIsTakenBackOnceAllAreKnown() {
        String mark = "the power was off for about 3 min with nauplii in the water";
        Change doubt = new Change.Doubted(mark);
        assertThat(guard.takesBack(Shown.noting(swimming(true), "a", doubt))).containsExactly(mark);
        assertThat(guard.takesBack(Shown.noting(swimming(false), "a", doubt))).as("no clock").isEmpty();
        View gone = Shown.noting(swimming(true), "a", doubt);
        assertThat(guard.takesBack(Shown.noting(gone, "a", new Change.Told(new Ask.Did(Step.DRAINED)))))
                .as("it is over").isEmpty();
    }
}
