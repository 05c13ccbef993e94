package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.hatch.Projection.Plan;
import org.conetender.core.hatch.Projection.Plant;
import org.conetender.core.judge.Estimate;
import org.conetender.core.judge.Losses;
import org.conetender.core.judge.Traits;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProjectionTest {

    private static final double UA = Losses.wattsPerK(2, true);

    private static Plant twoLitres(double watts, double roomC) {
        return new Plant(2, watts, UA, Room.constant(roomC));
    }

    @ParameterizedTest(name = "{0} L")
    @CsvSource({"2, 0.94, 1.34, 2.4, 1.7", "10, 2.7, 3.9, 4.2, 2.9", "20, 4.4, 6.2, 5.2, 3.7"})
    void lossesAndTimeConstantsAreThoseOfTheWorkedCones(double litres, double lid, double open,
                                                        double lidH, double openH) {
        assertThat(Losses.wattsPerK(litres, true)).isCloseTo(lid, within(1e-9));
        assertThat(Losses.wattsPerK(litres, false)).isCloseTo(open, within(1e-9));
        assertThat(Losses.timeConstantH(litres, lid)).isCloseTo(lidH, within(0.051));
        assertThat(Losses.timeConstantH(litres, open)).isCloseTo(openH, within(0.051));
    }

    @Test
    void betweenAndBeyondTheWorkedConesLossesGrowSlowerThanVolume() {
        double last = 0;
        for (double litres = 0.5; litres <= 60; litres += 0.5) {
            double ua = Losses.wattsPerK(litres, true);
            assertThat(ua).isGreaterThan(last);
            assertThat(Losses.timeConstantH(litres, ua)).isLessThan(10);
            last = ua;
        }
        assertThat(Losses.wattsPerK(5, false)).isBetween(2.2, 2.6);
        assertThatThrownBy(() -> Losses.wattsPerK(0, true)).hasMessageContaining("more than 0 L");
    }

    @Test
    void coldWaterWarmsAtTheHeatersPowerLessLossesAndThenHolds() {
        // 50 W in 2 L: 22 K/h before losses; 8 K up from room temperature takes about 24 minutes.
        double[] course = new Projection(19, twoLitres(50, 19), Plan.hold(27)).courseC(24);
        double tau = Losses.timeConstantH(2, UA) * 12;
        double after4 = 19 + 50 / UA * (1 - Math.exp(-4 / tau));
        assertThat(course[4]).isCloseTo(after4, within(1e-6)).isLessThan(27);
        assertThat(course[5]).isEqualTo(27);
        assertThat(course[24]).isEqualTo(27);
    }

    private static Estimate driven(double joulesPerS, int seconds) {
        Traits nominal = Traits.nominal(25, UA, 2 * Units.BRINE_J_PER_L_K);
        Estimate e = Estimate.first(nominal, 20);
        double c = 20;
        for (int i = 0; i < seconds; i++) {
            c += joulesPerS / (2 * Units.BRINE_J_PER_L_K) - nominal.lossPerS() * (c - 20);
            e = e.after(new Estimate.Step(1, 0, 20, c, true));
        }
        return e;
    }

    @Test
    void aConeOfWhichNothingIsKnownIsTheOneOfItsConfiguration() {
        Plant p = Plant.learned(2, driven(0, 1), Room.constant(18));
        assertThat(p.watts()).isCloseTo(25, within(1e-6));
        assertThat(p.wattsPerK()).isCloseTo(UA, within(1e-6));
        assertThat(p.reachC()).isCloseTo(18 + 25 / UA, within(1e-3));
    }

    /** A probe of the room that reads low, a sunny sill, a neighbour: the water tells. */
    @Test
    void waterThatSettlesAboveItsRoomIsForeseenThere() {
        Plant p = Plant.learned(2, driven(3 * UA, 4 * 3_600), Room.constant(20));
        double[] course = new Projection(21, p, Plan.hold(15)).courseC(12 * 8);
        assertThat(course[12 * 8]).as("three kelvin above what the room should make it")
                .isBetween(21.5, 23.5);
    }

    @Test
    void whatCannotBeARoomIsNotBelievedToBeOne() {
        Plant p = Plant.learned(2, driven(60 * UA, 4 * 3_600), Room.constant(20));
        double[] course = new Projection(21, p, Plan.hold(15)).courseC(12 * 24);
        assertThat(course[12 * 24]).isLessThanOrEqualTo(28.01);
    }

    @Test
    void aWeakHeaterNeverBringsMoreThanItsReach() {
        Plant plant = twoLitres(5, 18);
        assertThat(plant.reachC()).isCloseTo(18 + 5 / 0.94, within(1e-9));
        double[] course = new Projection(18, plant, Plan.hold(27)).courseC(600);
        assertThat(course[600]).isCloseTo(plant.reachC(), within(0.01));
        for (int i = 1; i < course.length; i++) {
            assertThat(course[i]).isBetween(course[i - 1], plant.reachC());
        }
    }

    @Test
    void withoutAHeaterTheWaterSlidesTowardTheRoom() {
        double[] course = new Projection(27, twoLitres(0, 20), Plan.hold(27)).courseC(300);
        double kept = Math.exp(-29 / 12.0 / Losses.timeConstantH(2, UA));
        assertThat(course[29]).isCloseTo(20 + 7 * kept, within(1e-6));
        assertThat(course[300]).isCloseTo(20, within(0.01));
    }

    @Test
    void waterAboveTheSetPointCoolsByLossesAloneAndStopsAtIt() {
        double[] course = new Projection(31, twoLitres(50, 22), Plan.hold(27)).courseC(100);
        assertThat(course[1]).isBetween(30.0, 31.0);
        assertThat(course[100]).isEqualTo(27);
    }

    @Test
    void aRoomWarmerThanTheSetPointWins() {
        assertThat(new Projection(27, twoLitres(50, 34), Plan.hold(27)).courseC(400)[400])
                .isCloseTo(34, within(0.01));
    }

    @Test
    void aDailyPatternIsFollowedAndComesRoundAgain() {
        List<Double> hours = new ArrayList<>();
        for (int h = 0; h < 24; h++) {
            hours.add(20 - 4 * Math.cos(h / 24.0 * 2 * Math.PI));
        }
        Room room = new Room(hours, 6);
        assertThat(room.aheadC(0)).isCloseTo(20, within(1e-9));
        assertThat(room.aheadC(6)).isCloseTo(24, within(1e-9));
        assertThat(room.aheadC(18.5)).isCloseTo(room.aheadC(42.5), within(1e-9));
        assertThat(room.aheadC(-6)).isCloseTo(16, within(1e-9));
        double[] course = new Projection(20, new Plant(2, 0, UA, room), Plan.hold(27)).courseC(288);
        assertThat(course).satisfies(c -> assertThat(c[12 * 8]).isGreaterThan(c[12 * 20] + 2));
    }

    @Test
    void impossibleConesAndTemperaturesAreRefused() {
        assertThatThrownBy(() -> new Plant(2, -1, UA, Room.constant(20))).hasMessageContaining("-1.0 W");
        assertThatThrownBy(() -> new Projection(Double.NaN, twoLitres(5, 20), Plan.hold(27)))
                .hasMessageContaining("not a temperature");
        assertThatThrownBy(() -> new Room(List.of(), 0)).hasMessageContaining("at least one");
    }
}
