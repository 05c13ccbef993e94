package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: heat without stirring. */
class StillWaterTest {

    private static int heatSeconds(Story s, int of) {
        int on = 0;
        for (int i = 0; i < of; i++) {
            s.tick();
            on += s.on("a.heat") ? 1 : 0;
        }
        return on;
    }

    private static Story cold(Story s) {
        s.senses.water("a", 26.5);
        s.does(Step.STARTED);
        return s.minutes(2);
    }

    @Test
    void anImmersedHeaterIsOffWhileNoAirIsProven() {
        Story s = cold(Story.at(Fitting.AIR_PROOF));
        s.senses.contact("a.air-proof", Level.OPEN);
        assertThat(heatSeconds(s, 400)).isZero();
        assertThat(s.found("still-water")).containsExactly("no air stirs the water");
        s.senses.contact("a.air-proof", Level.CLOSED);
        assertThat(heatSeconds(s, 400)).isPositive();
    }

    @Test
    void anImmersedHeaterIsOffWhileTheValveIsReportedShut() {
        Story s = cold(Story.at());
        s.does(Step.VALVE_SHUT);
        assertThat(heatSeconds(s, 400)).isZero();
        s.does(Step.VALVE_OPEN);
        assertThat(heatSeconds(s, 400)).isPositive();
    }

    @Test
    void aWallMatNeedsNoStirring() {
        Story s = cold(Story.at(Fitting.AIR_PROOF, Fitting.MAT));
        s.senses.contact("a.air-proof", Level.OPEN);
        assertThat(heatSeconds(s, 400)).isPositive();
    }

    @Test
    void heatWaitsUntilTheAirHasReallyComeBack() {
        Story s = cold(Story.at());
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        s.seconds(30);
        assertThat(s.on("a.air-pause")).isTrue();
        assertThat(s.found("still-water")).isNotEmpty();
    }

    @Test
    void withoutThisGuardStillWaterWouldBeHeated() {
        Story s = cold(Story.without(StillWater.class, Fitting.AIR_PROOF));
        s.senses.contact("a.air-proof", Level.OPEN);
        assertThat(heatSeconds(s, 400)).isPositive();
    }
}
