package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.conetender.core.hatch.Projection.Plan;
import org.conetender.core.hatch.Projection.Plant;
import org.conetender.core.judge.Losses;
import org.junit.jupiter.api.Test;

/** The projection and its crossings against a plain integration in steps of two seconds. */
class AheadTest {

    private static final double DT_H = 2 / 3600.0;

    /** Water and degree-hours, one Euler step at a time, with a thermostat instead of a formula. */
    private static final class Plain {

        private final Projection p;
        private double water;
        private double done;
        private double hours;

        Plain(Projection p, double done) {
            this.p = p;
            this.water = p.waterC();
            this.done = done;
        }

        void step() {
            double aim = p.plan().aimC(done);
            double heatPerK = p.plant().litres() * 4_100 / 3600;
            double room = p.plant().room().aheadC(hours);
            double power = water < aim && hours >= p.plan().idleH() ? p.plant().watts() : 0;
            done += DT_H * Rate.USUAL.perHour(water);
            water += DT_H * (power - p.plant().wattsPerK() * (water - room)) / heatPerK;
            hours += DT_H;
        }

        /** Hours until so many degree-hours; infinite beyond 96. */
        double hoursUntil(double degreeHours) {
            while (done < degreeHours && hours < Forecast.HORIZON_H) {
                step();
            }
            return done < degreeHours ? Double.POSITIVE_INFINITY : hours;
        }
    }

    private static Projection draw(Random random) {
        double litres = 1 + random.nextDouble() * 10;
        double watts = random.nextInt(5) == 0 ? 0 : 5 + random.nextDouble() * 95;
        double ua = Losses.wattsPerK(litres, random.nextBoolean());
        double room = 14 + random.nextDouble() * 12;
        Plan plan = new Plan(22 + random.nextDouble() * 8, 20, 330, random.nextDouble());
        Plant plant = new Plant(litres, watts, ua, Room.constant(room));
        return new Projection(15 + random.nextDouble() * 16, plant, plan);
    }

    @Test
    void crossingsAgreeWithAPlainIntegrationToFiveMinutesInADay() {
        Random random = new Random(77);
        int reached = 0;
        for (int i = 0; i < 150; i++) {
            Projection p = draw(random);
            double done = random.nextDouble() * 250;
            Ahead ahead = Ahead.walk(done, 330, p, Rate.USUAL);
            double truth = new Plain(p, done).hoursUntil(330);
            double ours = ahead.hoursUntil(330);
            if (truth < 90) {
                reached++;
                assertThat(ours).as("%s from %s", p, done).isCloseTo(truth, within(0.02 + 0.002 * truth));
            } else {
                assertThat(ours).as("%s from %s", p, done).isGreaterThan(89);
            }
        }
        assertThat(reached).isGreaterThan(100);
    }

    @Test
    void beyondTheFloorTheCrossingsStillAgree() {
        Random random = new Random(78);
        for (int i = 0; i < 50; i++) {
            Projection p = draw(random);
            double truth = new Plain(p, 300).hoursUntil(390);
            if (truth < 90) {
                assertThat(Ahead.walk(300, 330, p, Rate.USUAL).hoursUntil(390)).as("%s", p)
                        .isCloseTo(truth, within(0.15 + 0.004 * truth));
            }
        }
    }

    @Test
    void theProjectedWaterIsThatOfAPlainIntegration() {
        Random random = new Random(79);
        for (int i = 0; i < 50; i++) {
            Projection p = draw(random);
            double[] course = p.courseC(12 * 12);
            Plain plain = new Plain(p, -10_000);
            for (int step = 1; step < course.length; step++) {
                while (plain.hours < step * Projection.STEP_H - DT_H / 2) {
                    plain.step();
                }
                assertThat(course[step]).as("%s step %d", p, step).isCloseTo(plain.water, within(0.15));
            }
        }
    }

    @Test
    void hoursUntilIsTheInverseOfWhatWillBeDone() {
        Projection p = Projection.steady(27);
        Ahead ahead = Ahead.walk(10, 330, p, Rate.USUAL);
        for (double target = 10; target < 1_400; target += 3.7) {
            assertThat(ahead.hoursUntil(target)).isCloseTo((target - 10) / 15, within(1e-9));
        }
        assertThat(ahead.hoursUntil(10 + 96 * 15 + 1)).isInfinite();
        assertThat(ahead.hoursUntil(-5)).isCloseTo(-1, within(1e-9));
    }

    @Test
    void aPauseInArrestIsWaitedThrough() {
        // 34 °C, no heater, room 19: about an hour of cooling until 33, then on.
        Projection p = new Projection(34, new Plant(10, 0, 2.7, Room.constant(19)), Plan.hold(27));
        Ahead ahead = Ahead.walk(100, 330, p, Rate.USUAL);
        double leaves = Losses.timeConstantH(10, 2.7) * Math.log(15.0 / 14.0);
        assertThat(ahead.hoursUntil(100)).isZero();
        assertThat(ahead.hoursUntil(100.0001)).isCloseTo(leaves, within(Projection.STEP_H));
    }

    @Test
    void aPartOfTheWayInALossierConeIsThatOfTheWholeWay() {
        Random random = new Random(12);
        for (int i = 0; i < 50; i++) {
            Projection p = draw(random);
            double done = random.nextDouble() * 250;
            Ahead part = Ahead.walk(done, 330, p, Rate.USUAL);
            Ahead whole = Ahead.walk(done, 330, p.lossier(), Rate.USUAL);
            for (double hours : new double[] {-1, 0, 0.01, 100 * random.nextDouble(), 96, 97}) {
                assertThat(part.doneLossier(hours)).isEqualTo(whole.doneAt(hours));
            }
        }
    }

    @Test
    void theMeanRateOfAWayIsItsDegreeHoursOverItsHours() {
        Ahead ahead = Ahead.walk(0, 330, Projection.steady(25), Rate.USUAL);
        assertThat(ahead.meanRate(330)).isCloseTo(13, within(1e-9));
        assertThat(ahead.meanRate(-5)).isCloseTo(13, within(1e-9));
        assertThat(Ahead.walk(0, 330, Projection.steady(12.5), Rate.USUAL).meanRate(330))
                .isCloseTo(0.5, within(1e-9));
    }

    /** Of an unheated batch that is nearly done only the rest goes with the water that turned cold. */
    @Test
    void aBatchThatIsNearlyDoneIsCalledReadyWithinHoursWhenItsWaterTurnsCold() {
        Projection cold = Projection.steady(14).after(Behind.growing(26));
        Forecast f = Forecast.of(new Development(390, 390, 0, 0, 0), Speed.UNKNOWN_LOT, cold, Rate.USUAL);
        assertThat(f.ready().announced()).isBetween(2.0, 9.0);
        assertThat(Forecast.of(new Development(390, 390, 0, 0, 0), Speed.UNKNOWN_LOT, Projection.steady(14),
                Rate.USUAL).ready().announced()).as("of whose past nobody knows").isBetween(2.0, 15.0);
    }

    @Test
    void aRipeBatchStaysRipeInWhateverWaterItStands() {
        double needed = ripe(27).neededDegreeHours();
        for (double c = 5; c < 35; c++) {
            assertThat(ripe(c).neededDegreeHours()).as("in water of %s °C", c)
                    .isCloseTo(needed, within(1e-9));
        }
    }

    private static Forecast ripe(double waterC) {
        return Forecast.of(new Development(405, 405, 0, 0, 0), Speed.UNKNOWN_LOT,
                Projection.steady(waterC).after(new Behind(26.7, 0.3, 400.5)), Rate.USUAL);
    }
}
