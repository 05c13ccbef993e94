package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.conetender.core.heat.Predict.Switching;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Traits;
import org.conetender.core.judge.Watch;
import org.conetender.core.judge.Watch.Suspect;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Learning, watching and wanting together: faults get their right name, hands and lids get none. */
class KeptConeTest {

    private static final double AIM_C = 27;
    private static final int HOUR_S = 3_600;

    /** The switches of the trial. */
    private enum Kind {
        SOLID(new Switching(Double.POSITIVE_INFINITY, 1)),
        RELAY(new Switching(150, 10));

        final Switching switching;

        Kind(Switching switching) {
            this.switching = switching;
        }
    }

    /** A cone that is kept. */
    private static final class Kept {
        final Basin basin;
        final Switching switching;
        Thermal known;
        Predict law = Predict.IDLE;
        double hottestC;
        int seconds;

        Kept(Basin.Build build, Kind kind, long seed) {
            basin = new Basin(build, 20, seed);
            switching = kind.switching;
            known = Thermal.from(build.configured(0.8), 20);
        }

        Kept second(boolean learn) {
            boolean on = law.on();
            known = known.after(new Step(1, on ? 1 : 0, 20, basin.second(on), learn), AIM_C);
            law = law.steered(known, AIM_C, new Predict.Around(20, 1), switching);
            hottestC = Math.max(hottestC, basin.waterC);
            seconds++;
            return this;
        }

        Kept run(int n) {
            for (int t = 0; t < n; t++) {
                second(true);
            }
            return this;
        }

        Suspect suspect() {
            return known.watch().suspect();
        }

        /** Seconds until something is suspected, or so many. */
        int until(int most) {
            int t = 0;
            for (; t < most && suspect() == Suspect.NONE; t++) {
                second(true);
            }
            return t;
        }

        /** Runs on to a second in which the heater is as wanted. */
        Kept when(boolean on) {
            for (int t = 0; t < 2 * HOUR_S && law.on() != on; t++) {
                second(true);
            }
            assertThat(law.on()).isEqualTo(on);
            return this;
        }
    }

    /** Much and little power, much and little water. */
    private static final List<Basin.Build> BUILDS = List.of(Basin.Build.USUAL, Basin.Build.FIERCE,
            new Basin.Build(100, 20, 5, 30, 8), new Basin.Build(30, 2, 0.94, 25, 10));
    private static final int SEEDS = 4;

    /** Something that happens to a cone of every build. */
    private interface Mishap {
        void befall(Kept k);
    }

    private static void each(Kind kind, Mishap mishap) {
        for (Basin.Build b : BUILDS) {
            for (int seed = 1; seed <= SEEDS; seed++) {
                mishap.befall(held(b, kind, seed));
            }
        }
    }

    private static Kept held(Basin.Build build, Kind kind, long seed) {
        Kept k = new Kept(build, kind, seed).run(5 * HOUR_S + (int) (seed % 7) * 137);
        assertThat(k.suspect()).as("nothing is wrong").isEqualTo(Suspect.NONE);
        assertThat(k.known.proof().passed()).isTrue();
        return k;
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void aWeldedSwitchIsCalledSoBeforeTheWaterIsMuchTooWarm(Kind kind) {
        each(kind, k -> {
            Basin.Build b = k.basin.build;
            double was = k.hottestC;
            k.when(true).basin.power = Basin.Power.WELDED;
            k.when(false);
            assertThat(k.until(HOUR_S)).as("seconds, %s", b).isLessThan(200);
            assertThat(k.suspect()).isEqualTo(Suspect.WELDED);
            double lagsS = b.elementS() + b.probeS() + 2;
            assertThat(k.hottestC - Math.max(AIM_C, was)).as("K too warm; the bound of the issue")
                    .isLessThan(Math.max(0.4, 1.5 * b.riseKPerS() * lagsS));
        });
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void aDeadHeaterIsCalledSoWhileTheWaterIsStillWarm(Kind kind) {
        each(kind, k -> {
            k.basin.power = Basin.Power.DEAD;
            k.when(true);
            assertThat(k.until(2 * HOUR_S)).as("seconds, %s", k.basin.build).isLessThan(2_400);
            assertThat(k.suspect()).isEqualTo(Suspect.DEAD);
            assertThat(k.basin.waterC).isGreaterThan(AIM_C - 2);
        });
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void aProbeThatFellOutIsCalledSoWithinSeconds(Kind kind) {
        each(kind, k -> {
            k.basin.probe = Basin.Probe.IN_AIR;
            assertThat(k.until(HOUR_S)).as("seconds, %s", k.basin.build).isLessThanOrEqualTo(15);
            assertThat(k.suspect()).isEqualTo(Suspect.IN_AIR);
        });
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void aFrozenReadingIsCalledSoWithinTheHourAndAQuarter(Kind kind) {
        each(kind, k -> {
            k.basin.probe = Basin.Probe.FROZEN;
            assertThat(k.until(3 * HOUR_S)).as("seconds, %s", k.basin.build).isLessThan(75 * 60);
            assertThat(k.suspect()).isEqualTo(Suspect.FROZEN);
            assertThat(k.hottestC).as("warmed blindly meanwhile").isLessThan(AIM_C + 0.5);
        });
    }

    /** What people do to a cone, each of them once every few hours. */
    private static void hands(Kept k, Random random) {
        switch (random.nextInt(4)) {
            case 0 -> k.basin.lossFactor = k.basin.lossFactor == 1 ? 0.7 : 1;
            case 1 -> {
                k.basin.roomC -= 4;
                k.run(600);
                k.basin.roomC += 4;
            }
            case 2 -> k.basin.topUp(0.05, 18);
            default -> {
                k.basin.probe = Basin.Probe.IN_AIR;
                k.run(5);
                k.basin.probe = Basin.Probe.IN_WATER;
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void lidsDoorsTopUpsAndAWipedProbeAreNoFaults(Kind kind) {
        for (int seed = 1; seed <= 4; seed++) {
            Random random = new Random(seed);
            Kept k = held(Basin.Build.USUAL, kind, seed);
            for (int i = 0; i < 24; i++) {
                hands(k, random);
                k.run(1_200 + random.nextInt(2 * HOUR_S));
                assertThat(k.suspect()).as("seed %d, after %d things done", seed, i + 1)
                        .isIn(Suspect.NONE, Suspect.IN_AIR);
                if (k.suspect() == Suspect.IN_AIR) {
                    k.known = k.known.watched(Watch::cleared);
                    k.run(HOUR_S);
                }
                assertThat(k.suspect()).isEqualTo(Suspect.NONE);
            }
        }
    }

    @Test
    void aCalmWeekNamesNothing() {
        Kept k = held(Basin.Build.USUAL, Kind.RELAY, 11);
        for (int hour = 0; hour < 7 * 24; hour++) {
            k.basin.roomC = 20 + 2 * Math.sin(hour * Math.PI / 12);
            k.run(HOUR_S);
            assertThat(k.suspect()).isEqualTo(Suspect.NONE);
            assertThat(k.known.fits()).isTrue();
        }
    }

    @Test
    void theFirstNameStaysUntilItIsCleared() {
        Kept k = held(Basin.Build.USUAL, Kind.RELAY, 12);
        k.basin.probe = Basin.Probe.IN_AIR;
        k.until(60);
        k.basin.probe = Basin.Probe.IN_WATER;
        k.run(HOUR_S);
        assertThat(k.suspect()).isEqualTo(Suspect.IN_AIR);
        k.known = k.known.watched(Watch::cleared);
        assertThat(k.suspect()).isEqualTo(Suspect.NONE);
        k.run(2 * HOUR_S);
        assertThat(k.suspect()).as("it really was over").isEqualTo(Suspect.NONE);
    }

    @ParameterizedTest
    @ValueSource(ints = {600, 3_000})
    void aHeaterThatDiesSlowlyCannotBeLearnedAway(int fadingS) {
        Basin.Build b = Basin.Build.USUAL;
        Kept k = held(b, Kind.SOLID, 13);
        double proven = k.known.proof().traits().riseKPerS();
        Random pwm = new Random(1);
        int t = 0;
        for (; t < 6 * HOUR_S && k.suspect() == Suspect.NONE; t++) {
            double left = Math.max(0, 1 - (double) t / fadingS);
            k.basin.power = pwm.nextDouble() < left ? Basin.Power.OBEYS : Basin.Power.DEAD;
            k.second(true);
            assertThat(k.known.proof().traits().riseKPerS() / proven).as("the proof stands")
                    .isCloseTo(1, within(0.15));
        }
        assertThat(k.suspect()).isEqualTo(Suspect.DEAD);
        assertThat(t).as("seconds").isLessThan(fadingS + HOUR_S);
    }

    @Test
    void whileSomethingIsSuspectNothingIsLearned() {
        Kept k = held(Basin.Build.USUAL, Kind.SOLID, 14);
        k.basin.power = Basin.Power.DEAD;
        Traits before = k.known.estimate().traits();
        k.until(2 * HOUR_S);
        Traits then = k.known.estimate().traits();
        assertThat(then.riseKPerS() / before.riseKPerS()).isCloseTo(1, within(0.16));
        k.run(HOUR_S);
        assertThat(k.known.estimate().traits()).isEqualTo(then);
        assertThat(k.known.proof().passed()).isTrue();
    }

    @Test
    void theProofIsPassedOnceAndRenewedHourly() {
        Kept k = new Kept(Basin.Build.USUAL, Kind.RELAY, 15);
        List<Integer> at = new ArrayList<>();
        Watch.Proof last = k.known.proof();
        boolean passed = false;
        while (k.seconds < 10 * HOUR_S) {
            k.second(true);
            Watch.Proof now = k.known.proof();
            if (now.passed() && !(passed && now == last)) {
                at.add(k.seconds);
            }
            passed = now.passed();
            last = now;
        }
        assertThat(at).hasSizeBetween(8, 10);
        assertThat(at.getFirst()).as("in the first warm-up or soon after").isLessThan(2 * HOUR_S);
        for (int i = 1; i < at.size(); i++) {
            assertThat(at.get(i) - at.get(i - 1)).isGreaterThan(HOUR_S);
        }
    }

    @Test
    void aHeaterThatNeverWorkedPassesNoProof() {
        Kept k = new Kept(Basin.Build.USUAL, Kind.RELAY, 16);
        k.basin.power = Basin.Power.DEAD;
        k.run(6 * HOUR_S);
        assertThat(k.known.proof().passed()).isFalse();
        assertThat(k.law.duty()).as("it goes on wanting; the response test is for the guards")
                .isEqualTo(1);
    }

    @Test
    void aWarmingThatIsNotUnderstoodEndsHeatBeforeItHasAName() {
        Kept k = held(Basin.Build.USUAL, Kind.SOLID, 17);
        k.basin.power = Basin.Power.WELDED;
        boolean wanted = true;
        while (k.suspect() == Suspect.NONE) {
            k.second(true);
            wanted = k.law.on();
            assertThat(k.seconds).isLessThan(10 * HOUR_S);
        }
        assertThat(k.known.watch().doubtful()).isTrue();
        assertThat(wanted).isFalse();
    }

    @Test
    void seenAgainAfterAWhileTheConeIsKnownAndNothingIsSuspect() {
        Kept k = held(Basin.Build.USUAL, Kind.RELAY, 18);
        k.basin.probe = Basin.Probe.IN_AIR;
        k.until(60);
        Thermal again = k.known.watched(Watch::cleared).left().again(24);
        assertThat(again.watch()).usingRecursiveComparison().ignoringFields("still.since.periodS")
                .isEqualTo(Watch.from(24));
        assertThat(again.watch().still().since().periodS()).as("how often it is read is known").isEqualTo(1);
        assertThat(again.proof()).isEqualTo(k.known.proof());
        assertThat(again.estimate().traits()).isEqualTo(k.known.estimate().traits());
    }

    @ParameterizedTest
    @CsvSource({"true,true", "false,false"})
    void itIsToldWhenNotToLearn(boolean learn, boolean learns) {
        Kept k = held(Basin.Build.USUAL, Kind.RELAY, 19);
        Traits before = k.known.estimate().traits();
        for (int t = 0; t < HOUR_S; t++) {
            k.second(learn);
        }
        assertThat(!k.known.estimate().traits().equals(before)).isEqualTo(learns);
    }

    @Test
    void waterBehindAWallIsNotWhatTheModelDescribes() {
        Basin hidden = new Basin(new Basin.Build(100, 2, 1.34, 900, 15), 20, 20);
        Thermal h = Thermal.from(hidden.build.configured(1), 20);
        int unfit = 0;
        for (int t = 0; t < 6 * HOUR_S; t++) {
            boolean on = t / 1_200 % 2 == 0;
            h = h.after(new Step(1, on ? 1 : 0, 20, hidden.second(on), true), AIM_C);
            unfit += h.fits() && h.watch().suspect() == Suspect.NONE ? 0 : 1;
        }
        assertThat(unfit).as("seconds in which it says so").isGreaterThan(HOUR_S);
    }
}
