package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Watch;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Danger: a heater whose switch no longer opens. */
@Tag("slow")
class WeldedHeaterTest {

    private static final double START_C = 27.4;

    /** A batch whose water stands above its set-point, so that heat is off. */
    private static Story ready(Story s) {
        s.does(Step.STARTED);
        s.minutes(5);
        s.does(Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.minutes(16);
        s.senses.water("a", START_C);
        return s.minutes(10);
    }

    /** What 25 W give to 2 L less its losses: about 0.1 K a minute. */
    private static Story creep(Story s, double kelvin) {
        for (double c = START_C; c < START_C + kelvin; c += 0.1) {
            s.senses.water("a", c);
            s.minutes(1);
        }
        return s;
    }

    @Test
    void waterThatWarmsWhileTheHeaterIsOffOpensTheCutOutAndCallsAPerson() {
        Story s = creep(ready(Story.at(Fitting.ROOM_PROBE)), 0.5);
        assertThat(s.standing("a")).containsExactly("welded");
        assertThat(s.told().getLast().what()).contains("although the heater is switched off")
                .contains("cut-out is open");
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.standing("b")).isEmpty();
    }

    @Test
    void aPersonWhoHasMendedItAcknowledgesAndTheWatchBeginsAnew() {
        Story s = creep(ready(Story.at(Fitting.ROOM_PROBE)), 0.5).minutes(10);
        assertThat(s.ask("a", new Ask.Acknowledge("welded")).accepted()).isTrue();
        s.minutes(10);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.state().book().cone("a").latches()).isEmpty();
    }

    @Test
    void whoAcknowledgesWhileTheWaterStillRisesIsToldAgainWhenItDoesNot() {
        Story s = creep(ready(Story.at(Fitting.ROOM_PROBE)), 0.5);
        assertThat(s.ask("a", new Ask.Acknowledge("welded")).sentence()).contains("stays locked off")
                .contains("with its cause gone");
        s.minutes(5);
        assertThat(s.told("welded")).isEqualTo(1);
        s.senses.water("a", START_C + 0.4);
        s.minutes(6);
        assertThat(s.told("welded")).isEqualTo(2);
        assertThat(Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now())
                .get("homie/5/larkmoor-a/$alert/welded")).contains("; with the heat off that shows no more, "
                        + "but heat stays locked off until this alarm is acknowledged once more, since ")
                .doesNotContain("over now");
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.state().book().cone("a").latches()).hasSize(1);
        s.ask("a", new Ask.Acknowledge("welded"));
        s.minutes(2);
        assertThat(s.state().book().cone("a").latches()).isEmpty();
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void waterThatNobodyCanReadIsNotTakenForMended() {
        Story s = creep(ready(Story.at(Fitting.ROOM_PROBE)), 0.5);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(20);
        s.ask("a", new Ask.Acknowledge("welded"));
        assertThat(s.minutes(1).state().book().cone("a").latches()).hasSize(1);
    }

    @Test
    void inAnEmptyConeTheWordOfWhoMendedItCounts() {
        Story s = creep(ready(Story.at(Fitting.ROOM_PROBE)), 0.5).does(Step.DRAINED);
        s.ask("a", new Ask.Acknowledge("welded"));
        assertThat(s.minutes(1).state().book().cone("a").latches()).isEmpty();
    }

    @Test
    void theLatchOutlivesACoolBatchARestartAndTheNextFilling() {
        Story s = creep(ready(Story.at(Fitting.ROOM_PROBE)), 0.5);
        s.senses.water("a", 25);
        s.minutes(5);
        s.restart("boot-1", 5_000).minutes(2);
        s.does(Step.CLEANED, Step.STARTED);
        s.minutes(20);
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.standing("a")).contains("welded");
    }

    @Test
    void withoutACutOutTheSentenceSaysSo() {
        Story s = creep(ready(Story.at(Fitting.ROOM_PROBE, Fitting.NO_CUT_OUT)), 0.5);
        assertThat(s.told().getLast().what()).contains("no cut-out is fitted");
        s.ask("a", new Ask.Acknowledge("welded"));
        s.minutes(5);
        s.senses.water("a", START_C + 0.4);
        s.minutes(6);
        assertThat(s.told("welded")).isEqualTo(2);
        assertThat(Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now())
                .get("homie/5/larkmoor-a/$alert/welded")).as("nothing hides it")
                .contains("; that is over now, but heat stays locked off");
    }

    @Test
    void aSummerRoomThatNobodyMeasuresIsNotTakenForAWeldedSwitch() {
        Story s = ready(Story.at());
        for (double c = s.senses.shownC("a"); c < 29.5; c += 0.05) {
            s.senses.water("a", c);
            s.minutes(2);
        }
        assertThat(s.standing("a")).isEmpty();
    }

    /** Whether the cut-out opened while a room, or a heater against the losses, warmed it so. */
    private static boolean opensWhileItWarms(Story s) {
        for (double c = START_C; c < 29 && s.on("a.cut-out"); c += 0.05) {
            s.senses.water("a", c);
            s.minutes(2);
        }
        return !s.on("a.cut-out");
    }

    @Test
    void waterAboveItsSetPointThatRisesSlowlyOpensTheCutOutWhateverWasLearnedOfIt() {
        Story s = ready(Story.at());
        assertThat(opensWhileItWarms(s)).isTrue();
        assertThat(s.senses.shownC("a")).isLessThan(START_C + 0.4);
        assertThat(s.standing("a")).as("it may be a warm room").isEmpty();
    }

    /** A hand, a wiped probe, warm water that nobody told of: faster than any heater. */
    @Test
    void waterAboveItsSetPointThatJumpsIsNoWeldedSwitch() {
        Story s = ready(Story.at());
        for (int i = 0; i < 6; i++) {
            s.senses.water("a", START_C + 0.2);
            s.minutes(4);
            s.senses.water("a", START_C);
            s.minutes(4);
        }
        assertThat(s.told("welded")).isZero();
    }

    @Test
    void aRoomThatIsMeasuredLittleCoolerThanTheWaterNamesNoSwitchEither() {
        Story s = ready(Story.at(Fitting.ROOM_PROBE));
        s.senses.room(START_C - 0.5);
        assertThat(opensWhileItWarms(s)).isTrue();
        s.senses.room(START_C - 3);
        s.minutes(30);
        assertThat(s.told("welded")).as("a door, and evening").isZero();
    }

    private static Story oneSwitch(boolean mat) {
        return ready(mat ? Story.at(Fitting.MAT, Fitting.NO_CUT_OUT, Fitting.ROOM_PROBE)
                : Story.at(Fitting.NO_CUT_OUT, Fitting.ROOM_PROBE));
    }

    /** A heater whose only switch does not open, on a hot day: no room warms water so fast. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aRoomThatIsWarmerThanTheWaterHidesNoHeater(boolean mat) {
        Story s = oneSwitch(mat);
        s.senses.room(START_C + 1);
        assertThat(creep(s, 0.8).standing("a")).containsExactly("welded");
    }

    /** Bubbles bring in thrice as much of the room's warmth as the cone's wall. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aRoomThatWarmsTheWaterAsFastAsARoomCanNamesNoSwitch(boolean mat) {
        Story s = oneSwitch(mat);
        s.senses.room(START_C + 3);
        for (double c = START_C; c < START_C + 2; c += 0.05) {
            s.senses.water("a", c);
            s.senses.room(c + 3);
            s.minutes(3);
        }
        assertThat(s.told("welded")).isZero();
    }

    @Test
    void whatMayHaveBeenAWarmRoomIsForgottenWithTheBatch() {
        Story s = ready(Story.at());
        assertThat(opensWhileItWarms(s)).isTrue();
        s.does(Step.DRAINED, Step.CLEANED);
        s.does(Step.STARTED);
        s.senses.water("a", 24);
        assertThat(s.minutes(10).on("a.cut-out")).isTrue();
        ConeJudgement j = s.state().live().cones().get("a").judged();
        assertThat(j.thermal().orElseThrow().watch().suspect()).isEqualTo(Watch.Suspect.NONE);
    }

    /** After the water has cooled for long: the rise is new, whatever it was before. */
    @Test
    void aSwitchThatShortsWhileItIsOffIsFoundThoughTheWaterWasWarmerBefore() {
        Story s = ready(Story.at());
        for (int i = 0; i < 90 * 60; i++) {
            s.senses.water("a", START_C + 1.4 - i * 0.0002);
            s.seconds(1);
        }
        assertThat(s.standing("a")).isEmpty();
        double c = s.senses.shownC("a");
        int seconds = 0;
        while (s.on("a.cut-out") && seconds++ < 600) {
            c += 0.002;
            s.senses.water("a", c);
            s.seconds(1);
        }
        assertThat(seconds).isLessThan(150);
        for (int i = 0; i < 10 * 60; i++) {
            c -= 0.0003;
            s.senses.water("a", c);
            s.seconds(1);
        }
        assertThat(s.standing("a")).contains("welded");
    }

    @Test
    void aRoomThatWarmsOnIsNoWeldedSwitchAndTheCutOutClosesAgain() {
        Story s = ready(Story.at());
        assertThat(opensWhileItWarms(s)).isTrue();
        for (double c = s.senses.shownC("a"); c < 29.5; c += 0.05) {
            s.senses.water("a", c);
            s.minutes(2);
        }
        assertThat(s.standing("a")).isEmpty();
        for (double c = s.senses.shownC("a"); c > 27.2; c -= 0.05) {
            assertThat(s.on("a.cut-out")).as("it may go on warming yet, and wants no heat").isFalse();
            s.senses.water("a", c);
            s.minutes(2);
        }
        s.senses.water("a", 27.05);
        assertThat(s.minutes(2).on("a.cut-out")).isTrue();
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void evenWithoutARoomProbeASwitchThatWeldedIsFoundBeforeTheGuardTemperature() {
        Story s = creep(ready(Story.at()), 2);
        assertThat(s.standing("a")).containsExactly("welded");
    }

    @Test
    void warmWaterPouredInIsNotTakenForAWeldedSwitch() {
        Story s = ready(Story.at(Fitting.ROOM_PROBE));
        s.does(Step.TOPPED_UP);
        s.senses.water("a", 27.9);
        s.minutes(14);
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void withoutThisGuardNobodyWouldKnowUntilTheWaterIsTooHot() {
        Story s = creep(ready(Story.without(WeldedHeater.class, Fitting.ROOM_PROBE)), 2);
        assertThat(s.standing("a")).isEmpty();
    }
}
