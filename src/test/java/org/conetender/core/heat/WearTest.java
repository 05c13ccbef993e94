package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.conetender.core.heat.Predict.Around;
import org.conetender.core.heat.Predict.Switching;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Estimate;
import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.settings.Cone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A relay's budget is kept by what its switch really did, whoever caused it. */
class WearTest {

    private static final int HOUR_S = 3_600;
    private static final int DAY_S = 24 * HOUR_S;

    /** Second by second when the switch closed, in two days of holding 27 °C. */
    private static List<Integer> closings(Basin.Build build, Switching kind, Random random, boolean counted) {
        Basin basin = new Basin(build, 20, random.nextLong());
        Estimate e = Estimate.first(build.configured(0.7 + 0.6 * random.nextDouble()), 20);
        Predict law = Predict.IDLE;
        Wear wear = Wear.begun(0);
        List<Integer> at = new ArrayList<>();
        boolean on = false;
        boolean was = false;
        int warmAt = -1;
        int doubtS = 0;
        for (int t = 0; warmAt < 0 || t < warmAt + 2 * DAY_S; t++) {
            boolean closed = on && !was;
            was = on;
            e = e.after(new Step(1, on ? 1 : 0, 20, basin.second(on), true));
            wear = wear.after(closed, 1, kind);
            law = law.after(e, 27, new Around(20, 1), counted ? wear.left(kind) : kind);
            // What a doubt or a guard does: soon after it went on it is off again, for a minute or three.
            doubtS = doubtS > 0 ? doubtS - 1
                    : closed && random.nextInt(8) == 0 ? 80 + random.nextInt(120) : 0;
            law = doubtS > 0 && doubtS < 180 ? law.off() : law;
            on = law.on();
            warmAt = warmAt < 0 && basin.waterC > 26.5 ? t : warmAt;
            if (closed && warmAt >= 0) {
                at.add(t - warmAt);
            }
        }
        return at;
    }

    /** The most in any day of the two. */
    private static int most(List<Integer> at) {
        int most = 0;
        for (int i = 0, from = 0; i < at.size(); i++) {
            while (at.get(i) - at.get(from) >= DAY_S) {
                from++;
            }
            most = Math.max(most, i - from + 1);
        }
        return most;
    }

    private static Basin.Build build(Random r) {
        double litres = Math.exp(Math.log(0.5) + r.nextDouble() * Math.log(40));
        double watts = litres * (6 + 19 * r.nextDouble());
        return new Basin.Build(watts, litres, 0.1 * watts * (0.3 + r.nextDouble()), 20 + 70 * r.nextDouble(),
                5 + 15 * r.nextDouble());
    }

    /** Two in a hundred over its budget, and the cycle that it is in. */
    private static int bound(Switching kind) {
        return (int) Math.ceil(1.02 * kind.cyclesPerDay()) + 1;
    }

    /** Seeded: budgets, heaters and interruptions at random, one in eight cycles cut short. */
    @Test
    void noDayHasMoreCyclesThanItsBudgetWhateverTheBudget() {
        int more = 0;
        for (int seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            Switching kind = new Switching(50 + random.nextInt(550), 10);
            Basin.Build b = build(random);
            long dice = random.nextLong();
            int kept = most(closings(b, kind, new Random(dice), true));
            assertThat(kept).as("seed %d: of %.0f a day", seed, kind.cyclesPerDay())
                    .isLessThanOrEqualTo(bound(kind));
            more += most(closings(b, kind, new Random(dice), false)) > bound(kind) ? 1 : 0;
        }
        assertThat(more).as("budgets passed where nobody counts").isGreaterThan(10);
    }

    /** Seeded: where the cone is not known, or a mat warms it, the duty's windows keep the budget. */
    @Test
    void thePlainLawsWindowsKeepAnyBudgetToo() {
        for (int seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            double budget = 50 + random.nextInt(310);
            Cone.Heat heat = new Cone.Heat(Cone.HeatKind.MAT, 25, Cone.SwitchKind.RELAY, false,
                    new Cone.Contacts(budget, 100_000));
            Wear wear = Wear.begun(0);
            Share.Credit credit = Share.Credit.NONE;
            double duty = random.nextDouble();
            boolean on = false;
            int closings = 0;
            for (int t = 0; t < DAY_S; t++) {
                duty = Math.clamp(duty + 0.002 * random.nextGaussian(), 0.01, 0.99);
                credit = Share.after(credit, duty, on,
                        new Share.Window(1_000, Hold.dutyWindowMs(heat, wear)));
                wear = wear.after(credit.wants() && !on, 1, Hold.switching(heat));
                closings += credit.wants() && !on ? 1 : 0;
                on = credit.wants();
            }
            assertThat(closings).as("seed %d: of %.0f a day", seed, budget).isGreaterThan(5)
                    .isLessThanOrEqualTo((int) Math.ceil(1.02 * budget) + 1);
        }
    }

    @ParameterizedTest
    @CsvSource({"12,2,1.34,45", "25,2,1.34,90", "50,2,1.5,45", "60,20,4.4,90"})
    void thePlainLawHoldsWithSuchWindowsWhatItsRippleAllows(double watts, double litres, double loss,
            double lagS) {
        Basin basin = new Basin(new Basin.Build(watts, litres, loss, lagS, 15), 20, 3);
        Cone.Heat heat = new Cone.Heat(Cone.HeatKind.MAT, watts, Cone.SwitchKind.RELAY, false);
        Hold.Plant plant = Hold.Plant.of(heat, litres, loss, 7);
        Wear wear = Wear.begun(0);
        Hold hold = Hold.IDLE;
        Share.Credit credit = Share.Credit.NONE;
        boolean on = false;
        int closings = 0;
        double worst = 0;
        for (int t = 0; t < 2 * DAY_S; t++) {
            hold = hold.after(27 - basin.second(on), 27, 1_000, plant);
            credit = Share.after(credit, hold.duty(), on,
                    new Share.Window(1_000, Hold.dutyWindowMs(heat, wear)));
            wear = wear.after(credit.wants() && !on, 1, Hold.switching(heat));
            closings += credit.wants() && !on && t >= DAY_S ? 1 : 0;
            on = credit.wants();
            worst = t < DAY_S ? 0 : Math.max(worst, Math.abs(basin.waterC - 27));
        }
        assertThat(worst).as("K off in the second day").isLessThan(1.5 * Hold.swingK(heat, litres) + 0.15);
        assertThat(closings).as("in it").isLessThanOrEqualTo(154);
    }

    @Test
    void eachClosingCountsAndTimePaysItBack() {
        Switching kind = new Switching(150, 10);
        Wear w = Wear.begun(7);
        for (int i = 0; i < 5; i++) {
            w = w.after(true, 1, kind);
        }
        assertThat(w.closings()).isEqualTo(12);
        assertThat(w.ahead()).isCloseTo(5, within(0.02));
        for (int t = 0; t < 2 * 576; t++) {
            w = w.after(false, 1, kind);
        }
        assertThat(w.closings()).isEqualTo(12);
        assertThat(w.ahead()).as("two cycles later").isCloseTo(3, within(0.05));
        for (int t = 0; t < DAY_S; t++) {
            w = w.after(false, 1, kind);
        }
        assertThat(w.ahead()).as("nothing is saved up").isZero();
    }

    @Test
    void theLawIsLeftLessWhenMoreWasUsedAndNeverLessThanTwoThirds() {
        Switching kind = new Switching(150, 10);
        assertThat(new Wear(0, 0).left(kind)).isEqualTo(kind);
        assertThat(new Wear(0, 1).left(kind)).as("the cycle it is in").isEqualTo(kind);
        assertThat(new Wear(0, 3).left(kind).cyclesPerDay()).isCloseTo(150 / 1.2, within(1e-9));
        assertThat(new Wear(0, 500).left(kind)).isEqualTo(new Switching(100, 10));
    }

    @Test
    void aSolidStateSwitchHasNothingToSpare() {
        Switching kind = new Switching(Double.POSITIVE_INFINITY, 1);
        Wear w = Wear.begun(0).after(true, 1, kind).after(true, 1, kind);
        assertThat(w).isEqualTo(new Wear(2, 0));
        assertThat(w.left(kind)).isEqualTo(kind);
    }
}
