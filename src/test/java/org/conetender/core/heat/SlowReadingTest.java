package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.conetender.core.heat.Predict.Switching;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Traits;
import org.conetender.core.judge.Watch;
import org.conetender.core.judge.Watch.Suspect;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A probe answers every two seconds or, on a bus with many, later: what is found must be the same. */
class SlowReadingTest {

    private static final double AIM_C = 27;
    private static final int HOUR_S = 3_600;
    private static final List<Basin.Build> BUILDS = List.of(Basin.Build.USUAL, Basin.Build.FIERCE,
            new Basin.Build(100, 20, 5, 30, 8), new Basin.Build(30, 2, 0.94, 25, 10));

    /** A cone that is kept, looked at every second and read more seldom. */
    private static final class Kept {
        final Basin basin;
        final int periodS;
        final Switching switching = new Switching(Double.POSITIVE_INFINITY, 1);
        Thermal known;
        Predict law = Predict.IDLE;
        int second;

        Kept(Basin.Build build, int periodS, long seed) {
            this.basin = new Basin(build, 20, seed);
            this.periodS = periodS;
            this.known = Thermal.from(build.configured(0.8), 20);
        }

        Kept second() {
            boolean on = law.on();
            double shown = basin.second(on);
            double read = second++ % periodS == 0 ? shown : Double.NaN;
            known = known.after(new Step(1, on ? 1 : 0, 20, read, true), AIM_C);
            law = law.steered(known, AIM_C, new Predict.Around(20, 1), switching);
            return this;
        }

        /** Seconds until something is suspected, or so many. */
        int until(int most) {
            int t = 0;
            for (; t < most && suspect() == Suspect.NONE; t++) {
                second();
            }
            return t;
        }

        Suspect suspect() {
            return known.watch().suspect();
        }

        static Kept held(Basin.Build build, int periodS, long seed) {
            Kept k = new Kept(build, periodS, seed);
            k.until(5 * HOUR_S + (int) (seed % 7) * 137);
            assertThat(k.suspect()).as("nothing is wrong, read every %d s", periodS).isEqualTo(Suspect.NONE);
            assertThat(k.known.proof().passed()).isTrue();
            return k;
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 8})
    void aWeldedSwitchIsCalledThat(int periodS) {
        for (Basin.Build b : BUILDS) {
            for (int seed = 1; seed <= 4; seed++) {
                Kept k = Kept.held(b, periodS, seed);
                k.basin.power = Basin.Power.WELDED;
                assertThat(k.until(HOUR_S)).as("seconds").isLessThan(900);
                assertThat(k.suspect()).as("%s, seed %d", b, seed).isEqualTo(Suspect.WELDED);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 8})
    void aProbeInTheAirIsFoundTwoReadingsLaterAtMost(int periodS) {
        for (Basin.Build b : BUILDS) {
            Kept k = Kept.held(b, periodS, 5);
            k.basin.probe = Basin.Probe.IN_AIR;
            assertThat(k.until(HOUR_S)).as("seconds").isLessThan(15 + 2 * periodS);
            assertThat(k.suspect()).isEqualTo(Suspect.IN_AIR);
        }
    }

    /** Two days each; and a lid makes nothing that is a fault, however often it comes and goes. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 8})
    void aHealthyConeWithALidThatComesAndGoesHasNoFault(int periodS) {
        for (Basin.Build b : BUILDS) {
            Kept k = Kept.held(b, periodS, 6);
            for (int change = 0; change < 32; change++) {
                k.basin.lossFactor = change % 2 == 0 ? 0.5 : 1;
                k.until(5_400);
                assertThat(k.suspect()).as("%s after %d lids", b, change).isEqualTo(Suspect.NONE);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 5, 8})
    void theWatchCountsTheWholeTimeBetweenReadings(int periodS) {
        Watch.Proof proof = new Watch.Proof(new Traits(0.003, 1.6e-4, 45), true);
        Watch w = Watch.from(27);
        for (int t = 1; t <= 80; t++) {
            w = w.after(new Step(1, 0, 20, t % periodS == 0 ? 27 : Double.NaN, true), proof, 0);
        }
        assertThat(w.still().forS()).as("s that it stood").isEqualTo(80);
        assertThat(w.still().owedK()).as("K that it should have cooled")
                .isCloseTo(-80 * 1.6e-4 * 7, within(0.002));
        assertThat(w.still().since().periodS()).isEqualTo(periodS);
        double c = 27;
        int t = 0;
        while (t < 400 && (c < 28 || w.away().quietS() == 60)) {
            c = Math.min(28, c + 0.05);
            w = w.after(new Step(1, 0, 20, ++t % periodS == 0 ? c : Double.NaN, true), proof, 0);
        }
        double quietS = w.away().quietS();
        for (int end = t + 40; t < end;) {
            w = w.after(new Step(1, 0, 20, ++t % periodS == 0 ? c : Double.NaN, true), proof, 0);
        }
        assertThat(quietS - w.away().quietS()).as("s of its silence that are over").isEqualTo(40);
    }
}
