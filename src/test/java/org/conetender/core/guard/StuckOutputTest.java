package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: any other output that cannot be set. */
class StuckOutputTest {

    private static Story settling(Story s) {
        s.does(Step.STARTED).minutes(3);
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        return s.seconds(5);
    }

    @Test
    void theAirIsNotStoppedThroughAnOutputThatMightNotBringItBack() {
        Story s = settling(Story.at());
        assertThat(s.on("a.air-pause")).isTrue();
        s.unset.add("a.air-pause");
        s.tick();
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.standing("a")).contains("output-stuck");
        assertThat(s.told().getLast().what()).isEqualTo("a.air-pause cannot be set and may be on or off");
    }

    @Test
    void aLampIsToldAndChangesNothingElse() {
        Story s = settling(Story.at());
        s.unset.add("a.lamp");
        s.unset.add("a.trigger");
        s.tick();
        assertThat(s.told().getLast().what()).startsWith("a.lamp and a.trigger cannot be set");
        assertThat(s.stage()).isEqualTo("settling");
        assertThat(s.on("a.air-pause")).isTrue();
        assertThat(s.standing("b")).as("it is not b's lamp").isEmpty();
    }

    @Test
    void theHeartbeatsOwnOutputIsToldOnce() {
        Story s = Story.at(Fitting.HEARTBEAT);
        s.unset.add("site.heartbeat");
        s.minutes(1);
        assertThat(s.told()).singleElement()
                .satisfies(a -> assertThat(a.what()).startsWith("site.heartbeat cannot be set"));
        assertThat(s.standing("a")).containsExactly("output-stuck");
        assertThat(s.standing("b")).as("told with the first cone").isEmpty();
    }

    @Test
    void heaterAndCutOutAreAnotherGuardsAffair() {
        Story s = Story.at();
        s.unset.add("a.heat");
        s.unset.add("a.cut-out");
        s.minutes(1);
        assertThat(s.found("output-stuck")).as("each may be the first").isEmpty();
        assertThat(s.standing("a")).containsExactly("heater-stuck");
    }

    @Test
    void withoutThisGuardNobodyWouldKnow() {
        Story s = settling(Story.without(StuckOutput.class));
        s.unset.add("a.air-pause");
        s.minutes(1);
        assertThat(s.standing("a")).doesNotContain("output-stuck");
        assertThat(s.on("a.air-pause")).isTrue();
    }
}
