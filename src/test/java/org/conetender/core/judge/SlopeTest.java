package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** How fast a reading goes. */
class SlopeTest {

    private static final double STEP_K = 0.0625;

    @Test
    void aStraightLineHasItsSlopeWhateverTheSteps() {
        Slope s = Slope.NONE.after(20, 1);
        assertThat(s.kPerS()).as("nothing to tell from").isNaN();
        double c = 20;
        for (int i = 0; i < 300; i++) {
            double dt = 1 + i % 8;
            c += 0.001 * dt;
            s = s.after(c, dt);
        }
        assertThat(s.kPerS()).isCloseTo(0.001, within(1e-9));
    }

    @Test
    void whatIsOldIsForgotten() {
        Slope s = Slope.NONE;
        for (int i = 0; i < 2_000; i++) {
            s = s.after(i < 1_000 ? 20 + 0.002 * i : 22 - 0.001 * (i - 1_000), 1);
        }
        assertThat(s.kPerS()).isCloseTo(-0.001, within(1e-5));
    }

    /** A day of water that stands, read with the noise of a probe: high and low are three steps apart. */
    @Test
    void waterThatStandsDoesNotGoHoweverItsProbeTrembles() {
        SplittableRandom random = new SplittableRandom(7);
        Slope s = Slope.NONE;
        double low = 100;
        double high = 0;
        for (int i = 0; i < 86_400; i++) {
            double c = STEP_K * Math.round((27.02 + 0.027 * random.nextGaussian()) / STEP_K);
            s = s.after(c, 1);
            low = Math.min(low, c);
            high = Math.max(high, c);
            if (i > 150) {
                assertThat(Math.abs(s.kPerS())).isLessThan(2e-4);
            }
        }
        assertThat(high - low).isGreaterThanOrEqualTo(3 * STEP_K);
    }
}
