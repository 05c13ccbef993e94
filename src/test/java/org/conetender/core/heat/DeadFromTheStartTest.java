package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.heat.Predict.Switching;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.judge.Thermal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Before the first proof nothing stands yet by which a heater could be known to be dead. */
class DeadFromTheStartTest {

    /** watts, loss W/K, water °C at the start; a cone of 2 L in a room of 20 °C. */
    @ParameterizedTest
    @CsvSource({"25,0.2,26.8", "12,0.2,26.8", "50,0.5,20"})
    void aHeaterThatNeverWorkedPassesNoProof(double watts, double loss, double startC) {
        Basin b = new Basin(new Basin.Build(watts, 2, loss, 45, 15), startC, 1);
        b.power = Basin.Power.DEAD;
        Thermal h = Thermal.from(b.build.configured(1), startC);
        Predict law = Predict.IDLE;
        for (int t = 0; t < 12 * 3_600; t++) {
            boolean on = law.on();
            h = h.after(new Step(1, on ? 1 : 0, 20, b.second(on), true), 27);
            law = law.steered(h, 27, new Predict.Around(20, 1), new Switching(150, 10));
            assertThat(h.proof().passed() && h.proof().traits().riseKPerS() < 0.5 * b.build.riseKPerS())
                    .as("after %d s a proof stands on a rise of %.2f of what it is built for", t,
                            h.proof().traits().riseKPerS() / b.build.riseKPerS()).isFalse();
        }
    }
}
