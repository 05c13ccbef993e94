package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Danger: air that returns against a valve that is still shut. */
class ShutValveTest {

    private static Story settling(Story s) {
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE);
        return s;
    }

    @Test
    void theReturnIsAnnouncedTwoMinutesBeforeTheCap() {
        Story s = settling(Story.at(Fitting.SIPHONING));
        s.seconds(455);
        assertThat(s.standing("a")).isEmpty();
        s.seconds(25);
        assertThat(s.standing("a")).containsExactly("air-due");
        long told = s.told().getFirst().told().atMs();
        assertThat(told - s.batch("a").stage().airOff().monoMs()).isLessThanOrEqualTo(480_000);
    }

    @Test
    void whileDrawingItIsAnnouncedForTheTimeAtWhichItReallyReturns() {
        Story s = settling(Story.at(Fitting.SIPHONING));
        s.minutes(7);
        s.does(Step.DRAWING);
        s.seconds(140);
        assertThat(s.standing("a")).isEmpty();
        s.seconds(45);
        assertThat(s.standing("a")).containsExactly("air-due");
    }

    @Test
    void pumpFirstThenTheValveWithinAMinuteIsFine() {
        Story s = settling(Story.at(Fitting.SIPHONING));
        s.does(Step.HANDS_IN);
        s.seconds(55);
        assertThat(s.told("air-shut-in")).isZero();
        s.does(Step.VALVE_OPEN);
        s.minutes(5);
        assertThat(s.told("air-shut-in")).isZero();
    }

    @Test
    void afterThatMinuteItIsToldEveryThreeMinutes() {
        Story s = settling(Story.at(Fitting.SIPHONING));
        s.does(Step.HANDS_IN);
        s.seconds(65);
        assertThat(s.standing("a")).containsExactly("air-shut-in");
        assertThat(s.told().getLast().what()).contains("report 'valve-open'");
        s.minutes(6);
        assertThat(s.told("air-shut-in")).isEqualTo(3);
        s.does(Step.VALVE_OPEN);
        s.minutes(2);
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void shuttingTheValveBeforeASeparationIsNotAnsweredByAnAlarm() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED);
        s.minutes(30);
        s.does(Step.FIRST_SEEN, Step.VALVE_SHUT);
        s.seconds(50);
        s.does(Step.SETTLE);
        s.minutes(2);
        assertThat(s.told()).isEmpty();
    }

    /** Whoever says it every minute does not hold off for ever that the cone has no air. */
    @Test
    void toReportItShutOnceMoreGivesNoOtherMinute() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT);
        s.seconds(40);
        s.does(Step.VALVE_SHUT);
        s.seconds(30);
        assertThat(s.standing("a")).containsExactly("air-shut-in");
        s.does(Step.VALVE_OPEN, Step.VALVE_SHUT);
        s.seconds(55);
        assertThat(s.told("air-shut-in")).as("shut anew").isOne();
    }

    @Test
    void aValveForgottenShutOnCystsIsToldToo() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.VALVE_SHUT);
        s.seconds(70);
        assertThat(s.standing("a")).containsExactly("air-shut-in");
    }

    private static String shown(Story s, String property) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now())
                .getOrDefault("homie/5/larkmoor-a/" + property, "");
    }

    /** No air arrives, and then the valve is said to be shut too: that is no end of it. */
    @ParameterizedTest
    @CsvSource({"true, air-failed-animals", "false, air-failed"})
    void airThatFailsIsNotOverSinceItsValveIsShut(boolean hatched, String failed) {
        Story s = Story.at(Fitting.AIR_PROOF);
        s.does(hatched ? new Step[] {Step.STARTED, Step.FIRST_SEEN} : new Step[] {Step.STARTED}).minutes(1);
        s.senses.contact("a.air-proof", Level.OPEN);
        assertThat(s.seconds(40).standing("a")).containsExactly(failed);
        s.did("a", Step.VALVE_SHUT);
        for (int i = 0; i < 130; i++) {
            s.tick();
            assertThat(s.standing("a")).as("%d s after", i).hasSize(1);
            assertThat(shown(s, "$alert/" + failed)).doesNotContain("over since");
            assertThat(shown(s, "hand/alarms")).doesNotContain("its cause is over");
        }
        assertThat(s.standing("a")).containsExactly("air-shut-in");
        assertThat(s.told(failed)).as("once each").isEqualTo(s.told("air-shut-in")).isOne();
    }

    @Test
    void aValveOpenedWithinThatMinuteLeavesTheLackOfAirAsItWasTold() {
        Story s = Story.at(Fitting.AIR_PROOF);
        s.does(Step.STARTED, Step.FIRST_SEEN).minutes(1);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.seconds(40);
        s.does(Step.VALVE_SHUT).seconds(50);
        s.does(Step.VALVE_OPEN).seconds(30);
        assertThat(s.standing("a")).containsExactly("air-failed-animals");
        assertThat(s.told()).hasSize(1);
        assertThat(s.ask("a", new Ask.Withdraw("valve-open")).accepted()).isTrue();
        s.seconds(2);
        assertThat(s.standing("a")).as("shut for more than a minute").containsExactly("air-shut-in");
    }

    /** A slip of the tongue, or a contact before the valve: nobody knows, so both are said. */
    @Test
    void ofAValveSaidToBeShutThoughAirArrivesItIsNotSaidThatNoneDoes() {
        Story s = Story.at(Fitting.AIR_PROOF);
        s.senses.contact("a.air-proof", Level.CLOSED);
        s.does(Step.STARTED, Step.FIRST_SEEN).minutes(1);
        assertThat(s.did("a", Step.VALVE_SHUT).sentence()).doesNotContain("no air gets in");
        assertThat(s.seconds(70).standing("a")).containsExactly("air-shut-in");
        assertThat(shown(s, "$alert/air-shut-in")).startsWith("Cone a: its air valve was reported shut, "
                + "though its air contact showed air after that (one before the valve does so anyway: look "
                + "at the bubbles), since ").contains(". Open the air valve now, or "
                + "report 'valve-open' if it is open: no air gets in through a shut one. ");
        assertThat(shown(s, "hand/next-step")).doesNotContain("it is shut");
        String told = shown(s, "$alert/air-shut-in");
        s.senses.contact("a.air-proof", Level.OPEN);
        s.seconds(60);
        assertThat(shown(s, "$alert/air-shut-in")).as("what was so stays true").isEqualTo(told);
        assertThat(s.told()).hasSize(1);
    }

    @Test
    void aValveShutWhereNoLackWasToldBeginsNone() {
        Story s = Story.at(Fitting.AIR_PROOF);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT);
        s.senses.contact("a.air-proof", Level.OPEN);
        assertThat(s.seconds(50).standing("a")).isEmpty();
        assertThat(s.seconds(60).standing("a")).containsExactly("air-shut-in");
        assertThat(s.told()).hasSize(1);
    }

    /** By the book: the valve is turned, the contact opens at once, and then the hand is free to report. */
    @Test
    void airThatAShutValveStoppedBeforeThatWasReportedIsNoFailure() {
        Story s = Story.at(Fitting.AIR_PROOF);
        s.does(Step.STARTED, Step.FIRST_SEEN).minutes(1);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.seconds(12).does(Step.VALVE_SHUT).seconds(40);
        s.does(Step.SETTLE).minutes(2);
        assertThat(s.told()).isEmpty();
    }

    @Test
    void withoutThisGuardNobodyWouldOpenTheValve() {
        Story s = settling(Story.without(ShutValve.class, Fitting.SIPHONING)).minutes(30);
        assertThat(s.told("air-shut-in") + s.told("air-due")).isZero();
    }
}
