package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.conetender.core.hatch.Projection.Plan;
import org.conetender.core.hatch.Projection.Plant;
import org.junit.jupiter.api.Test;

/** Water that nobody holds: where it goes, and how sure that is. */
class LooseTest {

    private static final double UA = 1.34;

    private static Loose.Standing open(double waterC, double stoodH) {
        return new Loose.Standing(2, false, waterC, stoodH);
    }

    private static double goesTo(Plant p, double fromC) {
        double[] course = new Projection(fromC, p, Plan.hold(fromC)).courseC(12 * 48);
        return course[course.length - 1];
    }

    private static double width(Plant p, double waterC) {
        Forecast.Ready r = Forecast.of(Development.NONE, new Speed(271, 0.15, 0.03, 5),
                new Projection(waterC, p, Plan.hold(waterC)), Rate.USUAL).ready();
        return r.latest() - r.earliest();
    }

    @Test
    void waterThatEvaporatesStandsBelowItsRoomAndLessUnderALid() {
        Optional<Room> room = Optional.of(Room.constant(24));
        double open = goesTo(Loose.unheated(open(24, 1), UA, room), 24);
        double lid = goesTo(Loose.unheated(new Loose.Standing(2, true, 24, 1), 0.94, room), 24);
        assertThat(open).isCloseTo(21.9, within(0.05));
        assertThat(lid).isCloseTo(23.2, within(0.05));
    }

    @Test
    void whereNoProbeMeasuresTheRoomWaterThatStoodThereTellsIt() {
        double fresh = goesTo(Loose.unheated(open(23, 0), UA, Optional.empty()), 23);
        double stood = goesTo(Loose.unheated(open(23, 24), UA, Optional.empty()), 23);
        assertThat(fresh).as("as any room").isCloseTo(17.9, within(0.05));
        assertThat(stood).as("as it is").isCloseTo(23, within(0.05));
    }

    @Test
    void whatIsLessWellKnownIsToldMoreWidely() {
        Plant measured = Loose.unheated(open(24, 24), UA, Optional.of(Room.constant(26.1)));
        Plant felt = Loose.unheated(open(24, 24), UA, Optional.empty());
        assertThat(width(felt, 24)).isGreaterThan(1.2 * width(measured, 24));
        Plant sure = new Plant(2, 0, UA, Room.constant(24));
        assertThat(width(measured, 24)).isGreaterThan(1.2 * width(sure, 24));
    }

    @Test
    void waterWhoseHeaterIsLockedEvaporatesOnceAndNotTwice() {
        Room room = Room.constant(24);
        Plant configured = new Plant(2, 25, UA, room);
        Plant shown = new Plant(2, 25, UA, room.plus(-1.5));
        Plant sunny = new Plant(2, 25, UA, room.plus(1));
        assertThat(goesTo(Loose.idle(configured, room, false, true), 27)).isCloseTo(21.9, within(0.05));
        assertThat(goesTo(Loose.idle(configured, room, true, true), 27)).isCloseTo(23.2, within(0.05));
        assertThat(goesTo(Loose.idle(shown, room, false, true), 27)).as("a part of it was learnt")
                .isCloseTo(21.9, within(0.05));
        assertThat(goesTo(Loose.idle(shown, room, false, false), 27)).as("a room that its water tells")
                .isCloseTo(22.5, within(0.05));
        assertThat(goesTo(Loose.idle(sunny, room, false, false), 27)).isCloseTo(25, within(0.05));
        assertThat(Loose.idle(shown, room, false, false).doubtK())
                .isGreaterThan(Loose.idle(shown, room, false, true).doubtK()).isGreaterThan(1);
        assertThat(Loose.idle(shown, room, false, true).watts()).isZero();
    }

    @Test
    void aHeaterThatHoldsTheWaterMakesTheRoomNoMatter() {
        Plant able = new Plant(2, 25, UA, Room.constant(20));
        Plant weak = new Plant(2, 5, UA, Room.constant(20));
        assertThat(Loose.heated(able, 27, false)).isSameAs(able);
        assertThat(Loose.heated(weak, 27, true)).isSameAs(weak);
        assertThat(Loose.heated(weak, 27, false).doubtK()).isPositive();
        assertThat(width(Loose.heated(weak, 27, false), 23)).isGreaterThan(width(weak, 23) + 1);
    }
}
