package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: air that returns against a valve that is still shut. */
class ShutValveTest {

    private static Story settling(Story s) {
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE);
        return s;
    }

    @Test
    void theReturnIsAnnouncedTwoMinutesBeforeTheCap() {
        Story s = settling(Story.at(Fitting.SIPHONING));
        s.seconds(470);
        assertThat(s.standing("a")).isEmpty();
        s.seconds(10);
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

    @Test
    void withoutThisGuardNobodyWouldOpenTheValve() {
        Story s = settling(Story.without(ShutValve.class, Fitting.SIPHONING)).minutes(30);
        assertThat(s.told("air-shut-in") + s.told("air-due")).isZero();
    }
}
