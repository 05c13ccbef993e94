package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.conetender.core.hatch.Projection.Plan;
import org.conetender.core.hatch.Projection.Plant;
import org.conetender.core.judge.Cooling;
import org.conetender.core.judge.Losses;
import org.conetender.core.unit.Span;
import org.junit.jupiter.api.Test;

/** Whole batches in a 2 L cone, told as a person would live them. */
class HatchStoryTest {

    private static final long MINUTE = 60_000;
    private static final Speed LOT = Speed.UNKNOWN_LOT;
    private static final double UA = Losses.wattsPerK(2, true);
    private static final double TAU_H = Losses.timeConstantH(2, UA);

    private static Forecast forecast(Development d, double waterC, double watts) {
        return Forecast.of(d, LOT, new Projection(waterC, new Plant(2, watts, UA, Room.constant(19)),
                Plan.hold(27)), Rate.USUAL);
    }

    @Test
    void aForecastThatComesTrueNeverMoves() {
        Plant plant = new Plant(2, 50, UA, Room.constant(19));
        double[] course = new Projection(19, plant, Plan.hold(27)).courseC(288);
        Development d = Development.NONE;
        double first = forecast(d, 19, 50).ready().median();
        for (int step = 0; step < 200; step++) {
            for (int minute = 0; minute < 5; minute++) {
                double c = course[step] + (course[step + 1] - course[step]) * (minute + 0.5) / 5;
                d = d.advance(MINUTE, c, c, Zones.USUAL);
            }
            Forecast f = forecast(d, course[step + 1], 50);
            assertThat(f.ready().median() + (step + 1) / 12.0).isCloseTo(first, within(0.03));
        }
    }

    @Test
    void theIntervalIsAsWideInDegreeHoursAtTheEndAsAtTheStartWhileNobodyLooks() {
        Forecast start = forecast(Development.NONE, 27, 50);
        Forecast later = forecast(new Development(300, 300, 0, 0, 0), 27, 50);
        double atStart = start.ready().latest() - start.ready().median();
        double atEnd = later.ready().latest() - later.ready().median();
        assertThat(atEnd).isCloseTo(atStart, within(0.3));
    }

    @Test
    void aHeaterThatFailsAtNightDelaysTheFeedAndIsSeenAtOnce() {
        Development d = new Development(150, 150, 0, 0, 0);
        double well = forecast(d, 27, 50).ready().median();
        Forecast failed = forecast(d, 27, 0);
        assertThat(failed.ready().median()).isGreaterThan(well + 7);
        assertThat(failed.reachable()).isTrue();
        assertThat(failed.course().calibrated()).isFalse();
    }

    @Test
    void aPowerCutOfTwoHoursCostsHoursAndCertaintyButNoProgress() {
        Development before = new Development(150, 150, 0, 0, 0);
        double after = 19 + 8 * Math.exp(-2 / TAU_H);
        Gap cut = new Gap(Span.exactly(120 * MINUTE), 27, after, 19, Cooling.nominal(TAU_H), false);
        Development d = before.acrossGap(cut, Zones.USUAL);
        assertThat(d.leastDegreeHours()).isGreaterThan(150 + 2 * 6);
        assertThat(d.mostDegreeHours()).isLessThan(150 + 2 * 15);
        double truth = 150 + 2 * 7 + 8 * TAU_H * (1 - Math.exp(-2 / TAU_H));
        assertThat(truth).isBetween(d.leastDegreeHours(), d.mostDegreeHours());
        Forecast f = forecast(d, after, 50);
        Forecast uncut = forecast(before, 27, 50);
        assertThat(f.ready().median() + 2).isGreaterThan(uncut.ready().median());
    }

    @Test
    void twoCutsAddUpTheirDoubts() {
        Gap gap = new Gap(Span.exactly(60 * MINUTE), 27, 24.5, 19, Cooling.nominal(TAU_H), false);
        Development one = new Development(100, 100, 0, 0, 0).acrossGap(gap, Zones.USUAL);
        Development two = one.acrossGap(gap, Zones.USUAL);
        assertThat(two.mostDegreeHours() - two.leastDegreeHours())
                .isCloseTo(2 * (one.mostDegreeHours() - one.leastDegreeHours()), within(1e-9));
    }

    @Test
    void aBatchPickedUpFromItsCheckpointGoesOnAsIfNothingHadHappened() {
        Random random = new Random(12);
        Development through = Development.NONE;
        Development resumed = Development.NONE;
        for (int i = 0; i < 600; i++) {
            double c = 20 + 14 * random.nextDouble();
            through = through.advance(MINUTE, c - 0.1, c + 0.1, Zones.USUAL);
            resumed = resumed.advance(MINUTE, c - 0.1, c + 0.1, Zones.USUAL);
            if (i % 60 == 0) {
                resumed = new Development(resumed.leastDegreeHours(), resumed.mostDegreeHours(),
                        resumed.hoursWarm(), resumed.hoursCold(), resumed.hoursAboveLoss());
            }
        }
        assertThat(resumed).isEqualTo(through);
    }

    @Test
    void anOverheatedAfternoonStopsTheClockAndTheHarvestMovesByItsLength() {
        Development d = new Development(150, 150, 0, 0, 0);
        double before = forecast(d, 27, 50).ready().median();
        for (int minute = 0; minute < 180; minute++) {
            d = d.advance(MINUTE, 35, 35, Zones.USUAL);
        }
        assertThat(d.degreeHours()).isEqualTo(150);
        assertThat(d.hoursWarm()).isCloseTo(3, within(1e-9));
        // Back at 27 °C the way left is as long as before the heat: three hours were lost, no more.
        assertThat(forecast(d, 27, 50).ready().median()).isEqualTo(before);
    }

    @Test
    void theHatchedBandHoldsFourTruthsInFive() {
        Random random = new Random(31);
        Forecast f = forecast(new Development(270, 270, 0, 0, 0), 27, 50);
        int inside = 0;
        for (int i = 0; i < 4_000; i++) {
            double k50 = 271 * Math.exp(0.2 * random.nextGaussian() + 0.03 * random.nextGaussian());
            double done = 270 * (1 + 0.2 * random.nextGaussian() / 15);
            double share = new Speed(k50, LOT.sigma(), 0, 0).hatchedShare(done);
            inside += share >= f.hatched().low() && share <= f.hatched().high() ? 1 : 0;
        }
        assertThat(inside / 4_000.0).isBetween(0.77, 0.83);
    }

    @Test
    void theAirCapOfAUsualChargeIsTheWaterNotTheClock() {
        // 2 g in 2 L at the harvest point: 225 animals per mL leave longer than the house rule of 12.
        double thin = Oxygen.airOffMinutes(new Oxygen.Charge(2, 2, 25, Oxygen.USUAL_NAUPLII_PER_G, 0.9), 27);
        double dense = Oxygen.airOffMinutes(new Oxygen.Charge(10, 2, 25, 250_000, 0.9), 27);
        assertThat(thin).isGreaterThan(12);
        assertThat(dense).isBetween(2.0, 6.0);
    }
}
