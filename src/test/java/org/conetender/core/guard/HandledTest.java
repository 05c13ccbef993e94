package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: hands in the water. */
class HandledTest {

    private static Story incubating(Story s) {
        s.does(Step.STARTED);
        return s.pass(java.time.Duration.ofHours(3));
    }

    @Test
    void handsInStopsHeatAndLightInItsOwnTickAndReturnsByItself() {
        Story s = incubating(Story.at());
        assertThat(s.on("a.trigger") && s.on("a.cut-out")).isTrue();
        s.send("a", new Ask.Did(Step.HANDS_IN));
        s.tick();
        assertThat(s.on("a.trigger") || s.on("a.cut-out") || s.on("a.heat") || s.on("a.air-pause")).isFalse();
        s.minutes(14);
        assertThat(s.on("a.cut-out")).isFalse();
        s.minutes(2);
        assertThat(s.on("a.trigger") && s.on("a.cut-out")).isTrue();
    }

    @Test
    void handsInEndASeparationAndTheAirComesBack() {
        Story s = incubating(Story.at());
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(2);
        assertThat(s.on("a.air-pause") && s.on("a.lamp")).isTrue();
        s.send("a", new Ask.Did(Step.HANDS_IN));
        s.tick();
        assertThat(s.on("a.air-pause") || s.on("a.lamp")).isFalse();
        assertThat(s.stage()).isEqualTo("ready");
    }

    @Test
    void aSeparationIsRefusedWhileHandsAreInTheWater() {
        Story s = incubating(Story.at());
        s.does(Step.FIRST_SEEN, Step.HANDS_IN);
        assertThat(s.did("a", Step.SETTLE).accepted()).isFalse();
        s.tick();
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.stage()).isEqualTo("hatching");
    }

    /** Whether jumps pass, alarms wait and nothing settles is one decision. */
    @Test
    void whatIsBelievedAndWhatIsToldAgreeOnWhetherTheWaterIsHandled() {
        Story s = Story.at();
        s.did("a", Step.FILLED);
        s.senses.probe("a-water", new Reading.Absent());
        s.seconds(170);
        assertThat(s.standing("a")).as("just filled: the probe may still be in somebody's hand").isEmpty();
        s.seconds(80);
        assertThat(s.standing("a")).containsExactly("probe");
    }

    @Test
    void theOtherConesGoOn() {
        Story s = incubating(Story.at());
        s.did("b", Step.STARTED);
        s.minutes(5);
        s.did("a", Step.HANDS_IN);
        assertThat(s.on("b.cut-out")).isTrue();
    }

    @Test
    void aRepeatedReportBeginsTheQuarterOfAnHourAnew() {
        Story s = incubating(Story.at());
        s.does(Step.HANDS_IN);
        s.minutes(10);
        s.does(Step.HANDS_IN);
        s.minutes(10);
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void withoutThisGuardHeatWouldStayOnAroundTheHands() {
        Story s = incubating(Story.without(Handled.class));
        s.did("a", Step.HANDS_IN);
        assertThat(s.on("a.cut-out") && s.on("a.trigger")).isTrue();
    }
}
