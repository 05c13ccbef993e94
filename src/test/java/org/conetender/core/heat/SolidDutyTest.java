package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.heat.Estimate.Step;
import org.conetender.core.heat.Predict.Around;
import org.conetender.core.heat.Predict.Switching;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Clamped at one tick, heat owed to duties above a half would be lost. */
class SolidDutyTest {

    @ParameterizedTest
    @ValueSource(doubles = {0.6, 0.77, 0.9, 0.96})
    void aSolidStateSwitchGivesItsDutyInWholeTicks(double wanted) {
        Switching solid = new Switching(Double.POSITIVE_INFINITY, 1);
        Estimate e = Estimate.first(new Traits(0.003, 0.003 * wanted / 7, 30), 27);
        for (int i = 0; i < 600; i++) {
            e = e.after(new Step(1, wanted, 20, 27, false));
        }
        Predict law = Predict.IDLE;
        int on = 0;
        double duty = 0;
        for (int i = 0; i < 2_000; i++) {
            law = law.after(e, 27, new Around(20, 1), solid);
            on += law.on() ? 1 : 0;
            duty += law.duty();
        }
        assertThat(on / 2_000.0).isCloseTo(duty / 2_000, within(0.002));
    }
}
