package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.Story;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.hatch.Development;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** What a life of the process takes over from the checkpoint of how long the animals had no air. */
class BreathBegunTest {

    private static final long MINUTE = 60_000;
    private static final Breath ALL_SPENT = new Breath(1, 0, 0);

    private static Story story(Step... steps) {
        return Story.at().does(Step.STARTED).does(steps).minutes(2);
    }

    private static Optional<Checkpoint> kept(Moment at, Optional<Checkpoint.Air> air) {
        return Optional.of(new Checkpoint(at, List.of(), List.of(
                new Checkpoint.ConePoint("b", 1, Development.NONE, new Checkpoint.At(at.boot(), 0),
                        OptionalDouble.empty(), Optional.of(new Checkpoint.Air(0.9, 999_999))),
                new Checkpoint.ConePoint("a", 1, Development.NONE, new Checkpoint.At(at.boot(), 0),
                        OptionalDouble.empty(), air))));
    }

    private static Breath begun(Story s, double spent, long withoutMs, Moment now) {
        return Breath.begun("a", s.state().book(), kept(s.now(), Optional.of(new Checkpoint.Air(spent,
                withoutMs))), now);
    }

    private static Moment otherBoot(Story s, long offMs) {
        return new Moment("boot-2", 0, s.now().wallMs() + offMs, true);
    }

    @Test
    void airThatCameRanOnWhileTheDaemonWasDown() {
        Story s = story(Step.FIRST_SEEN);
        Breath b = begun(s, 0.8, 0, s.now().plusMs(10 * MINUTE));
        assertThat(b.spent()).isCloseTo(0.8 * Math.exp(-0.75), within(1e-9));
        assertThat(b.withoutMs()).isZero();
        assertThat(begun(s, 0.1, 0, s.now().plusMs(MINUTE)).restMs()).isZero();
    }

    @Test
    void airThatDidNotComeWentOnNotComing() {
        Story s = story(Step.FIRST_SEEN);
        assertThat(begun(s, 0.3, MINUTE, s.now().plusMs(3 * MINUTE))).isEqualTo(new Breath(1, 4 * MINUTE,
                0));
    }

    /** A dead daemon opens no valve. */
    @Test
    void whatWasToldSinceKeepsItAwayToo() {
        Story s = story(Step.FIRST_SEEN, Step.VALVE_SHUT);
        assertThat(begun(s, 0, 0, s.now().plusMs(9 * MINUTE))).isEqualTo(new Breath(1, 9 * MINUTE, 0));
        assertThat(begun(s, 0, 5, otherBoot(s, 9 * MINUTE)).withoutMs())
                .isBetween(9 * MINUTE - 15_000, 9 * MINUTE + 5);
    }

    /** Nor does it keep a pump off: its outputs let go. */
    @Test
    void aSeparationLastsNoLongerThanTheDaemon() {
        Story s = story(Step.FIRST_SEEN, Step.SETTLE);
        assertThat(begun(s, 0, 9, s.now().plusMs(2 * MINUTE - 1)))
                .isEqualTo(new Breath(1, 2 * MINUTE + 8, 0));
        assertThat(begun(s, 0, 9, s.now().plusMs(2 * MINUTE))).isEqualTo(ALL_SPENT);
        assertThat(begun(s, 0, 9, otherBoot(s, MINUTE))).as("it is judged with the cut").isEqualTo(ALL_SPENT);
        Story shut = story(Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE);
        assertThat(begun(shut, 0, 9, shut.now().plusMs(9 * MINUTE))).isEqualTo(new Breath(1, 9 * MINUTE + 9,
                0));
    }

    /** Minutes may be refused by a full disk where reports are not. */
    @Test
    void whatEndedAfterTheCheckpointIsMissingFromThenOn() {
        for (Step[] told : new Step[][] {{Step.SETTLE, Step.HANDS_IN}, {Step.VALVE_SHUT, Step.VALVE_OPEN}}) {
            Story s = story(Step.FIRST_SEEN);
            Moment then = s.now();
            s.minutes(1).does(told[0]).minutes(9);
            s.does(told[1]).minutes(2);
            Optional<Checkpoint> old = kept(then, Optional.of(new Checkpoint.Air(0, 0)));
            Breath b = Breath.begun("a", s.state().book(), old, s.now());
            assertThat(b.spent()).as(told[0].word()).isCloseTo(Math.exp(-4.5 * 2 / 60), within(0.01));
            assertThat(b.withoutMs()).isZero();
            assertThat(Breath.begun("a", s.state().book(), old, otherBoot(s, MINUTE))).isEqualTo(ALL_SPENT);
            assertThat(begun(s, 0.5, 0, s.now()).spent()).as("it is older than a new one").isEqualTo(0.5);
        }
    }

    /** Shorter than half a minute it is a contact that trembles. */
    @Test
    void aMomentWithoutAirTellsNothingOfALongTimeAfterIt() {
        Story s = story(Step.FIRST_SEEN);
        assertThat(begun(s, 0, 29_999, s.now().plusMs(9 * MINUTE))).isEqualTo(new Breath(1, 29_999, 0));
        assertThat(begun(s, 0, 29_999, s.now().plusMs(MINUTE))).isEqualTo(new Breath(1, 89_999, 0));
        assertThat(begun(s, 0, 30_000, s.now().plusMs(9 * MINUTE))).isEqualTo(new Breath(1, 9 * MINUTE
                + 30_000, 0));
    }

    @Test
    void acrossACutTheTimeWithoutIsAsLongAsItSurelyWas() {
        Story s = story(Step.FIRST_SEEN);
        Breath b = begun(s, 0, 5 * MINUTE, otherBoot(s, 8 * MINUTE));
        assertThat(b.withoutMs()).isBetween(13 * MINUTE - 15_000, 13 * MINUTE);
        assertThat(begun(s, 0, 5 * MINUTE, new Moment("boot-2", 20_000, 0, false)).withoutMs())
                .as("no clock").isBetween(5 * MINUTE, 5 * MINUTE + 20_000);
        assertThat(begun(s, 0, 0, otherBoot(s, 8 * MINUTE))).as("it is judged by its own guard")
                .isEqualTo(ALL_SPENT);
    }

    @Test
    void whatNoCheckpointTellsMayAllBeSpent() {
        Story s = story(Step.FIRST_SEEN);
        assertThat(Breath.begun("a", s.state().book(), Optional.empty(), s.now())).isEqualTo(ALL_SPENT);
        assertThat(Breath.begun("a", s.state().book(), kept(s.now(), Optional.empty()), s.now()))
                .as("an older release wrote it").isEqualTo(ALL_SPENT);
    }

    @Test
    void whereNoAnimalsCanBeNothingIsMissing() {
        Story s = story();
        assertThat(begun(s, 0.9, 9, s.now())).isEqualTo(Breath.begun("a", s.state().book(), Optional.empty(),
                s.now()));
        assertThat(begun(s, 0.9, 9, s.now()).spent()).isZero();
    }

    @Test
    void whoeverAWithdrawalBringsBackIsMissingWhatTheyWere() {
        Story s = story(Step.FIRST_SEEN, Step.DRAINED);
        assertThat(begun(s, 0.9, 9, s.now().plusMs(MINUTE))).isEqualTo(new Breath(1, MINUTE + 9, 0));
        assertThat(s.ask("a", new Ask.Withdraw("drained")).accepted()).isTrue();
        assertThat(begun(s, 0.9, 9, s.now().plusMs(MINUTE))).isEqualTo(new Breath(1, MINUTE + 9, 0));
    }
}
