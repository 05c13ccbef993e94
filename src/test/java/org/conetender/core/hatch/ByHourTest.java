package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.conetender.core.hatch.ByHour.Answer;
import org.conetender.core.hatch.ByHour.Band;
import org.conetender.core.hatch.ByHour.Reach;
import org.conetender.core.hatch.Projection.Plan;
import org.conetender.core.hatch.Projection.Plant;
import org.conetender.core.settings.Cone;
import org.junit.jupiter.api.Test;

/** One set-point for an hour: laws over random cones and lots, then the cases a person meets. */
class ByHourTest {

    private static final Band BAND = Band.of(new Cone.Limits(27, 31, 33, 38, 20));
    private static final Speed KNOWN = new Speed(271, 0.15, 0.03, 5);

    private static ByHour by(Development done, Speed speed, Projection water) {
        return new ByHour(done, speed, water, Rate.USUAL);
    }

    private static Projection water(double nowC, double watts, double roomC) {
        return new Projection(nowC, new Plant(2, watts, 1, Room.constant(roomC)), new Plan(27, 20,
                KNOWN.calledReadyAt(), 0));
    }

    private static Development done(double degreeHours) {
        return new Development(degreeHours, degreeHours, 0, 0, 0);
    }

    private static ByHour random(Random r) {
        Speed speed = r.nextBoolean() ? Speed.UNKNOWN_LOT : new Speed(200 + r.nextInt(160),
                0.1 + 0.1 * r.nextDouble(), 0.03, 3);
        Projection p = new Projection(12 + r.nextInt(18), new Plant(0.5 + r.nextInt(20), r.nextInt(120),
                0.5 + r.nextInt(5), Room.constant(12 + r.nextInt(18))), new Plan(27, 20,
                speed.calledReadyAt(), 0));
        return by(done(r.nextInt(250)), speed, p);
    }

    @Test
    void theBandEndsWhereASetPointDoesAndWhereHatchTimesAreWellKnown() {
        assertThat(BAND).isEqualTo(new Band(22, 30));
        assertThat(Band.of(new Cone.Limits(24, 26, 33, 38, 20))).as("a cone with a low guard")
                .isEqualTo(new Band(22, 25));
        assertThat(Band.of(new Cone.Limits(20, 21.5, 33, 38, 15))).as("never above what is safe")
                .isEqualTo(new Band(20.5, 20.5));
    }

    /** But for seconds, where a cone that loses more than it is taken to does not get so warm. */
    @Test
    void warmerIsNeverLater() {
        for (int seed = 1; seed <= 300; seed++) {
            ByHour by = random(new Random(seed));
            double before = Double.POSITIVE_INFINITY;
            for (double c = BAND.leastC(); c <= BAND.mostC(); c += 0.5) {
                double ready = by.at(c, 10).readyHours();
                assertThat(ready).as("seed %d at %s °C", seed, c).isLessThanOrEqualTo(before + 0.003);
                before = ready;
            }
        }
    }

    @Test
    void theChanceOfAnHourIsThatOfTheForecast() {
        for (int seed = 1; seed <= 200; seed++) {
            ByHour by = random(new Random(seed));
            Forecast.Ready r = Forecast.of(by.done(), by.speed(), new Projection(by.water().waterC(),
                    by.water().plant(), by.water().plan().at(26)), Rate.USUAL).ready();
            if (r.latest() < Forecast.HORIZON_H && r.earliest() > 0) {
                assertThat(by.chance(26, r.earliest())).as("seed %d", seed).isCloseTo(0.1, within(0.005));
                assertThat(by.chance(26, r.earlierQuartile())).isCloseTo(0.25, within(0.005));
                assertThat(by.chance(26, r.median())).isCloseTo(0.5, within(0.005));
                assertThat(by.chance(26, r.latest())).isCloseTo(0.9, within(0.005));
            }
        }
    }

    @Test
    void theAnswerLiesInTheBandAndComesAsNearAsTheBandAllows() {
        int met = 0;
        for (int seed = 1; seed <= 1_500; seed++) {
            Random r = new Random(seed);
            ByHour by = random(r);
            double hours = 8 + r.nextDouble() * 30;
            Answer a = by.solve(hours, BAND);
            String run = "seed " + seed + ", " + hours + " h: " + a;
            assertThat(a.setC()).as(run).isBetween(BAND.leastC(), BAND.mostC());
            assertThat(a).as(run).isEqualTo(by.at(a.setC(), hours));
            double soonest = by.at(BAND.mostC(), hours).readyHours();
            double latest = by.at(BAND.leastC(), hours).readyHours();
            switch (a.reach()) {
                case MET -> {
                    met++;
                    assertThat(a.readyHours()).as(run).isCloseTo(hours, within(ByHour.MISS_H));
                }
                case LATER -> assertThat(a.readyHours()).as(run).isEqualTo(soonest);
                case EARLIER -> assertThat(a.readyHours()).as(run).isEqualTo(latest);
            }
            if (hours > soonest && hours < latest) {
                assertThat(a.reach()).as(run + " lies between " + soonest + " and " + latest)
                        .isEqualTo(Reach.MET);
            }
        }
        assertThat(met).as("hours that can be kept").isBetween(200, 1_400);
    }

    @Test
    void aLaterHourNeverWantsWarmerWater() {
        for (int seed = 1; seed <= 100; seed++) {
            ByHour by = random(new Random(seed));
            double before = Double.POSITIVE_INFINITY;
            for (double h = 1; h < 60; h += 1.5) {
                double c = by.solve(h, BAND).setC();
                assertThat(c).as("seed %d, %s h", seed, h).isLessThanOrEqualTo(before + 0.051);
                before = c;
            }
        }
    }

    @Test
    void aDayAheadOfAKnownLotIsHeldWhereTheDegreeHoursAddUp() {
        // K90 = 271·exp(1.2816·0.15) = 328.4 °C·h; in 22 h that is 14.93 above a base of 12 °C.
        Answer a = by(Development.NONE, KNOWN, water(26.9, 50, 20)).solve(22, BAND);
        assertThat(a.setC()).isCloseTo(26.95, within(0.1));
        assertThat(a.reach()).isEqualTo(Reach.MET);
        Answer half = by(done(164.2), KNOWN, water(26.9, 50, 20)).solve(11, BAND);
        assertThat(half.setC()).as("half way, half the time").isCloseTo(26.95, within(0.15));
    }

    @Test
    void aColdConeIsHeldWarmerBecauseItsWarmingUpTakesTime() {
        double warm = by(Development.NONE, KNOWN, water(25, 50, 20)).solve(24, BAND).setC();
        double cold = by(Development.NONE, KNOWN, water(15, 20, 14)).solve(24, BAND).setC();
        assertThat(cold).isGreaterThan(warm + 0.2);
    }

    @Test
    void whatIsHeldStaysWhileItServesAndMovesWhenItDoesNot() {
        ByHour by = by(done(60), KNOWN, water(25.5, 50, 20));
        double solved = by.solve(20, BAND).setC();
        assertThat(by.solve(20, BAND, solved).setC()).isEqualTo(solved);
        assertThat(by.solve(20, BAND, solved + 0.05).setC()).as("one step off serves too")
                .isEqualTo(solved + 0.05);
        assertThat(by.solve(20, BAND, solved + 0.4).setC()).isEqualTo(solved);
        assertThat(by.solve(20, BAND, 35).setC()).as("whatever was held").isEqualTo(solved);
    }

    @Test
    void noiseOfTheProbeMovesNothing() {
        Random r = new Random(3);
        double held = by(done(60), KNOWN, water(25.5, 50, 20)).solve(20, BAND).setC();
        for (int i = 0; i < 500; i++) {
            double probe = Math.round((25.5 + 0.06 * r.nextGaussian()) / 0.0625) * 0.0625;
            assertThat(by(done(60), KNOWN, water(probe, 50, 20)).solve(20, BAND, held).setC())
                    .isEqualTo(held);
        }
    }

    @Test
    void inTheLastHalfHourNothingMoves() {
        ByHour by = by(done(322), KNOWN, water(26, 50, 20));
        assertThat(by.solve(0.4, BAND, 24).setC()).isEqualTo(24);
        assertThat(by.solve(-1, BAND, 30).setC()).as("and after the hour").isEqualTo(30);
        assertThat(by.solve(0.8, BAND, 23).setC()).as("before it does").isNotEqualTo(23);
    }

    @Test
    void waterThatNothingWarmsIsToldFromWaterThatIsTooWarm() {
        Answer cold = by(Development.NONE, KNOWN, water(11, 0, 11)).solve(30, BAND);
        assertThat(cold.reach()).isEqualTo(Reach.LATER);
        assertThat(cold.readyHours()).isInfinite();
        Answer hot = by(Development.NONE, KNOWN, water(29, 50, 29)).solve(30, BAND);
        assertThat(hot.reach()).as("the room alone brings it sooner").isEqualTo(Reach.EARLIER);
        assertThat(hot.setC()).isEqualTo(22);
    }
}
