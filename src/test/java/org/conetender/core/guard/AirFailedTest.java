package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.alarm.Message;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: air that fails though it is commanded on. */
class AirFailedTest {

    private static Story failing(Story s, Step... steps) {
        s.does(steps);
        s.minutes(1);
        s.senses.contact("a.air-proof", Level.OPEN);
        return s;
    }

    @Test
    void cystsWithoutAirAreToldAfterHalfAMinute() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED);
        s.seconds(25);
        assertThat(s.standing("a")).isEmpty();
        s.seconds(10);
        assertThat(s.standing("a")).containsExactly("air-failed");
        assertThat(s.told().getFirst().what()).isEqualTo("its air is switched on but none arrives");
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void onceHatchedItIsToldEveryThreeMinutesFiveTimesAndThenTheSecondPersonIsCalledToo() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN);
        s.minutes(15);
        assertThat(s.told("air-failed-animals")).isEqualTo(5);
        assertThat(s.messages()).noneMatch(Message::second);
        s.minutes(1);
        assertThat(s.messages()).hasSize(6).last().matches(Message::second);
    }

    @Test
    void acknowledgingItSilencesForTenMinutesAtMost() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN);
        s.minutes(1);
        s.ask("a", new Ask.Acknowledge("air-failed-animals"));
        long before = s.told("air-failed-animals");
        s.minutes(9);
        assertThat(s.told("air-failed-animals")).isEqualTo(before);
        s.minutes(2);
        assertThat(s.told("air-failed-animals")).isEqualTo(before + 1);
        s.minutes(4);
        assertThat(s.told("air-failed-animals")).as("the chase goes on").isEqualTo(before + 2);
    }

    @Test
    void acknowledgingALackOfAirForCystsLastsAsLongAsItsCause() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED);
        s.minutes(1);
        s.ask("a", new Ask.Acknowledge("air-failed"));
        s.pass(java.time.Duration.ofHours(2));
        assertThat(s.told("air-failed")).isEqualTo(1);
    }

    @Test
    void itClearsWhenAirFlowsAgain() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED).minutes(2);
        s.senses.contact("a.air-proof", Level.CLOSED);
        s.seconds(65);
        assertThat(s.standing("a")).as("proof is held for 10 s, then the cause must stay away a minute")
                .containsExactly("air-failed");
        s.seconds(10);
        assertThat(s.standing("a")).isEmpty();
    }

    /** What the contact says, second by second, over and over. */
    private static Story chattering(Story s, Level... says) {
        s.does(Step.STARTED, Step.FIRST_SEEN);
        for (int i = 0; i < 180; i++) {
            s.senses.contact("a.air-proof", says[i % says.length]);
            s.tick();
        }
        return s;
    }

    @Test
    void aContactThatChattersDoesNotHoldTheAlarmBack() {
        Level[] mostlyClosed = {Level.OPEN, Level.CLOSED, Level.CLOSED, Level.CLOSED, Level.CLOSED};
        assertThat(chattering(Story.at(Fitting.AIR_PROOF), mostlyClosed).standing("a"))
                .containsExactly("air-failed-animals");
    }

    @Test
    void aContactThatCannotBeReadProvesNothingAfterItSaidNoAir() {
        assertThat(chattering(Story.at(Fitting.AIR_PROOF), Level.OPEN, Level.UNKNOWN, Level.UNKNOWN)
                .standing("a")).containsExactly("air-failed-animals");
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN).seconds(5);
        s.senses.contact("a.air-proof", Level.UNKNOWN);
        assertThat(s.minutes(1).standing("a")).containsExactly("air-failed-animals");
    }

    @Test
    void aContactThatWasNeverOpenAndCannotBeReadCriesNoWolf() {
        assertThat(chattering(Story.at(Fitting.AIR_PROOF), Level.CLOSED, Level.UNKNOWN).told()).isEmpty();
    }

    @Test
    void noAirIsNoFaultWhileItIsMeantToBeOffOrWithoutWater() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(5);
        assertThat(s.told()).isEmpty();
        Story empty = Story.at(Fitting.AIR_PROOF, Fitting.IDLE_AIR);
        empty.senses.contact("a.air-proof", Level.OPEN);
        empty.minutes(10);
        assertThat(empty.told()).isEmpty();
    }

    /** Air comes again, and is proven. */
    private static Story mended(Story s) {
        s.senses.contact("a.air-proof", Level.CLOSED);
        return s.minutes(5);
    }

    @Test
    void naupliiThatWereLongWithoutAirStayInDoubtWhenItIsBack() {
        Story s = mended(failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN).minutes(15));
        assertThat(s.batch("a").marks().words().doubts())
                .containsExactly("no air was seen to arrive for more than 14 min with nauplii in the water");
        assertThat(s.standing("a")).as("the lack itself is over").containsExactly("doubtful");
        s.restart("boot-1", 2_000).minutes(2);
        assertThat(s.standing("a")).contains("doubtful");
        s.ask("a", new Ask.Acknowledge("doubtful"));
        long told = s.told("doubtful");
        s.pass(java.time.Duration.ofHours(6));
        assertThat(s.told("doubtful")).isEqualTo(told);
        assertThat(s.batch("a").marks().words().doubts()).hasSize(1);
    }

    @Test
    void aRestartDoesNotEndTheTimeWithoutAir() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN).minutes(12);
        s.restart("boot-1", 3_000).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        s.minutes(3);
        assertThat(s.batch("a").marks().words().doubts()).hasSize(1);
        Story shut = Story.at(Fitting.SIPHONING).does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT);
        shut.minutes(11).restart("boot-1", 3_000).minutes(2);
        assertThat(shut.batch("a").marks().words().doubts()).isEmpty();
        shut.minutes(3);
        assertThat(shut.batch("a").marks().words().doubts()).hasSize(1);
    }

    @Test
    void norDoesACutThatComesOnTopOfIt() {
        Story s = Story.at(Fitting.SIPHONING).does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT).minutes(9);
        s.restart("boot-2", 4 * 60_000).minutes(2);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("no air");
    }

    /** Ten minutes without air, eight without power, and all is well when it comes back. */
    @Test
    void airThatFailedUntilAShortCutIsCountedWithItThoughItIsBackAfterwards() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN).minutes(10);
        s.senses.contact("a.air-proof", Level.CLOSED);
        s.restart("boot-2", 8 * 60_000).minutes(2);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("no air");
    }

    @Test
    void aMomentWithoutAirBeforeADaemonThatWasLongDownIsNoLack() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN).seconds(20);
        s.senses.contact("a.air-proof", Level.CLOSED);
        s.restart("boot-1", 60 * 60_000).minutes(2);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.told("doubtful")).isZero();
    }

    /** Outputs of a dead daemon let go: the pump ran, and nobody was without air for an hour. */
    @Test
    void aSeparationInWhichTheDaemonWasLongDownIsNoLack() {
        Story s = Story.at().does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE).minutes(5);
        s.restart("boot-1", 60 * 60_000).minutes(2);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }

    /** Nobody knows in the first tick of a life what cannot be set. */
    @Test
    void anOutputThatDoesNotObeyKeepsTheAirAwayThroughARestart() {
        Story s = Story.at().does(Step.STARTED, Step.FIRST_SEEN).minutes(1);
        s.unset.add("a.air-pause");
        s.minutes(12);
        s.unset.clear();
        s.restart("boot-1", 3_000).tick();
        s.unset.add("a.air-pause");
        s.minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        s.minutes(2);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("no air");
    }

    @Test
    void aShortLackOfAirLeavesNoDoubt() {
        Story s = mended(failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN).minutes(12));
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.told("doubtful")).isZero();
    }

    @Test
    void aDenseChargeIsInDoubtSooner() {
        Story s = Story.at(Fitting.AIR_PROOF);
        s.ask("a", new Ask.DidStock("L-0417", 14));
        failing(s, Step.FIRST_SEEN).minutes(4);
        assertThat(s.standing("a")).contains("air-failed-animals").doesNotContain("doubtful");
        s.minutes(1);
        assertThat(s.standing("a")).as("2.5 min at 27 °C, and two by the book").contains("doubtful");
    }

    @Test
    void airThatFailsRightAfterASeparationCountsFromTheMomentItWentOff() {
        Story s = Story.at(Fitting.AIR_PROOF);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.minutes(13);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.standing("a")).doesNotContain("doubtful");
        s.minutes(2);
        assertThat(s.standing("a")).contains("doubtful");
    }

    @Test
    void aSeparationDrawnToItsCapWithTheValveShutAndOpenedByTheBookLeavesNoDoubt() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED);
        s.minutes(30);
        s.does(Step.FIRST_SEEN, Step.VALVE_SHUT);
        s.seconds(50);
        s.does(Step.SETTLE);
        s.minutes(8);
        s.does(Step.DRAWING);
        s.minutes(4);
        assertThat(s.stage()).isEqualTo("ready");
        s.seconds(40);
        s.does(Step.VALVE_OPEN);
        s.minutes(5);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }

    @Test
    void aValveForgottenShutLeavesADoubtThatOutlastsItsOpening() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED);
        s.minutes(30);
        s.does(Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE);
        s.minutes(20);
        assertThat(s.standing("a")).contains("air-shut-in", "doubtful");
        s.does(Step.VALVE_OPEN);
        s.minutes(10);
        assertThat(s.standing("a")).contains("doubtful").doesNotContain("air-shut-in");
    }

    @Test
    void cystsLoseNothingByIt() {
        Story s = mended(failing(Story.at(Fitting.AIR_PROOF), Step.STARTED).minutes(60));
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }

    @Test
    void aMistakenSightOfNaupliiTakesTheDoubtWithIt() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN).minutes(16);
        assertThat(s.batch("a").marks().words().doubts()).hasSize(1);
        assertThat(s.ask("a", new Ask.Withdraw("first-seen")).accepted()).isTrue();
        s.minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }

    @Test
    void withoutThisGuardNobodyWouldBeCalled() {
        Story s = failing(Story.without(AirFailed.class, Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN);
        s.minutes(10);
        assertThat(s.told()).isEmpty();
    }
}
