package org.conetender.sim.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The figures of a trial are what they are called. */
class FiguresTest {

    private static final double RISE_K_PER_S = 0.003;

    @ParameterizedTest
    @CsvSource({"0,1", "0.01,1", "0.5,50", "0.95,95", "0.951,96", "0.99,99", "1,100"})
    void aQuantileIsTheValueThatSoManyDoNotExceed(double share, double value) {
        double[] values = IntStream.rangeClosed(1, 100).mapToDouble(i -> (i * 37) % 101).toArray();
        assertThat(new Quantiles(values).at(share)).isEqualTo(value);
        assertThat(values[0]).as("what was given stays as it was").isEqualTo(37);
    }

    @Test
    void whatWasNotMeasuredCountsAsTheWorst() {
        Quantiles q = new Quantiles(new double[] {Double.NaN, 1, Double.POSITIVE_INFINITY, 2});
        assertThat(q.at(0.5)).isEqualTo(2);
        assertThat(q.at(0.75)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(q.at(1)).isNaN();
        assertThat(q.count()).isEqualTo(4);
        assertThat(new Quantiles(new double[0]).at(0.5)).isNaN();
    }

    @Test
    void aTargetIsMetUpToItsFigureAndNeverByNothing() {
        assertThat(new Target("rms, K", 0.05, 0.05).met()).isTrue();
        assertThat(new Target("rms, K", 0.0501, 0.05).met()).isFalse();
        assertThat(new Target("rms, K", Double.NaN, 0.05).met()).isFalse();
        assertThat(new Target("rms, K", 0.0301, 0.05).line())
                .isEqualTo("  met     rms, K: 0.0301 (at most 0.05)");
        assertThat(new Target("rms, K", 0.1, 0.05).line()).isEqualTo("  MISSED  rms, K: 0.1 (at most 0.05)");
        assertThat(new Target("cycles", 1_234.5, 400).line()).contains("MISSED", ": 123", "(at most 400)");
        assertThat(new Target("delay", Double.NaN, 1).line()).contains("MISSED", "not measured");
    }

    @Test
    void aQuantileOfTooFewIsNotJudged() {
        assertThat(Target.of("rms, K", new Quantiles(new double[19]), 0.95, 1).line())
                .isEqualTo("  too few rms, K: 0.0 (at most 1.0)");
        assertThat(Target.of("rms, K", new Quantiles(new double[20]), 0.95, 1).met()).isTrue();
        assertThat(Target.of("rms, K", new Quantiles(new double[99]), 0.99, 1).met()).isFalse();
        assertThat(Target.of("rms, K", new Quantiles(new double[9]), 0.5, 1).enough()).isFalse();
        assertThat(Target.off("share", 0.82, new Target.Share(0.8, 0.04), 99).enough()).isFalse();
        assertThat(Target.off("share", 0.82, new Target.Share(0.8, 0.04), 100).met()).isTrue();
    }

    @Test
    void overshootIsOfTheWarmUpAndErrorsAreOfTheDayAfter() {
        Measures.Taker taker = new Measures.Taker(27);
        for (double c : new double[] {26.8, 27.3, 27.1}) {
            taker.take(c, true, true, true);
        }
        for (int t = 0; t < 86_400; t++) {
            taker.take(t % 2 == 0 ? 27.03 : 26.96, false, false, false);
        }
        Measures m = taker.taken(1_234, RISE_K_PER_S);
        assertThat(m.warmS()).isEqualTo(1_234);
        assertThat(m.overshootK()).isCloseTo(0.3, within(1e-9));
        assertThat(m.peakK()).isCloseTo(0.04, within(1e-9));
        assertThat(m.rmsK()).isCloseTo(Math.sqrt((0.03 * 0.03 + 0.04 * 0.04) / 2), within(1e-9));
        assertThat(m.cycles()).isZero();
        assertThat(m.excess()).as("without a cycle there is no ripple to compare").isNaN();
    }

    @Test
    void waterThatStaysBelowTheSetPointHasNoOvershoot() {
        Measures.Taker taker = new Measures.Taker(27);
        taker.take(26.9, true, false, false);
        assertThat(taker.taken(0, RISE_K_PER_S).overshootK()).isZero();
    }

    /** A saw between two edges, by the law of control.md §2.1: exactly as many cycles as its ripple needs. */
    @ParameterizedTest
    @CsvSource({"0.3,0.2", "0.5,0.1", "0.8,0.3"})
    void aLawThatSwitchesAtTheEdgesHasNoExcessOfCycles(double duty, double rippleK) {
        Measures.Taker taker = new Measures.Taker(27);
        double c = 27;
        boolean on = true;
        for (int t = 0; t < 2 * 86_400; t++) {
            boolean was = on;
            on = c < 27 + (was ? rippleK / 2 : -rippleK / 2);
            c += RISE_K_PER_S * ((on ? 1 : 0) - duty);
            taker.take(c, false, on, was);
        }
        Measures m = taker.taken(0, RISE_K_PER_S);
        assertThat(m.excess()).isCloseTo(1, within(0.03));
        assertThat(m.cycles()).as("of one day, not of two")
                .isCloseTo(86_400 * RISE_K_PER_S * duty * (1 - duty) / rippleK, within(0.06 * m.cycles()));
    }

    @Test
    void twiceTheCyclesForTheSameRippleAreAnExcessOfTwo() {
        Measures.Taker taker = new Measures.Taker(27);
        boolean on = false;
        double onsets = 0;
        for (int t = 0; t < 86_400; t++) {
            boolean was = on;
            on = t / 30 % 2 == 0;
            onsets += on && !was ? 1 : 0;
            // Twice as wide as half a minute of heat at a duty of a half can make it.
            taker.take(27 + (on ? 1 : -1) * 0.045, false, on, was);
        }
        Measures m = taker.taken(0, RISE_K_PER_S);
        assertThat(m.cycles()).isEqualTo(onsets);
        assertThat(m.excess()).isCloseTo(onsets * 0.09 / (86_400 * RISE_K_PER_S / 4), within(0.01));
        assertThat(m.excess()).isCloseTo(2, within(0.01));
    }
}
