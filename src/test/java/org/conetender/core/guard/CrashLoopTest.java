package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: a daemon that keeps dying. Three unexpected exits within ten minutes lock the heaters. */
class CrashLoopTest {

    private static final long MOMENT = 3_000;

    /** Water just below its set-point, so that heat is wanted now and then and has its effect. */
    private static Story started() {
        Story s = Story.at(Fitting.MAT);
        s.senses.water("a", 26.9);
        s.does(Step.STARTED);
        return s.minutes(15);
    }

    private static Story killed(Story s, int times) {
        for (int i = 0; i < times; i++) {
            s.restart("boot-1", MOMENT).minutes(1);
        }
        return s;
    }

    private static boolean heats(Story s) {
        return s.comesOn("a.heat", 600);
    }

    @Test
    void twoDeathsAreBorneTheThirdLocksTheHeatersAndCallsAPerson() {
        Story s = killed(started(), 2);
        assertThat(heats(s)).isTrue();
        assertThat(s.standing("")).isEmpty();
        s.restart("boot-1", MOMENT).seconds(10);
        assertThat(s.standing("")).containsExactly("crash-loop");
        assertThat(s.found("crash-loop")).singleElement().asString().contains("died three times");
        assertThat(heats(s)).isFalse();
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void deathsFurtherApartAreNoLoop() {
        Story s = started();
        for (int i = 0; i < 5; i++) {
            s.restart("boot-1", MOMENT).minutes(6);
        }
        assertThat(s.told("crash-loop")).isZero();
    }

    @Test
    void whoeverStopsItInGoodOrderIsNotCounted() {
        Story s = started();
        for (int i = 0; i < 6; i++) {
            s.stopAndStart(MOMENT).seconds(20);
        }
        assertThat(s.told("crash-loop")).isZero();
    }

    @Test
    void aPersonReleasesItOnceForAllConesAndItHoldsThroughRestartsUntilThen() {
        Story s = killed(started(), 3);
        s.minutes(30);
        s.stopAndStart(MOMENT).minutes(1);
        assertThat(heats(s)).isFalse();
        assertThat(s.ask("b", new Ask.Acknowledge("crash-loop")).accepted()).isTrue();
        assertThat(heats(s)).isTrue();
        s.minutes(2);
        assertThat(s.standing("")).isEmpty();
    }

    /** What was acknowledged was the loop before. */
    @Test
    void aFurtherLoopIsToldUntilItIsSeenThoughTheDaemonRestarts() {
        Story s = killed(started(), 3);
        assertThat(s.ask("b", new Ask.Acknowledge("crash-loop")).accepted()).isTrue();
        s.seconds(10).restart("boot-1", MOMENT).minutes(1);
        assertThat(s.told("crash-loop")).isEqualTo(2);
        s.stopAndStart(MOMENT).minutes(20);
        assertThat(s.told("crash-loop")).isGreaterThan(3);
    }

    @Test
    void nobodySettlesWhileItLasts() {
        Story s = started();
        s.does(Step.FIRST_SEEN);
        s.minutes(20);
        killed(s, 3);
        assertThat(s.did("a", Step.SETTLE).sentence()).contains("acknowledge 'crash-loop' first");
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void theLastReportIsSetAsideAndSaidSo() {
        Story s = started();
        s.does(Step.TOPPED_UP);
        s.ask("a", new Ask.SetSetpoint(25));
        killed(s, 3);
        assertThat(s.batch("a").marks().setpointC()).isEmpty();
        assertThat(s.batch("a").marks().toppedUp()).isPresent();
        assertThat(s.found("crash-loop")).singleElement().asString()
                .contains("the last report ('setpoint' of cone a) was set aside");
        assertThat(s.paper.facts()).as("nothing is erased").anyMatch(f -> f.toString().contains("25.0"));
    }

    @Test
    void theNextStepIsToSayAgainWhatWasSetAsideAndOnlyThenToAcknowledge() {
        Story s = started();
        s.pass(Duration.ofHours(40));
        s.does(Step.SALTED);
        killed(s, 3);
        assertThat(s.ask("a", new Ask.Acknowledge("crash-loop")).sentence()).endsWith("Next: report again "
                + "how cone a stands; then acknowledge 'crash-loop'; until then the air must run and "
                + "nothing can settle.");
        assertThat(s.did("a", Step.SALTED).sentence()).contains("Next: acknowledge 'crash-loop' first;");
        assertThat(s.ask("a", new Ask.Acknowledge("crash-loop")).sentence())
                .contains("Next: to harvest, report 'settle'");
    }

    /** What was set aside may have been that hands are in the water. */
    @Test
    void noLampBurnsUntilSomebodyHasLooked() {
        Story s = started();
        s.minutes(125);
        assertThat(s.on("a.trigger")).isTrue();
        s.does(Step.HANDS_IN);
        assertThat(s.on("a.trigger")).isFalse();
        killed(s, 3);
        assertThat(s.batch("a").marks().handsIn()).isEmpty();
        assertThat(s.on("a.trigger")).isFalse();
        s.ask("a", new Ask.Acknowledge("crash-loop"));
        s.seconds(3);
        assertThat(s.on("a.trigger")).isTrue();
    }

    /** The cone may be empty by now: an acknowledgement alone must not bring the heat back. */
    @Test
    void heatWaitsUntilSomebodySaysAnewHowTheConeStands() {
        Story s = started();
        s.does(Step.DRAINED);
        killed(s, 3);
        assertThat(s.stage()).isEqualTo("hydrating");
        assertThat(s.ask("a", new Ask.Acknowledge("crash-loop")).sentence())
                .contains("heat stays locked off until you report again how cone a stands, for 'drained' of "
                        + "cone a was set aside");
        assertThat(heats(s)).isFalse();
        s.does(Step.DRAINED);
        s.ask("a", new Ask.Acknowledge("crash-loop"));
        s.seconds(3);
        assertThat(s.standing("")).isEmpty();
        assertThat(heats(s)).isFalse();
    }

    private static Story shut() {
        Story s = Story.at(Fitting.MAT, Fitting.SIPHONING);
        s.senses.water("a", 26.9);
        s.does(Step.STARTED, Step.FIRST_SEEN).minutes(15);
        s.does(Step.VALVE_SHUT);
        return killed(s, 3);
    }

    /** Nothing else shows that no air gets in; the request itself may be what kills, so it is set aside. */
    @Test
    void aShutValveThatWasSetAsideIsToldAndCountsAsShut() {
        Story s = shut();
        assertThat(s.batch("a").marks().valveShut()).isFalse();
        assertThat(s.standing("")).containsExactly("crash-loop");
        s.seconds(30);
        assertThat(s.standing("a")).containsExactly("air-shut-in");
        assertThat(s.standing("b")).isEmpty();
        s.minutes(14);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString()
                .startsWith("no air was seen to arrive for more than 14 min");
        s.does(Step.VALVE_OPEN).minutes(1);
        assertThat(s.standing("a")).containsExactly("doubtful");
    }

    @Test
    void noHeatComesBackUntilSomebodySaysHowThatValveStands() {
        Story s = shut();
        assertThat(s.ask("a", new Ask.Acknowledge("crash-loop")).sentence())
                .contains("until you report again 'valve-shut' or 'valve-open' of cone a, as it is, for "
                        + "'valve-shut' of cone a was set aside; then acknowledge it once more");
        s.does(Step.TOPPED_UP);
        s.ask("a", new Ask.Acknowledge("crash-loop"));
        s.minutes(16);
        assertThat(heats(s)).as("the water says nothing of the valve").isFalse();
        s.does(Step.VALVE_OPEN);
        s.ask("a", new Ask.Acknowledge("crash-loop"));
        assertThat(s.state().book().lives().lock()).isEmpty();
        assertThat(heats(s)).isTrue();
    }

    @Test
    void whoSaysAgainThatItIsShutIsToldOfItAsBefore() {
        Story s = shut();
        s.does(Step.VALVE_SHUT);
        s.ask("a", new Ask.Acknowledge("crash-loop"));
        s.minutes(2);
        assertThat(s.batch("a").marks().valveShut()).isTrue();
        assertThat(s.standing("a")).containsExactly("air-shut-in");
        assertThat(s.found("shut-valve")).isNotEmpty();
    }

    @Test
    void whatSaysNothingOfAConeNeedNotBeSaidAgain() {
        Story s = started();
        s.ask("", new Ask.Away("neighbour"));
        killed(s, 3);
        assertThat(s.state().book().away()).isEmpty();
        assertThat(s.ask("a", new Ask.Acknowledge("crash-loop")).accepted()).isTrue();
        assertThat(heats(s)).isTrue();
    }

    /** A restart in good order is no death, and takes back nothing that was asked in the life before. */
    @Test
    void whoStopsItInGoodOrderAfterALoopLosesNothing() {
        Story s = started();
        killed(s, 3);
        s.ask("a", new Ask.Acknowledge("crash-loop"));
        s.ask("a", new Ask.SetSetpoint(25));
        s.stopAndStart(MOMENT).seconds(10);
        assertThat(s.standing("")).isEmpty();
        assertThat(s.batch("a").marks().setpointC()).hasValue(25);
        assertThat(heats(s.minutes(1))).isFalse();
        s.senses.water("a", 24);
        s.minutes(25);
        assertThat(heats(s)).as("nothing is locked").isTrue();
    }

    @Test
    void whatWasAskedInALifeThatEndedWellIsNotToBlame() {
        Story s = killed(started(), 2);
        s.ask("a", new Ask.SetSetpoint(25));
        s.stopAndStart(MOMENT).seconds(10);
        s.restart("boot-1", MOMENT).seconds(10);
        assertThat(s.standing("")).containsExactly("crash-loop");
        assertThat(s.batch("a").marks().setpointC()).hasValue(25);
    }

    /** Whoever does what the alarm asks for is not told that it is still to be done. */
    @Test
    void whatIsSaidAgainIsNoLongerSetAside() {
        Story s = started();
        s.ask("a", new Ask.SetSetpoint(25));
        killed(s, 3);
        s.ask("a", new Ask.SetSetpoint(25));
        assertThat(s.ask("a", new Ask.Acknowledge("crash-loop")).sentence())
                .contains("'crash-loop' is acknowledged; heat is allowed again. Next");
    }

    @Test
    void theSitesAlarmIsAcknowledgedWithoutNamingACone() {
        Story s = started();
        s.ask("a", new Ask.SetSetpoint(25));
        killed(s, 3);
        assertThat(s.ask("", new Ask.Acknowledge("crash-loop")).sentence())
                .startsWith("Larkmoor Fry Room: alarm 'crash-loop' is acknowledged")
                .contains("heat is allowed again. Still set aside: 'setpoint' of cone a");
        s.seconds(3);
        assertThat(s.standing("")).isEmpty();
    }

    @Test
    void aReportOfLongAgoIsNotToBlame() {
        Story s = killed(started(), 3);
        assertThat(s.stage()).isEqualTo("hydrating");
        assertThat(s.found("crash-loop")).singleElement().asString().doesNotContain("set aside");
    }

    @Test
    void eachFurtherDeathSetsOneMoreAside() {
        Story s = started();
        s.does(Step.TOPPED_UP);
        s.ask("a", new Ask.SetSetpoint(25));
        killed(s, 4);
        assertThat(s.batch("a").marks().setpointC()).isEmpty();
        assertThat(s.batch("a").marks().toppedUp()).isEmpty();
    }

    /** A heater that pulls the board's supply down looks like this: each life is another boot. */
    @Test
    void aBoardThatKeepsRebootingWithoutAClockIsALoopToo() {
        Story s = started();
        s.wall(0, false);
        for (int i = 2; i < 5; i++) {
            s.restart("boot-" + i, 60_000).seconds(30);
        }
        assertThat(s.standing("")).containsExactly("crash-loop");
    }

    @Test
    void threePowerCutsInAWeekAreNone() {
        Story s = started();
        s.wall(0, false);
        for (int i = 2; i < 5; i++) {
            s.restart("boot-" + i, 60_000).minutes(30);
        }
        assertThat(s.told("crash-loop")).isZero();
    }

    @Test
    void aDiskThatIsFullHidesNoDeathFromThisLife() {
        Story s = killed(started(), 2);
        s.paper.mood(org.conetender.core.Paper.Mood.REFUSING);
        s.restart("boot-1", MOMENT).minutes(1);
        assertThat(s.standing("")).contains("crash-loop");
        assertThat(heats(s)).isFalse();
    }

    @Test
    void withoutThisGuardItWouldHeatOn() {
        Story s = Story.without(CrashLoop.class, Fitting.MAT);
        s.senses.water("a", 26.9);
        s.does(Step.STARTED);
        assertThat(heats(killed(s.minutes(15), 3))).isTrue();
    }

    @Test
    void aSecondReportSetAsideDoesNotHideTheFirst() {
        Story s = started();
        s.ask("", new Ask.Away("neighbour"));
        s.does(Step.DRAINED);
        killed(s, 4);
        s.ask("b", new Ask.Acknowledge("crash-loop"));
        assertThat(heats(s)).as("the cone was emptied, and that report was set aside").isFalse();
    }

    @Test
    void wordsThatSayNothingOfTheConeDoNotFreeItsHeater() {
        Story s = started();
        s.does(Step.DRAINED);
        killed(s, 3);
        s.ask("a", new Ask.SetUsual(Optional.of("L-0418"), Optional.empty(), Optional.empty(),
                Optional.empty()));
        s.ask("a", new Ask.SetSetpoint(26));
        s.ask("a", new Ask.Acknowledge("crash-loop"));
        assertThat(heats(s)).isFalse();
        s.does(Step.DRAINED);
        s.ask("a", new Ask.Acknowledge("crash-loop"));
        assertThat(s.state().book().lives().lock()).isEmpty();
    }
}
