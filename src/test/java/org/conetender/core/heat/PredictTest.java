package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.heat.Predict.Around;
import org.conetender.core.heat.Predict.Switching;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Estimate;
import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Traits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The law in closed loop with a cone whose truth the test knows. */
class PredictTest {

    private static final Switching SOLID = new Switching(Double.POSITIVE_INFINITY, 1);
    private static final int DAY_S = 86_400;

    /** One law on one cone, and what came of it. */
    private static final class Loop {
        final Basin basin;
        final Switching kind;
        Estimate e;
        Predict law = Predict.IDLE;
        double aimC = 27;
        double highC;
        double lowC;
        double squares;
        int cycles;
        int shortestS;

        Loop(Basin.Build build, Switching kind, long seed) {
            this.basin = new Basin(build, 20, seed);
            this.kind = kind;
            this.e = Estimate.first(build.configured(0.8), 20);
        }

        /** Goes on for so long; what is measured is of this time. */
        Loop run(int seconds) {
            highC = -99;
            lowC = 99;
            squares = 0;
            cycles = 0;
            shortestS = Integer.MAX_VALUE;
            int sinceS = 0;
            for (int t = 0; t < seconds; t++) {
                boolean was = law.on();
                e = e.after(new Step(1, was ? 1 : 0, 20, basin.second(was), true));
                law = law.after(e, aimC, new Around(20, 1), kind);
                assertThat(law.duty()).isBetween(0.0, 1.0);
                sinceS++;
                if (law.on() != was) {
                    cycles += was ? 0 : 1;
                    shortestS = sinceS < t ? Math.min(shortestS, sinceS) : shortestS;
                    sinceS = 0;
                }
                note();
            }
            squares /= seconds;
            return this;
        }

        private void note() {
            double off = basin.waterC - aimC;
            highC = Math.max(highC, basin.waterC);
            lowC = Math.min(lowC, basin.waterC);
            squares += off * off;
        }

        Loop warm() {
            while (basin.waterC < aimC - 0.2) {
                run(60);
            }
            return this;
        }
    }

    private static Switching relay(double cycles) {
        return new Switching(cycles, 10);
    }

    @ParameterizedTest
    @CsvSource({"25,2,1.34,45,15", "100,4,2,90,20", "50,2,1.2,90,10", "12,0.5,0.5,60,12", "60,20,4.4,30,8"})
    void aStrongHeaterBehindALongLagDoesNotOvershoot(double watts, double litres, double loss,
            double elementS, double probeS) {
        Basin.Build b = new Basin.Build(watts, litres, loss, elementS, probeS);
        for (int seed = 1; seed <= 3; seed++) {
            Loop l = new Loop(b, SOLID, seed).warm().run(2 * 3_600);
            assertThat(l.highC - 27).as("in the two hours after, K; seed %d", seed).isLessThan(0.1);
            l.run(12 * 3_600);
            assertThat(Math.sqrt(l.squares)).as("rms of the half day after that").isLessThan(0.03);
        }
    }

    @Test
    void withoutTheLawTheSameHeaterWouldHaveOvershot() {
        Basin b = new Basin(Basin.Build.FIERCE, 20, 1);
        double highC = 0;
        for (int t = 0; t < 7_200; t++) {
            boolean reached = highC >= 27;
            b.second(!reached);
            highC = Math.max(highC, b.waterC);
        }
        assertThat(highC).as("or the test above shows nothing").isGreaterThan(27.3);
    }

    @ParameterizedTest
    @CsvSource({"150,25,2,1.34", "400,25,2,1.34", "150,100,4,2", "400,50,10,2.7"})
    void aRelayKeepsItsBudgetOfCyclesAndUsesIt(double budget, double watts, double litres, double loss) {
        Basin.Build b = new Basin.Build(watts, litres, loss, 45, 15);
        Loop l = new Loop(b, relay(budget), 5).warm().run(6 * 3_600).run(DAY_S);
        assertThat(l.cycles / budget).as("of its cycles in a day").isLessThan(1.05);
        double band = DAY_S * b.riseKPerS() * 0.25 / budget;
        if (band > 0.15) {
            assertThat(l.cycles / budget).as("a narrower band spends them").isGreaterThan(0.7);
        }
    }

    @Test
    void fewerCyclesAreBoughtWithAWiderRipple() {
        Loop few = new Loop(Basin.Build.USUAL, relay(100), 6).warm().run(6 * 3_600).run(DAY_S);
        Loop many = new Loop(Basin.Build.USUAL, relay(400), 6).warm().run(6 * 3_600).run(DAY_S);
        double duty = Basin.Build.USUAL.lossWPerK() * 7 / 25;
        double band = DAY_S * Basin.Build.USUAL.riseKPerS() * duty * (1 - duty) / 100;
        assertThat(few.highC - few.lowC).as("control.md §2.1").isCloseTo(band, within(0.35 * band));
        assertThat(many.squares).isLessThan(few.squares / 4);
        assertThat(Math.sqrt(many.squares)).as("rms at 400 cycles a day").isLessThan(0.15);
    }

    @ParameterizedTest
    @ValueSource(doubles = {10, 45, 120})
    void aRelayIsNeverSwitchedWithinItsLeastTime(double leastS) {
        Switching hasty = new Switching(20_000, leastS);
        Loop l = new Loop(new Basin.Build(50, 2, 1.34, 20, 5), hasty, 7).warm();
        assertThat(l.run(6 * 3_600).shortestS).as("held").isGreaterThanOrEqualTo((int) leastS)
                .isLessThan(3_600);
        l.aimC = 25;
        assertThat(l.run(3_600).shortestS).as("told another").isGreaterThanOrEqualTo((int) leastS);
    }

    @Test
    void heatEndsAtOnceWhateverTheLeastTime() {
        Predict on = new Predict(true, 1, 0, 2, 0);
        assertThat(on.off().on()).isFalse();
        assertThat(on.off().duty()).isZero();
        assertThat(on.off().sinceS()).as("and its pause begins").isZero();
        assertThat(on.off().off().off().sinceS()).as("once").isZero();
    }

    @Test
    void anotherSetPointIsReachedWithoutPassingIt() {
        Loop l = new Loop(Basin.Build.FIERCE, SOLID, 8).warm().run(4 * 3_600);
        l.aimC = 29;
        l.warm().run(2 * 3_600);
        assertThat(l.highC - 29).isLessThan(0.06);
        l.aimC = 28;
        while (l.basin.waterC > 28.1) {
            assertThat(l.run(10).law.duty()).as("no heat on the way down").isLessThan(0.3);
        }
        l.run(3 * 3_600);
        assertThat(28 - l.lowC).as("and not below it").isLessThan(0.06);
    }

    @Test
    void aSetPointChangeMovesTheDutyByTheErrorAndNothingElse() {
        Loop l = new Loop(Basin.Build.USUAL, SOLID, 9).warm().run(4 * 3_600);
        double duty = l.law.after(l.e, 27, new Around(20, 1), SOLID).duty();
        double up = l.law.after(l.e, 27.02, new Around(20, 1), SOLID).duty();
        Predict again = l.law.after(l.e, 29, new Around(20, 1), SOLID).after(l.e, 27, new Around(20, 1),
                SOLID);
        assertThat(up - duty).isBetween(0.02, 0.2);
        assertThat(again.duty()).as("nothing was wound up in between").isEqualTo(duty);
    }

    /** A relay that is spared moves the water further anyway. */
    @Test
    void whereTheWaterIsHeldCloselyItIsLedAstrayOnceAnHour() {
        Basin basin = new Basin(Basin.Build.USUAL, 22, 11);
        Thermal t = Thermal.from(Basin.Build.USUAL.configured(1), 22);
        Predict law = Predict.IDLE;
        Around around = new Around(20, 1);
        double lowC = 99;
        for (int i = 0; i < 6 * 3_600; i++) {
            t = t.after(new Step(1, law.on() ? 1 : 0, 20, basin.second(law.on()), true), 27);
            law = law.steered(t, 27, around, SOLID);
            lowC = i > 2 * 3_600 ? Math.min(lowC, basin.waterC) : lowC;
            if (t.pulseK() < 0 && i > 2 * 3_600) {
                assertThat(law.steered(t, 27, around, SOLID).duty())
                        .isLessThanOrEqualTo(law.after(t.estimate(), 27, around, SOLID).duty());
                Switching spared = new Switching(150, 10);
                assertThat(law.steered(t, 27, around, spared).ledK()).isZero();
                assertThat(law.steered(t, 27, around, SOLID).ledK()).isEqualTo(t.pulseK());
            }
        }
        assertThat(lowC).isBetween(26.8, 26.93);
    }

    @Test
    void aConeThatCannotBeReachedIsHeatedFullyAndFollowedWhenItCan() {
        Basin.Build weak = new Basin.Build(8, 2, 1.34, 45, 15);
        Loop l = new Loop(weak, SOLID, 10).run(10 * 3_600);
        assertThat(l.basin.waterC).as("all it can: room and P/UA").isCloseTo(20 + 8 / 1.34, within(0.2));
        assertThat(l.law.duty()).isEqualTo(1);
        l.basin.roomC = 24;
        Loop later = l.warm().run(3 * 3_600);
        assertThat(later.highC - 27).as("nothing was wound up in ten hours").isLessThan(0.15);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.2, 0.3, 0.5, 0.6, 0.75, 0.77, 0.9, 0.96})
    void aSolidStateSwitchGivesItsDutyInWholeTicks(double wanted) {
        Traits t = new Traits(0.003, 0.003 * wanted / 7, 30);
        Estimate e = Estimate.first(t, 27);
        // The coast of the holding duty is already paid for in an estimate that holds it.
        for (int i = 0; i < 600; i++) {
            e = e.after(new Step(1, wanted, 20, 27, false));
        }
        Predict law = Predict.IDLE;
        int on = 0;
        double duty = 0;
        for (int i = 0; i < 2_000; i++) {
            law = law.after(e, 27, new Around(20, 1), SOLID);
            on += law.on() ? 1 : 0;
            duty += law.duty();
        }
        assertThat(on / 2_000.0).isCloseTo(duty / 2_000, within(0.002));
        assertThat(duty / 2_000).isCloseTo(wanted, within(0.02));
    }
}
