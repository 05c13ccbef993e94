package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What an adversary found: each was red when it was written. */
class Adversary19Test {

    private static final long MINUTE = 60_000;

    private static Story hatched(Fitting... f) {
        return Story.at(f).does(Step.STARTED, Step.FIRST_SEEN).minutes(5);
    }

    private static List<String> doubts(Story s) {
        return s.batch("a").marks().words().doubts();
    }

    private static double degreeHours(Story s) {
        return s.state().live().cones().get("a").growth().done().degreeHours();
    }

    /** The same without a restart is refused (SettleAgainTest). */
    @Test
    void aRestartGivesNoAirThroughAValveThatIsShut() {
        Story s = hatched(Fitting.SIPHONING).does(Step.VALVE_SHUT).minutes(9);
        assertThat(s.did("a", Step.SETTLE).accepted()).as("before").isFalse();
        s.restart("boot-1", 3_000).seconds(10);
        Result.Reply r = s.did("a", Step.SETTLE);
        assertThat(r.accepted()).as(r.sentence()).isFalse();
    }

    @Test
    void norDoesItEndTheTimeWithoutAir() {
        Story s = hatched(Fitting.SIPHONING).does(Step.VALVE_SHUT).minutes(11);
        s.restart("boot-1", 3_000).minutes(8);
        assertThat(doubts(s)).isNotEmpty();
    }

    @Test
    void norWhereAContactSaidThatNoneCame() {
        Story s = hatched(Fitting.AIR_PROOF);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.minutes(12).restart("boot-1", 3_000).minutes(8);
        assertThat(doubts(s)).isNotEmpty();
    }

    /** Air was off for the separation, and then by the cut: 19 minutes in one go, of which 14 are too long. */
    @Test
    void aCutThatFollowsUponASeparationIsCountedWithIt() {
        Story s = hatched().does(Step.SETTLE).minutes(7);
        s.does(Step.DRAWING).minutes(4);
        assertThat(s.on("a.air-pause")).isTrue();
        s.restart("boot-2", 8 * MINUTE).minutes(2);
        assertThat(doubts(s)).isNotEmpty();
    }

    /** Twenty-four minutes without air and two with it. */
    @Test
    void cutsWithAMinuteOfAirBetweenThemAreCountedTogether() {
        Story s = hatched().restart("boot-2", 8 * MINUTE).minutes(1);
        assertThat(doubts(s)).isEmpty();
        s.restart("boot-3", 8 * MINUTE).minutes(1);
        s.restart("boot-4", 8 * MINUTE).minutes(2);
        assertThat(doubts(s)).isNotEmpty();
    }

    /** What is left after a part was drawn stands below the contact, and its animals breathe. */
    @Test
    void aContactThatIsOpenForGoodReasonStopsNoAirAtASlip() {
        Story s = hatched(Fitting.LEVEL).does(Step.SETTLE).minutes(7);
        s.does(Step.DRAWING, Step.PART_DRAWN);
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(25);
        s.does(Step.DRAINED).seconds(5);
        assertThat(s.on("a.air-pause")).as("it can still be withdrawn").isFalse();
    }

    @ParameterizedTest
    @EnumSource(value = Step.class, names = {"DRAINED", "ABANDONED"})
    void aBatchThatWasSaidToBeOverByMistakeKeepsItsHoursThroughARestart(Step slip) {
        Story s = Story.at().does(Step.STARTED);
        s.pass(Duration.ofHours(11));
        double own = degreeHours(s);
        System.out.println("READY " + s.state().live().cones().get("a").outlook().forecast().map(f -> f.ready()));
        s.does(slip).minutes(2);
        s.restart("boot-1", 3_000).seconds(10);
        assertThat(s.ask("a", new Ask.Withdraw(slip.word())).accepted()).isTrue();
        s.minutes(2);
        System.out.println("HOURS " + slip + " " + own + " -> " + s.state().live().cones().get("a").growth()
                .done() + " " + s.state().live().cones().get("a").outlook().forecast().map(f -> f.ready()));
        assertThat(degreeHours(s)).isCloseTo(own, within(3.0));
    }

    @Test
    void aMistakenSightOfNaupliiTakesTheDoubtOfACutWithIt() {
        Story s = hatched().restart("boot-2", 15 * MINUTE).minutes(1);
        assertThat(doubts(s)).hasSize(1);
        assertThat(s.ask("a", new Ask.Withdraw("first-seen")).accepted()).isTrue();
        s.minutes(2);
        assertThat(s.stage()).isEqualTo("hydrating");
        assertThat(doubts(s)).isEmpty();
    }

    /** Somebody was there until now, and nobody has been waited for yet. */
    @Test
    void whoLeavesLateFindsNoBatchSpoiledByIt() {
        Story s = Story.at().does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.pass(Duration.ofHours(13));
        assertThat(doubts(s)).isEmpty();
        assertThat(s.ask("", new Ask.Away("neighbour")).accepted()).isTrue();
        s.minutes(1);
        s.ask("", new Ask.Away(""));
        assertThat(doubts(s)).isEmpty();
    }

    /** The pause is still in force as far as anybody knows. */
    @Test
    void airThatCannotBeSwitchedOnIsNotSaidToBeOn() {
        Story s = hatched().does(Step.SETTLE);
        s.unset.add("a.air-pause");
        s.minutes(12);
        System.out.println("BACK " + s.told());
        assertThat(s.told("air-back")).isZero();
    }
}
