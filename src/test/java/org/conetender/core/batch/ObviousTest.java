package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the one button says: the step a person standing there has just done, and never a wrong one. */
class ObviousTest {

    @ParameterizedTest
    @CsvSource({"clean, STARTED, false", "filled, STOCKED, false", "ready, SETTLE, true",
            "settled, DRAWING, true", "drawing, DRAINED, false", "drained, CLEANED, false",
            "hydrating,,", "incubating,,", "hatching,,", "settling,,", "abandoned,,"})
    void eachStageHasItsOneStepOrNone(String stage, Step step, Boolean dangerous) {
        var next = Obvious.after(FitsTest.in(stage).batch(), false);
        assertThat(next.map(Obvious.Next::step).orElse(null)).isEqualTo(step);
        assertThat(next.map(Obvious.Next::dangerous).orElse(null)).isEqualTo(dangerous);
    }

    @Test
    void whereWaterCouldRunBackTheValveIsShutBeforeTheAirStops() {
        ConeBook ready = FitsTest.in("ready");
        assertThat(Obvious.after(ready.batch(), true)).contains(new Obvious.Next(Step.VALVE_SHUT, true));
        ConeBook shut = ready.after(new Fact(40, ready.batch().stage().since(), "a", "v",
                new Change.Told(new Ask.Did(Step.VALVE_SHUT))));
        assertThat(Obvious.after(shut.batch(), true)).contains(new Obvious.Next(Step.SETTLE, true));
    }

    /** A press must not be answered with a refusal that has to do with the batch's stage. */
    @Test
    void whatIsObviousIsAlwaysWelcome() {
        for (String stage : FitsTest.WAYS.keySet()) {
            for (boolean siphon : new boolean[] {false, true}) {
                Obvious.after(FitsTest.in(stage).batch(), siphon).ifPresent(n ->
                        assertThat(Fits.refusal(FitsTest.in(stage), n.step())).as(stage).isEmpty());
            }
        }
    }

    /** Whatever stops the air or moves water at the drain must be held. */
    @Test
    void whatStopsTheAirNeedsALongPress() {
        for (String stage : FitsTest.WAYS.keySet()) {
            Batch b = FitsTest.in(stage).batch();
            Obvious.after(b, false).ifPresent(n -> {
                Batch after = Life.after(b, new Fact(70, b.stage().since(), "a", "x",
                        new Change.Told(new Ask.Did(n.step()))));
                boolean stops = b.stage().airOff() == null && after.stage().airOff() != null;
                assertThat(n.dangerous() || !stops).as(stage).isTrue();
            });
        }
    }
}
