package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: a probe that lies, or says nothing (control.md §3.3). */
class LyingProbeTest {

    private static Story holding(Story s) {
        s.does(Step.STARTED);
        return s.minutes(20);
    }

    private static int heatSeconds(Story s, int of) {
        int on = 0;
        for (int i = 0; i < of; i++) {
            s.tick();
            on += s.on("a.heat") ? 1 : 0;
        }
        return on;
    }

    @Test
    void aReadingThatJumpsStopsTheHeatAtOnceAndThreeGoodMinutesBringItBack() {
        Story s = holding(Story.at());
        s.senses.water("a", 25);
        s.tick();
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.found("probe")).singleElement().asString().contains("jumped from 27.0 to 25.0");
        s.senses.water("a", 27);
        assertThat(heatSeconds(s, 170)).isZero();
        assertThat(s.seconds(20).on("a.cut-out")).isTrue();
        assertThat(s.told("probe")).isEqualTo(1);
    }

    /** It fell out of water at 27 °C into air at 25.3 °C, where water may go by being poured. */
    @Test
    void whatIsBelievedAgainLowerGetsLittleHeatUntilItAnswers() {
        Story s = holding(Story.at());
        assertThat(s.state().live().cones().get("a").judged().heat().responded()).isTrue();
        for (int t = 1; t < 290 && !(t > 10 && s.on("a.cut-out")); t++) {
            s.senses.water("a", 25.6 + 1.1 * Math.exp(-t / 60.0)).frozen("a-water");
            s.tick();
        }
        assertThat(s.on("a.cut-out")).as("it is believed").isTrue();
        assertThat(heatSeconds(s, 240)).isBetween(30, 90);
        s.minutes(30);
        assertThat(s.standing("a")).containsExactly("no-effect");
    }

    @Test
    void theThirdDepartureWithinAnHourLatches() {
        Story s = holding(Story.at());
        for (int i = 0; i < 3; i++) {
            s.senses.water("a", 24);
            s.seconds(5);
            s.senses.water("a", 27);
            s.minutes(5);
        }
        assertThat(s.standing("a")).contains("probe-unsteady");
        s.minutes(90);
        assertThat(heatSeconds(s, 600)).as("an hour later, nobody came").isZero();
        s.ask("a", new Ask.Acknowledge("probe-unsteady"));
        assertThat(heatSeconds(s, 600)).isPositive();
    }

    @Test
    void threeDeparturesOverThreeHoursDoNotLatch() {
        Story s = holding(Story.at());
        for (int i = 0; i < 3; i++) {
            s.senses.water("a", 24);
            s.seconds(5);
            s.senses.water("a", 27);
            s.minutes(59).minutes(10);
        }
        assertThat(s.told("probe-unsteady")).isZero();
        assertThat(s.on("a.cut-out")).isTrue();
    }

    @Test
    void aSilentProbeStopsTheHeatAfterAMinuteAndCallsAfterTwo() {
        Story s = holding(Story.at());
        s.senses.silent("a-water", s.now().monoMs() - 1_000);
        s.seconds(57);
        assertThat(s.on("a.cut-out")).isTrue();
        s.seconds(5);
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.standing("a")).isEmpty();
        s.seconds(65);
        assertThat(s.standing("a")).containsExactly("probe");
        assertThat(s.told().getFirst().what()).contains("silent");
    }

    @Test
    void whileHandsAreInTheWaterNobodyIsCalledForItsProbe() {
        Story s = holding(Story.at());
        s.does(Step.HANDS_IN);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(14);
        assertThat(s.told()).isEmpty();
        s.minutes(4);
        assertThat(s.standing("a")).containsExactly("probe");
    }

    @Test
    void theProbeOfAnEmptyConeCallsNobody() {
        Story s = Story.at();
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(30);
        assertThat(s.told()).isEmpty();
    }

    @Test
    void withoutThisGuardTheCutOutWouldStayClosedOnAReadingNobodyBelieves() {
        Story s = holding(Story.without(LyingProbe.class));
        s.senses.water("a", 24);
        s.minutes(2);
        assertThat(s.on("a.cut-out")).isTrue();
        assertThat(s.standing("a")).isEmpty();
    }
}
