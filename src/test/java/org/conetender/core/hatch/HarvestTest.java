package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The harvest point against the derived figures of science.md §6, and against sums over single animals. */
class HarvestTest {

    private static final double AT_C = 25;
    private static final double STEP = Projection.STEP_H;

    /** T50 of 18.5 h at 25 °C, the figure of §6. */
    private static Speed lot(double sigma) {
        return new Speed(18.5 * (AT_C - 12), sigma, 0.2, 0);
    }

    private static Course fresh(double waterC) {
        return Course.from(Development.NONE, Projection.steady(waterC), Rate.USUAL);
    }

    /** "At 98–99 % hatched, 2.7–4.1 h after T90; with sigma 0.25, at 96–98 %, 3.5–5.3 h after." */
    @ParameterizedTest
    @CsvSource({"0.13, 0.0131, 0.985, 2.7", "0.17, 0.0131, 0.98, 3.1", "0.13, 0.0073, 0.992, 3.4",
        "0.17, 0.0073, 0.988, 4.1", "0.25, 0.0131, 0.964, 3.5", "0.25, 0.0073, 0.979, 5.3"})
    void theMomentOfMostFoodIsThePublishedOne(double sigma, double lossPerH, double hatched,
                                                double afterT90) {
        Harvest h = Harvest.of(fresh(AT_C), lot(sigma), lossPerH);
        double t90 = fresh(AT_C).hoursAt(lot(sigma).k90());
        assertThat(h.best().hatched()).isCloseTo(hatched, within(0.005));
        assertThat(h.best().hours() - t90).isCloseTo(afterT90, within(STEP + 0.05));
    }

    /** "At 8 h past T90 about 10 % of energy has gone (k = 0.0131/h)": what was hatched at T90, of that. */
    @Test
    void eightHoursOfWaitingCostATenth() {
        assertThat(1 - Math.exp(-8 * Harvest.lossPerH(AT_C))).isCloseTo(0.10, within(0.001));
        // The field's figures for a day without food: 22 to 37 % (science.md §6, S7).
        assertThat(1 - Math.exp(-24 * Harvest.lossPerH(AT_C))).isBetween(0.22, 0.37);
    }

    /** Where hatch flow = k·E, by the definition of §6. */
    @Test
    void atTheBestMomentAsMuchHatchesAsIsUsedUp() {
        Speed lot = lot(0.15);
        Harvest h = Harvest.of(fresh(AT_C), lot);
        double d = h.best().hours() * (AT_C - 12);
        double flow = (lot.hatchedShare(d + 0.65) - lot.hatchedShare(d - 0.65)) / 0.1;
        assertThat(flow / (Harvest.lossPerH(AT_C) * h.best().energy())).isCloseTo(1, within(0.06));
    }

    /** Animals that hatch one by one and live on their yolk, in water that swings. */
    @Test
    void theWindowIsWhereSingleAnimalsHoldNineteenTwentiethsOfTheMost() {
        Speed lot = lot(0.16);
        Random random = new Random(12);
        double[] needs = random.doubles(20_000).map(lot::degreeHoursAt).sorted().toArray();
        Projection.Plant plant = new Projection.Plant(2, 25, 1, new Room(hourly(random), 8));
        Projection p = new Projection(21, plant, new Projection.Plan(28, 20, lot.k90(), 0));
        Course course = Course.from(Development.NONE, p, Rate.USUAL);
        Harvest h = Harvest.of(course, lot);
        double[] held = new double[course.size()];
        for (int i = 0; i < needs.length; i += 10) {
            double e = 0;
            for (int t = 1; t < held.length; t++) {
                e *= Math.exp(-Harvest.lossPerH(course.waterC(t)) * STEP);
                e = e == 0 && course.done(t) >= needs[i] ? 1 : e;
                held[t] += e;
            }
        }
        double most = Arrays.stream(held).max().orElseThrow();
        int best = 0;
        int from = -1;
        int until = 0;
        for (int t = 0; t < held.length; t++) {
            best = held[t] > held[best] ? t : best;
            boolean inside = held[t] >= 0.95 * most;
            from = inside && from < 0 ? t : from;
            until = inside ? t : until;
        }
        assertThat(h.best().energy()).isCloseTo(most / (needs.length / 10.0), within(0.01));
        assertThat(h.best().hours()).isCloseTo(course.hours(best), within(0.5));
        assertThat(h.fromHours()).isCloseTo(course.hours(from), within(0.2));
        assertThat(h.untilHours()).isCloseTo(course.hours(until), within(0.2));
    }

    private static java.util.List<Double> hourly(Random random) {
        return random.doubles(24, 17, 24).boxed().toList();
    }

    /** Warm water takes the yolk sooner: the window closes earlier, by more than development is faster. */
    @Test
    void warmWaterShortensTheWindow() {
        Harvest warm = Harvest.of(fresh(29), lot(0.15));
        Harvest cool = Harvest.of(fresh(23), lot(0.15));
        double warmH = warm.untilHours() - warm.fromHours();
        double coolH = cool.untilHours() - cool.fromHours();
        assertThat(warmH / coolH).isLessThan(11.0 / 17);
        assertThat(warm.fromHours()).isLessThan(cool.fromHours());
    }

    /** Ts and the moult by §6: the same thermal law, so temperature does not decide, the lot does. */
    @ParameterizedTest
    @CsvSource({"22, 0.15, false", "28, 0.15, false", "22, 0.25, true", "28, 0.25, true"})
    void aLotThatHatchesOverLongerThanTheFirstMoultIsHarvestedTwice(double waterC, double sigma,
                                                                     boolean twice) {
        Speed lot = new Speed(271, sigma, 0.2, 0);
        Harvest h = Harvest.of(fresh(waterC), lot);
        assertThat(h.twice().isPresent()).isEqualTo(twice);
        h.twice().ifPresent(t -> {
            double done = t.firstHours() * (waterC - 12);
            assertThat(done).isCloseTo(lot.k10() + 128, within((waterC - 12) * STEP));
            assertThat(t.firstShare()).isBetween(0.4, 0.9);
            assertThat(t.secondHours()).isGreaterThan(t.firstHours());
            // Less waiting: together they bring more than the best single harvest.
            assertThat(t.energy()).isGreaterThan(h.best().energy());
        });
    }

    /** Of a lot nobody has seen it is even: who is told to catch twice has reason to. */
    @Test
    void nobodyIsSentTwiceForALotThatMayAsWellHatchAtOnce() {
        assertThat(Speed.UNKNOWN_LOT.k90() - Speed.UNKNOWN_LOT.k10()).isGreaterThan(128);
        assertThat(Harvest.of(fresh(27), Speed.UNKNOWN_LOT).twice()).isEmpty();
    }

    @Test
    void aBatchThatIsPartlyHatchedIsReckonedFromWhereItStands() {
        Harvest whole = Harvest.of(fresh(AT_C), lot(0.15));
        double doneNow = 15 * (AT_C - 12.0);
        Harvest now = Harvest.of(Course.from(new Development(doneNow, doneNow, 0, 0, 0),
                Projection.steady(AT_C), Rate.USUAL), lot(0.15));
        assertThat(now.best().hours()).isCloseTo(whole.best().hours() - 15, within(2 * STEP));
        assertThat(now.untilHours()).isCloseTo(whole.untilHours() - 15, within(2 * STEP));
        assertThat(now.best().energy()).isCloseTo(whole.best().energy(), within(0.002));
    }

    @Test
    void theQuickShareIsTheExactOne() {
        for (double z = -8; z <= 8; z += 0.0037) {
            assertThat(Harvest.share(z)).isCloseTo(Normal.share(z), within(3.1e-6));
        }
    }

    /** Nine hours at 27 °C, then arrest: of the few that hatched nobody makes a meal. */
    @Test
    void aBatchThatStopsBeforeATenthHasHatchedHasNoHourOfMostFood() {
        Development done = new Development(150, 150, 0, 0, 0);
        Harvest h = Harvest.of(Course.from(done, Projection.steady(34), Rate.USUAL), lot(0.15));
        assertThat(h.best().hours()).isInfinite();
        Development later = new Development(300, 300, 0, 0, 0);
        assertThat(Harvest.of(Course.from(later, Projection.steady(34), Rate.USUAL), lot(0.15)).best()
                .hours()).isFinite();
    }

    @Test
    void waterInWhichNothingHatchesHasNoHarvest() {
        for (double c : new double[] {11, 14, 34}) {
            Harvest h = Harvest.of(fresh(c), lot(0.25));
            assertThat(h.best().hours()).isInfinite();
            assertThat(h.twice()).isEmpty();
        }
    }
}
