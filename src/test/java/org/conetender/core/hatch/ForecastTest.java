package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.conetender.core.hatch.Projection.Plan;
import org.conetender.core.hatch.Projection.Plant;
import org.conetender.core.judge.Losses;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ForecastTest {

    private static final Speed NEW = Speed.UNKNOWN_LOT;
    private static final Speed KNOWN = new Speed(250, 0.14, 0.05, 4);
    private static final double UA = Losses.wattsPerK(2, true);

    private static Development done(double degreeHours) {
        return new Development(degreeHours, degreeHours, 0, 0, 0);
    }

    private static Projection held(double waterC, double setpointC) {
        return new Projection(waterC, new Plant(2, 50, UA, Room.constant(19)), Plan.hold(setpointC));
    }

    private static Forecast at(double degreeHours, double waterC) {
        return Forecast.of(done(degreeHours), NEW, Projection.steady(waterC), Rate.USUAL);
    }

    @Test
    void degreeHoursNeededLessThoseDoneOverTheRateGiveTheHours() {
        Forecast f = Forecast.of(done(100), KNOWN, Projection.steady(27), Rate.USUAL);
        assertThat(f.neededDegreeHours()).isCloseTo(250 * Math.exp(1.2816 * 0.14), within(0.01));
        assertThat(f.ready().median()).isCloseTo((f.neededDegreeHours() - 100) / 15, within(1e-6));
        assertThat(f.t10Hours()).isCloseTo((KNOWN.k10() - 100) / 15, within(1e-6));
        assertThat(f.hatched().median()).isLessThan(0.001);
    }

    @Test
    void warmUpDelaysTheHarvestByWhatTheColdStartCosts() {
        double delay = Forecast.of(Development.NONE, NEW, held(19, 27), Rate.USUAL).ready().median()
                - Forecast.of(Development.NONE, NEW, held(27, 27), Rate.USUAL).ready().median();
        // About 0.4 h below the set-point, 4 K short on average of 15.
        assertThat(delay).isBetween(0.08, 0.16);
    }

    @Test
    void aLotNotYetKnownIsAnnouncedLateAndAKnownOneAtItsMedian() {
        Forecast unknown = at(0, 27);
        Forecast known = Forecast.of(done(0), KNOWN, Projection.steady(27), Rate.USUAL);
        assertThat(unknown.ready().announced()).isEqualTo(unknown.ready().laterQuartile())
                .isGreaterThan(unknown.ready().median());
        assertThat(known.ready().announced()).isEqualTo(known.ready().median());
        assertThat(known.ready().latest() - known.ready().earliest())
                .isLessThan((unknown.ready().latest() - unknown.ready().earliest()) / 2);
    }

    @Test
    void theNumbersOfAForecastAreInOrder() {
        Random random = new Random(3);
        for (int i = 0; i < 500; i++) {
            double least = random.nextDouble() * 400;
            Development d = new Development(least, least + random.nextDouble() * 60, 0, 0, 0);
            Projection water = held(15 + random.nextDouble() * 15, 20 + random.nextDouble() * 11);
            Forecast f = Forecast.of(d, NEW, water, Rate.USUAL);
            assertThat(f.ready().earliest()).isLessThanOrEqualTo(f.ready().median());
            assertThat(f.ready().median()).isLessThanOrEqualTo(f.ready().laterQuartile());
            assertThat(f.ready().laterQuartile()).isLessThanOrEqualTo(f.ready().latest());
            assertThat(f.t10Hours()).isLessThanOrEqualTo(f.ready().median());
            assertThat(f.hatched().low()).isBetween(0.0, f.hatched().median());
            assertThat(f.hatched().high()).isBetween(f.hatched().median(), 1.0);
        }
    }

    @Test
    void moreDegreeHoursDoneNeverMeanLater() {
        double last = Double.POSITIVE_INFINITY;
        for (double dh = 0; dh < 500; dh += 7) {
            double median = at(dh, 26).ready().median();
            assertThat(median).isLessThan(last);
            last = median;
        }
        assertThat(last).isNegative();
    }

    @ParameterizedTest(name = "{0} °C")
    @CsvSource({"34, TOO_WARM, stands still", "33, TOO_WARM, in arrest", "11, TOO_COLD, too cold",
        "13, TOO_SLOW, too slow", "26, REACHED, developing"})
    void whereTheWaterNeverGetsThereTheForecastSaysWhy(double waterC, Forecast.End end, String words) {
        Forecast f = at(50, waterC);
        assertThat(f.course().end()).isEqualTo(end);
        assertThat(f.reachable()).isEqualTo(end == Forecast.End.REACHED);
        assertThat(f.sentence()).contains(words);
        assertThat(Double.isInfinite(f.ready().median())).isEqualTo(!f.reachable());
    }

    @Test
    void arrestNowDoesNotHideAHarvestThatComesOnceTheWaterHasCooled() {
        Forecast f = Forecast.of(done(200), NEW, held(34, 27), Rate.USUAL);
        assertThat(f.reachable()).isTrue();
        assertThat(f.course().headingC()).isEqualTo(27);
        assertThat(f.ready().median()).isGreaterThan((NEW.k90() - 200) / 15);
    }

    @Test
    void aHeaterThatCannotReachTheSetPointIsSeenComing() {
        Projection weak = new Projection(16, new Plant(2, 4, UA, Room.constant(16)), Plan.hold(27));
        Forecast f = Forecast.of(Development.NONE, NEW, weak, Rate.USUAL);
        assertThat(f.ready().median()).isGreaterThan(NEW.k90() / (weak.plant().reachC() - 12));
        assertThat(f.course().headingC()).isLessThan(weak.plant().reachC());
    }

    @Test
    void onceHeatIsLetDownToTheFloorASlowLotTakesLonger() {
        Plant plant = new Plant(2, 50, UA, Room.constant(19));
        Forecast floor = Forecast.of(done(300), NEW,
                new Projection(27, plant, new Plan(27, 20, NEW.calledReadyAt(), 0)), Rate.USUAL);
        Forecast held = Forecast.of(done(300), NEW, new Projection(27, plant, Plan.hold(27)), Rate.USUAL);
        assertThat(floor.ready().median()).isCloseTo(held.ready().median(), within(0.01));
        assertThat(floor.ready().latest()).isGreaterThan(held.ready().latest() + 1);
        assertThat(floor.course().headingC()).isEqualTo(27);
    }

    @Test
    void aGapWidensTheForecast() {
        Forecast narrow = Forecast.of(done(200), KNOWN, Projection.steady(26), Rate.USUAL);
        Development vague = new Development(160, 240, 0, 0, 0);
        Forecast wide = Forecast.of(vague, KNOWN, Projection.steady(26), Rate.USUAL);
        assertThat(wide.ready().median()).isCloseTo(narrow.ready().median(), within(1e-9));
        assertThat(wide.ready().latest()).isGreaterThan(narrow.ready().latest() + 1);
        assertThat(wide.ready().earliest()).isLessThan(narrow.ready().earliest() - 0.8);
    }

    @Test
    void outsideThePublishedTemperaturesTheIntervalIsWiderAndSaysSo() {
        Forecast inside = at(0, 25);
        Forecast outside = at(0, 17);
        assertThat(inside.course().calibrated()).isTrue();
        assertThat(outside.course().calibrated()).isFalse();
        assertThat(at(0, 31).course().calibrated()).isFalse();
        assertThat(outside.ready().latest() / outside.ready().median())
                .isGreaterThan(inside.ready().latest() / inside.ready().median() + 0.03);
        // science.md §2.3: 41.8 h against 50 h at 18 °C.
        assertThat(Doubt.Form.reach(18, 12)).isCloseTo(Math.log(41.8 / 50), within(0.001));
        assertThat(Doubt.Form.reach(24, 12)).isCloseTo(0, within(1e-12));
    }

    /** Where warmer water is slower, and steeply so, a fifth of a kelvin makes more of a difference. */
    @Test
    void aboveThirtyDegreesTheIntervalIsWiderThanAtTheSameRateBelow() {
        Forecast warm = at(0, 32);
        Forecast cool = at(0, 12 + 20.0 / 3);
        assertThat(warm.ready().median()).isCloseTo(cool.ready().median(), within(1e-6));
        assertThat(warm.ready().latest() / warm.ready().median())
                .isGreaterThan(cool.ready().latest() / cool.ready().median() + 0.03);
        assertThat(Double.isFinite(at(0, 32.7).ready().earliest())).isTrue();
    }

    /** Truths drawn from the model's own prior; the 10 to 90 % interval should hold four in five. */
    @ParameterizedTest(name = "{0} °C, {1} degree-hours done")
    @CsvSource({"23, 0", "25.5, 0", "28, 0", "25.5, 150"})
    void fourOfFiveTruthsOfThePriorLieInTheInterval(double waterC, double doneSoFar) {
        Random random = new Random(20_260);
        int inside = 0;
        int belowMedian = 0;
        int n = 4_000;
        Forecast f = at(doneSoFar, waterC);
        for (int i = 0; i < n; i++) {
            double k50 = 271 * Math.exp(0.20 * random.nextGaussian() + 0.03 * random.nextGaussian());
            double sigma = random.nextDouble(0.10, 0.28);
            double offset = 0.2 * random.nextGaussian();
            double trueRate = waterC + offset - 12;
            double trueDone = doneSoFar * trueRate / (waterC - 12);
            double ready = (k50 * Math.exp(1.2816 * sigma) - trueDone) / trueRate;
            inside += ready >= f.ready().earliest() && ready <= f.ready().latest() ? 1 : 0;
            belowMedian += ready <= f.ready().median() ? 1 : 0;
        }
        assertThat(inside / (double) n).isBetween(0.77, 0.83);
        assertThat(belowMedian / (double) n).isBetween(0.47, 0.53);
    }

    @Test
    void aHeaterThatJustHoldsItLeavesTheHourOpen() {
        double watts = UA * (27 - 19);
        Projection just = new Projection(27, new Plant(2, watts, UA, Room.constant(19)), Plan.hold(27));
        Forecast strong = Forecast.of(done(100), KNOWN, held(27, 27), Rate.USUAL);
        Forecast weak = Forecast.of(done(100), KNOWN, just, Rate.USUAL);
        assertThat(weak.ready().median()).isCloseTo(strong.ready().median(), within(0.01));
        assertThat(weak.ready().latest()).isGreaterThan(strong.ready().latest() + 0.2);
    }

    @Test
    void aPointThatIsBehindHasNegativeHours() {
        Forecast f = at(NEW.k90() + 30, 27);
        assertThat(f.ready().median()).isCloseTo(-2, within(1e-6));
        assertThat(f.reachable()).isTrue();
        assertThat(at(NEW.k90() + 30, 34).ready().median()).isFinite().isLessThanOrEqualTo(0);
    }

    @Test
    void lotsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> new Speed(0, 0.15, 0.2, 0)).hasMessageContaining("K50 0.0");
        assertThatThrownBy(() -> new Speed(271, Double.NaN, 0.2, 0)).hasMessageContaining("sigma NaN");
    }
}
