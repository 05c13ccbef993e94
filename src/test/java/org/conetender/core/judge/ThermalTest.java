package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.judge.Watch.Suspect;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is asked of a probe that stands, and what is told of water that goes, on a cone with a thermostat. */
class ThermalTest {

    private static final double AIM_C = 27;

    /** A cone kept by a relay at the edges of a band of 0.3 K. */
    private static final class Kept {
        final Basin basin;
        Thermal t;
        boolean on = true;

        Kept(long seed) {
            basin = new Basin(Basin.Build.USUAL, 22, seed);
            t = Thermal.from(Basin.Build.USUAL.configured(1), 22);
        }

        Kept seconds(int n) {
            for (int i = 0; i < n; i++) {
                double probeC = basin.second(on);
                t = t.after(new Step(1, on ? 1 : 0, 20, probeC, true), AIM_C);
                on = t.estimate().plateauC() < AIM_C + t.askK() + (on ? 0.15 : -0.15);
            }
            return this;
        }

        Kept hours(double n) {
            return seconds((int) (3_600 * n));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void waterThatGoesIsToldAndWaterThatStaysIsNot(long seed) {
        Kept k = new Kept(seed).hours(14);
        assertThat(k.t.falling()).isFalse();
        assertThat(k.t.gone()).isCloseTo(0, within(0.05));
        for (int minute = 0; minute < 12 * 60 && !k.t.falling(); minute++) {
            k.basin.gone += 0.03 / 60;
            k.seconds(60);
        }
        assertThat(k.t.falling()).isTrue();
        assertThat(k.basin.gone).as("share that went before it was told").isBetween(0.1, 0.33);
        assertThat(k.t.gone()).as("the estimate comes behind").isBetween(0.15, k.basin.gone);
        assertThat(k.t.watch().suspect()).as("nothing trips for it").isEqualTo(Suspect.NONE);
    }

    @Test
    void nothingIsLearnedOfWaterThatRisesAboveItsSetPoint() {
        Kept k = new Kept(4).hours(6);
        k.t = k.t.watched(Watch::above);
        Thermal suspect = k.t;
        k.hours(0.3);
        assertThat(k.t.watch().suspect()).isEqualTo(Suspect.ABOVE);
        assertThat(k.t.estimate().traits()).isEqualTo(suspect.estimate().traits());
        assertThat(k.t.proof()).isEqualTo(suspect.proof());
        k.t = k.t.watched(Watch::another);
        k.hours(0.3);
        assertThat(k.t.estimate().traits()).isNotEqualTo(suspect.estimate().traits());
    }

    @Test
    void afterEachProofTheWaterIsLedAstrayForFiveMinutesAndNotBefore() {
        Kept k = new Kept(1);
        int led = 0;
        for (int t = 0; t < 6 * 3_600; t++) {
            k.seconds(1);
            assertThat(k.t.pulseK()).isLessThanOrEqualTo(0);
            assertThat(k.t.pulseK() < 0).as("at %d s", t)
                    .isEqualTo(k.t.proof().passed() && k.t.proofAgeS() < 300);
            led += k.t.pulseK() < 0 ? 1 : 0;
        }
        assertThat(led).as("seconds in six hours, one proof in each").isBetween(5 * 300, 6 * 310);
    }

    /** Unreported, and within the hour after the first proof: nothing would be learned of it for ever. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void waterThatIsDrawnAtOnceIsLearnedAnewAndTold(long seed) {
        Kept k = new Kept(seed);
        for (int t = 0; t < 4 * 3_600 && !k.t.proof().passed(); t++) {
            k.seconds(1);
        }
        k.seconds(1_200);
        k.basin.gone = 0.3;
        int hours = 0;
        for (; hours < 8 && !k.t.falling(); hours++) {
            k.hours(1);
        }
        assertThat(k.t.falling()).as("after %d hours", hours).isTrue();
        k.hours(3);
        assertThat(k.t.gone()).as("of 0.3").isBetween(0.15, 0.4);
        assertThat(k.t.proof().passed()).isTrue();
        assertThat(k.t.proof().traits().riseKPerS() / Basin.Build.USUAL.riseKPerS())
                .as("rise that is proven, of that when full").isBetween(1.15, 1.6);
        assertThat(k.t.watch().suspect()).isEqualTo(Suspect.NONE);
    }

    /** So much at once that the rise is another before the next proof: learning must not stop there. */
    @ParameterizedTest
    @ValueSource(longs = {5, 6})
    void aRiseThatStaysAnotherIsProvenAnew(long seed) {
        Kept k = new Kept(seed).hours(6);
        k.basin.gone = 0.4;
        double mostS = 0;
        for (int t = 0; t < 8 * 60; t++) {
            k.seconds(60);
            mostS = Math.max(mostS, k.t.unlikeS());
        }
        assertThat(mostS).as("s").isGreaterThan(3_000);
        assertThat(k.t.proof().passed()).isTrue();
        assertThat(k.t.proof().traits().riseKPerS() / Basin.Build.USUAL.riseKPerS()).isBetween(1.3, 1.9);
        assertThat(k.t.falling()).isTrue();
        assertThat(k.t.watch().suspect()).isEqualTo(Suspect.NONE);
    }

    /** A heater that works hard is asked to pause, one that idles to work: that moves the reading sooner. */
    @ParameterizedTest
    @CsvSource({"20,0.25", "6,-0.25"})
    void aStandingReadingIsAskedTheQuickerWay(double roomC, double askK) {
        Traits traits = Basin.Build.USUAL.configured(1);
        double duty = traits.lossPerS() * (AIM_C - roomC) / traits.riseKPerS();
        Thermal t = Thermal.from(traits, AIM_C);
        for (int i = 0; i < 1_500; i++) {
            t = t.after(new Step(1, duty, roomC, AIM_C, true), AIM_C);
        }
        assertThat(t.askK()).as("before twenty-five minutes").isZero();
        for (int i = 0; i < 60; i++) {
            t = t.after(new Step(1, duty, roomC, AIM_C, true), AIM_C);
        }
        assertThat(t.askK()).isEqualTo(askK);
        assertThat(t.untestable()).isFalse();
    }

    @Test
    void aQuestionThatTheRoomLeavesWithoutAnAnswerIsSaid() {
        Thermal t = Thermal.from(Basin.Build.USUAL.configured(1), 24);
        int since = 0;
        while (!t.untestable() && since < 3 * 3_600) {
            t = t.after(new Step(1, 0, 24, 24, true), 22);
            since++;
        }
        assertThat(since / 60.0).as("minutes").isBetween(70.0, 76.0);
        assertThat(t.watch().suspect()).as("a state, not an alarm").isEqualTo(Suspect.NONE);
        assertThat(t.after(new Step(1, 0, 24, 24.0625, true), 22).untestable())
                .as("it moved: that answers").isFalse();
    }

    @Test
    void aProbeThatFreezesWhileHeldIsFoundWithinAnHourAndAQuarter() {
        Kept k = new Kept(4).hours(4);
        k.basin.probe = Basin.Probe.FROZEN;
        int after = 0;
        while (k.t.watch().suspect() == Suspect.NONE && after < 2 * 3_600) {
            k.seconds(1);
            after++;
        }
        assertThat(k.t.watch().suspect()).isEqualTo(Suspect.FROZEN);
        assertThat(after / 60.0).as("minutes").isLessThan(75);
    }
}
