package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.Losses;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Danger: heater or probe out of the water; power goes in and nothing shows. */
@Tag("slow")
class NoEffectTest {

    private static Story cold(Story s) {
        s.senses.water("a", 22).room(22).dead("a");
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
        assertThat(s.ask("a", new Ask.Alarms()).sentence()).as("a dead heater that nobody mended")
                .contains("the heat is locked off, so that its cause cannot show").doesNotContain("is over");
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

    /** Most of the time its last reading is too old to be called fresh, and never too old to be used. */
    @Test
    void aBusThatAnswersEveryFortySecondsHidesNothing() {
        Story s = Story.at(Fitting.ROOM_PROBE).each(x -> {
            long nowMs = x.now().monoMs();
            if (nowMs % 40_000 == 0) {
                x.senses.water("a", 22 + 0.0625 * (nowMs / 40_000 % 2)).silent("a-water", nowMs);
            }
        });
        s.senses.room(22).dead("a");
        s.does(Step.STARTED).minutes(60);
        assertThat(s.standing("a")).containsExactly("no-effect");
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void waterThatHoldsItsSetPointProvesTheHeater() {
        Story s = over(Story.at(Fitting.ROOM_PROBE), new Basin(Basin.Build.USUAL, 27, 1));
        s.does(Step.STARTED);
        hours(s, 6);
        assertThat(s.standing("a")).isEmpty();
    }

    private static Story over(Story s, Basin basin) {
        s.senses.room(basin.roomC);
        return s.each(x -> {
            s.senses.water("a", basin.second(x.on("a.heat") && x.on("a.cut-out")));
            s.senses.frozen("a-water");
        });
    }

    /** In steps of a second. */
    private static void hours(Story s, int h) {
        for (int i = 0; i < h * 2; i++) {
            s.minutes(30);
        }
    }

    /** Losses by the bench's own cones; after the restart the heater has to answer again. */
    @ParameterizedTest
    @CsvSource({"1.25,27", "1.4,27", "2.5,27", "1.4,26"})
    void neitherARestartNorAWarmFillMakesASoundHeaterSuspect(double losses, double startC) {
        double nominal = Losses.wattsPerK(2, true);
        Basin b = new Basin(new Basin.Build(25, 2, nominal * losses, 45, 15), startC, 3);
        Story s = over(Story.at(Fitting.ROOM_PROBE), b);
        s.does(Step.STARTED);
        hours(s, 2);
        s.restart("boot-1", 5_000);
        hours(s, 1);
        s.does(Step.TOPPED_UP);
        hours(s, 1);
        assertThat(s.told("no-effect")).isZero();
        assertThat(s.state().live().cones().get("a").judged().heat().responded()).isTrue();
        b.power = Basin.Power.DEAD;
        s.restart("boot-1", 5_000);
        hours(s, 1);
        assertThat(s.standing("a")).as("a dead one").containsExactly("no-effect");
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
        HeatTrack.Physics p = new HeatTrack.Physics(0.003, 0, 0, 0, 0,
                true);
        for (int i = 0; i < 600; i++) {
            t = t.after(new HeatTrack.Step(1_000, true, new Belief.Trusted(20 + i * 0.003), p, true), false);
        }
        assertThat(t.responded()).isTrue();
        HeatTrack idle = t;
        HeatTrack busy = t;
        for (int i = 0; i < 4 * 3_600; i++) {
            idle = idle.after(new HeatTrack.Step(1_000, i % 10 == 0, new Belief.Trusted(20), p, true), false);
            busy = busy.after(new HeatTrack.Step(1_000, i % 10 < 9, new Belief.Trusted(20), p, true), false);
            assertThat(idle.failed()).as("second " + i).isFalse();
        }
        assertThat(busy.failed()).as("one that works hard for nothing is").isTrue();
    }
}
