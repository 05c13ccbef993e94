package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A daemon over water of its own that is known by now: what the watch finds is named once, switched off,
 * and ends when it should.
 */
@Tag("slow")
class WatchedConeTest extends KnownCone {

    @Test
    void aSwitchThatWeldsIsNamedWithinMinutesAndNothingElseIs() {
        Story s = held(Fitting.ROOM_PROBE);
        basin.power = Basin.Power.WELDED;
        assertThat(called(s, 60)).as("minutes").isLessThan(10);
        assertThat(basin.waterC).isLessThan(27.6);
        assertThat(s.on("a.cut-out")).isFalse();
        basin.power = Basin.Power.DEAD; // what an open cut-out makes of it
        s.minutes(60).minutes(60);
        assertThat(s.standing("a")).containsExactly("welded");
    }

    @Test
    void whatWasMendedIsReleasedAndTheWatchBeginsAnew() {
        Story s = held(Fitting.ROOM_PROBE);
        basin.power = Basin.Power.WELDED;
        called(s, 60);
        s.ask("a", new Ask.Acknowledge("welded"));
        assertThat(s.minutes(2).standing("a")).as("it may heat on yet").containsExactly("welded");
        basin.power = Basin.Power.OBEYS;
        s.minutes(20).ask("a", new Ask.Acknowledge("welded"));
        s.minutes(60).minutes(60);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.state().book().cone("a").latches()).isEmpty();
        assertThat(basin.waterC).isBetween(26.5, 27.5);
    }

    @Test
    void aHeaterThatDiesIsNamedBeforeTheWaterIsCold() {
        Story s = held(Fitting.ROOM_PROBE);
        basin.power = Basin.Power.DEAD;
        assertThat(called(s, 120)).as("minutes").isLessThan(45);
        assertThat(basin.waterC).isGreaterThan(25);
        s.minutes(60);
        assertThat(s.standing("a")).containsExactly("no-effect");
        assertThat(s.on("a.cut-out")).isFalse();
    }

    /** Its energy alone would pass for a good heater's: the losses that are taken for granted hide it. */
    @Test
    void evenAnInsulatedConeInAColdRoomDoesNotHideADeadHeater() {
        basin = new Basin(new Basin.Build(25, 2, 0.3, 45, 15), 24, 3);
        basin.roomC = 14;
        Story s = Story.at(Fitting.ROOM_PROBE);
        held(s);
        basin.power = Basin.Power.DEAD;
        assertThat(called(s, 240)).as("minutes").isLessThan(180);
        assertThat(s.standing("a")).containsExactly("no-effect");
        assertThat(s.state().live().cones().get("a").judged().heat().failed()).isFalse();
    }

    private int secondsUntilOff(Story s) {
        int n = 0;
        for (; n < 60 && s.on("a.cut-out"); n++) {
            s.tick();
        }
        return n;
    }

    @Test
    void aProbeInTheAirStopsTheHeatWithinSecondsAndTheThirdTimeForGood() {
        Story s = held(Fitting.ROOM_PROBE);
        for (int i = 0; i < 3; i++) {
            basin.probe = Basin.Probe.IN_AIR;
            assertThat(secondsUntilOff(s)).isLessThanOrEqualTo(15);
            basin.probe = Basin.Probe.IN_WATER;
            s.minutes(2);
            assertThat(s.on("a.cut-out")).isFalse();
            s.minutes(8);
            assertThat(s.on("a.cut-out")).as("after departure %d", i + 1).isEqualTo(i < 2);
        }
        assertThat(s.standing("a")).containsExactly("probe-unsteady");
        s.ask("a", new Ask.Acknowledge("probe-unsteady"));
        s.minutes(30);
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void handsALidATopUpAndASampleAreNoFaults() {
        Story s = held(Fitting.ROOM_PROBE);
        s.does(Step.HANDS_IN);
        basin.probe = Basin.Probe.IN_AIR;
        s.minutes(10);
        basin.probe = Basin.Probe.IN_WATER;
        s.minutes(50);
        basin.lossFactor = 1.5;
        s.minutes(30);
        basin.lossFactor = 1;
        s.minutes(30);
        s.does(Step.TOPPED_UP);
        basin.topUp(0.15, 18);
        s.minutes(60);
        basin.probe = Basin.Probe.IN_AIR;
        s.seconds(4);
        basin.probe = Basin.Probe.IN_WATER;
        s.minutes(60);
        assertThat(s.told()).allMatch(a -> a.kind().id().equals("probe"));
        assertThat(s.state().book().cone("a").latches()).isEmpty();
        assertThat(s.standing("a")).isEmpty();
    }

    /** The roof warms up at noon and nobody measures it. @param perHour K */
    @ParameterizedTest
    @ValueSource(doubles = {2, 5})
    void aRoomThatNobodyMeasuresIsNotTakenForAWeldedSwitch(double perHour) {
        Story s = held();
        for (int minute = 0; minute < 240; minute++) {
            basin.roomC = Math.min(33, basin.roomC + perHour / 60);
            s.minutes(1);
        }
        assertThat(s.told()).noneMatch(a -> a.kind().id().equals("welded"));
    }

    /** It is measured, and warms the water past the set-point. */
    @Test
    void aRoomWarmerThanTheWaterIsNotTakenForAWeldedSwitchEither() {
        Story s = held(Fitting.ROOM_PROBE);
        for (int minute = 0; minute < 240; minute++) {
            basin.roomC = Math.min(30, basin.roomC + 5.0 / 60);
            s.senses.room(basin.roomC);
            s.minutes(1);
        }
        assertThat(basin.waterC).as("the room warmed it").isGreaterThan(27.3);
        assertThat(s.told()).isEmpty();
    }

    /** The water is gone or quite another, and nobody said so. */
    @Test
    void whatIsBelievedOnlyForLastingSoLongIsUnknownAndMustAnswerAtLowPower() {
        Story s = held(Fitting.ROOM_PROBE);
        basin.topUp(1, 22);
        s.minutes(18);
        assertThat(s.on("a.cut-out")).isFalse();
        s.minutes(6); // twenty minutes, and three good ones
        var live = s.state().live().cones().get("a");
        assertThat(live.judged().belief().known()).isTrue();
        assertThat(live.judged().heat().responded()).isFalse();
        assertThat(live.judged().thermal().orElseThrow().proof().passed()).isFalse();
        assertThat(live.hold().duty()).isLessThanOrEqualTo(0.25);
        s.minutes(60);
        assertThat(s.state().live().cones().get("a").judged().heat().responded()).isTrue();
        assertThat(s.state().book().cone("a").latches()).isEmpty();
    }

    @Test
    void evenSoAWeldedSwitchIsFoundInIt() {
        Story s = held();
        basin.power = Basin.Power.WELDED;
        assertThat(called(s, 60)).as("minutes").isLessThan(20);
        assertThat(s.standing("a")).containsExactly("welded");
    }

    /** Nobody knows yet whether it is the room: but the water is not left to it meanwhile. */
    @Test
    void whereNobodyMeasuresTheRoomTheCutOutOpensAtOnceAndTheEndOfTheRiseNamesTheSwitch() {
        Story s = held();
        welded = true;
        highestC = 0;
        int seconds = 0;
        for (; seconds < 600 && s.on("a.cut-out"); seconds++) {
            s.tick();
        }
        assertThat(seconds).as("seconds until it opened").isLessThan(300);
        assertThat(s.standing("a")).as("not sure yet").isEmpty();
        assertThat(called(s, 60)).as("minutes until it was").isLessThan(15);
        assertThat(s.standing("a")).containsExactly("welded");
        assertThat(highestC).isLessThan(27.5);
        s.minutes(60);
        assertThat(s.on("a.cut-out")).isFalse();
    }

    /** As much as its heater could, and the roof is so hot that the cut-out changes nothing. */
    @Test
    void warmingThatGoesOnBehindAnOpenCutOutIsNoWeldedSwitch() {
        basin = new Basin(new Basin.Build(8, 2, 1.34, 45, 15), 26, 5);
        basin.roomC = 24;
        Story s = held(new Story(Larkmoor.room().watts(8).build()));
        boolean opened = false;
        basin.roomC = 31;
        for (int i = 0; i < 3 * 3_600; i++) {
            s.tick();
            opened |= s.state().live().cones().get("a").judged().tried().cutShort().openMs() > 0;
        }
        assertThat(opened).as("it was tried").isTrue();
        assertThat(s.told()).noneMatch(a -> a.kind().id().equals("welded"));
        assertThat(s.state().book().cone("a").latches()).isEmpty();
    }
}
