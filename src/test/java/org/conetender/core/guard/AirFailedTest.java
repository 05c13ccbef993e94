package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
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
    void oncehatchedItIsToldEveryThreeMinutes() {
        Story s = failing(Story.at(Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN);
        s.minutes(31);
        assertThat(s.told("air-failed-animals")).isEqualTo(11);
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

    @Test
    void withoutThisGuardNobodyWouldBeCalled() {
        Story s = failing(Story.without(AirFailed.class, Fitting.AIR_PROOF), Step.STARTED, Step.FIRST_SEEN);
        s.minutes(10);
        assertThat(s.told()).isEmpty();
    }
}
