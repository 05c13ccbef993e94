package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.HeatTrack;
import org.junit.jupiter.api.Test;

/** Danger: heater or probe out of the water; power goes in and nothing shows. */
class NoEffectTest {

    private static Story cold(Story s) {
        s.senses.water("a", 22).room(22);
        s.does(Step.STARTED);
        return s;
    }

    @Test
    void powerWithoutEffectGoesOffAndStaysOff() {
        Story s = cold(Story.at(Fitting.ROOM_PROBE)).minutes(60);
        assertThat(s.standing("a")).containsExactly("no-effect");
        assertThat(s.told().getFirst().what()).contains("did not warm as it should");
        assertThat(s.on("a.heat")).isFalse();
        assertThat(s.on("a.cut-out")).isFalse();
        s.minutes(60);
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void theFirstTrialIsMadeAtLowPower() {
        Story s = cold(Story.at(Fitting.ROOM_PROBE));
        int on = 0;
        for (int i = 0; i < 900 && s.standing("a").isEmpty(); i++) {
            s.tick();
            on += s.on("a.heat") ? 1 : 0;
        }
        assertThat(on).as("seconds of heat before it gave up").isBetween(60, 200);
    }

    @Test
    void acknowledgingTriesAgain() {
        Story s = cold(Story.at(Fitting.ROOM_PROBE)).minutes(60);
        assertThat(s.ask("a", new Ask.Acknowledge("no-effect")).accepted()).isTrue();
        s.minutes(5);
        assertThat(s.on("a.cut-out")).isTrue();
        s.minutes(60);
        assertThat(s.told("no-effect")).as("it has no effect still").isGreaterThanOrEqualTo(2);
    }

    @Test
    void waterThatHoldsItsSetPointProvesTheHeater() {
        Story s = Story.at(Fitting.ROOM_PROBE);
        s.does(Step.STARTED);
        s.pass(java.time.Duration.ofHours(6));
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void withoutThisGuardTheHeaterWouldGoOnForHours() {
        Story s = cold(Story.without(NoEffect.class, Fitting.ROOM_PROBE)).pass(java.time.Duration.ofHours(3));
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.on("a.cut-out")).isTrue();
    }

    /** At the floor the water is as warm as its room, and what it loses by evaporation nobody reckons. */
    @Test
    void aHeaterThatHardlyWorksIsNotBlamedForWaterThatDoesNotRise() {
        HeatTrack t = HeatTrack.fresh();
        HeatTrack.Physics p = new HeatTrack.Physics(0.003, 0, true, 0);
        for (int i = 0; i < 600; i++) {
            t = t.after(new HeatTrack.Step(1_000, true, new Belief.Trusted(20 + i * 0.003), p), false);
        }
        assertThat(t.responded()).isTrue();
        HeatTrack idle = t;
        HeatTrack busy = t;
        for (int i = 0; i < 4 * 3_600; i++) {
            idle = idle.after(new HeatTrack.Step(1_000, i % 10 == 0, new Belief.Trusted(20), p), false);
            busy = busy.after(new HeatTrack.Step(1_000, i % 10 < 9, new Belief.Trusted(20), p), false);
            assertThat(idle.failed()).as("second " + i).isFalse();
        }
        assertThat(busy.failed()).as("one that works hard for nothing is").isTrue();
    }
}
