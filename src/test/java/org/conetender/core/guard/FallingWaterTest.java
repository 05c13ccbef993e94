package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Danger: water goes and nobody looks, until the heater stands bare. */
class FallingWaterTest {

    private static final String ALARM = "water-falling";
    /** Five percent of the water in an hour. */
    private static final double PER_MINUTE = 0.05 / 60;

    private final Basin basin = new Basin(Basin.Build.USUAL, 22, 1);

    private Story held(Story s) {
        s.senses.room(20);
        s.each(x -> {
            s.senses.water("a", basin.second(x.on("a.heat") && x.on("a.cut-out")));
            s.senses.frozen("a-water");
        });
        return minutes(s.does(Step.STARTED), 8 * 60);
    }

    private static Story minutes(Story s, int minutes) {
        for (int i = 0; i < minutes; i += 5) {
            s.minutes(5);
        }
        return s;
    }

    private Story seeps(Story s, int minutes) {
        for (int i = 0; i < minutes && !s.standing("a").contains(ALARM); i++) {
            basin.gone += PER_MINUTE;
            s.minutes(1);
        }
        return s;
    }

    @Test
    void waterThatSeepsIsToldLongBeforeTheHeaterIsBareAndHeatGoesOn() {
        Story s = seeps(held(Story.at(Fitting.ROOM_PROBE)), 8 * 60);
        assertThat(s.standing("a")).containsExactly(ALARM);
        assertThat(basin.gone).isBetween(0.1, 0.35);
        assertThat(s.found("falling").getFirst()).matches("about (25|30|35|40|45) % of its water seems to be "
                + "gone: it warms and cools faster than after it was filled");
        assertThat(s.comesOn("a.heat", 1_800)).isTrue();
        assertThat(s.told(ALARM)).isEqualTo(1);
        s.does(Step.HANDS_IN);
        assertThat(s.found("falling")).as("whose hands are in it knows").isEmpty();
    }

    /** It holds the water to a hundredth of a kelvin: only what it is led astray each hour tells of it. */
    @Test
    @Tag("slow")
    void behindASolidStateSwitchItIsToldTooThoughLater() {
        Story s = seeps(held(Story.at(Fitting.ROOM_PROBE, Fitting.SOLID_STATE)), 11 * 60);
        assertThat(s.standing("a")).containsExactly(ALARM);
        assertThat(basin.gone).isBetween(0.1, 0.55);
    }

    @Test
    @Tag("slow")
    void toppedUpBeginsAnewAndTheAlarmEnds() {
        Story s = seeps(held(Story.at(Fitting.ROOM_PROBE)), 8 * 60);
        basin.gone = 0;
        s.does(Step.TOPPED_UP);
        minutes(s, 6 * 60);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.told(ALARM)).isEqualTo(1);
    }

    @Test
    @Tag("slow")
    void aNewFillingWithLessWaterIsNoWaterThatWent() {
        Story s = held(Story.at(Fitting.ROOM_PROBE));
        s.does(Step.DRAINED, Step.CLEANED);
        s.minutes(20);
        basin.gone = 0.3; // as it was poured in
        s.does(Step.STARTED);
        minutes(s, 8 * 60);
        assertThat(s.told(ALARM)).isZero();
    }

    @Test
    @Tag("slow")
    void withoutTheGuardNobodyHearsOfIt() {
        Story s = seeps(held(Story.without(FallingWater.class, Fitting.ROOM_PROBE)), 7 * 60);
        assertThat(s.told(ALARM)).isZero();
    }
}
