package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** What the room does in a day: how it is learnt, and what is foreseen by it. */
class RoomDayTest {

    private static final long MINUTE = Units.MINUTE_MS;
    private static final long DAY_MIN = 24 * 60;

    private static Moment at(long minute, boolean trusted) {
        return new Moment("boot-1", minute * MINUTE, minute * MINUTE, trusted);
    }

    /** 20 °C, and two more or less in the afternoon and at dawn. @param hour of the day */
    private static double swing(double hour) {
        return 20 + 2 * Math.cos(2 * Math.PI * (hour - 16) / 24);
    }

    private static RoomDay seen(RoomDay from, long fromMin, long untilMin, DoubleUnaryOperator roomC) {
        RoomDay d = from;
        for (long m = fromMin; m < untilMin; m++) {
            d = d.after(at(m, true), MINUTE, Optional.of(roomC.applyAsDouble(m / 60.0)));
        }
        return d;
    }

    @Test
    void aDayThatWasSeenOnceIsForeseen() {
        RoomDay d = seen(RoomDay.NONE, 0, DAY_MIN + 1, RoomDayTest::swing);
        assertThat(d.known()).isTrue();
        Room room = d.room(at(DAY_MIN + 6 * 60, true), Optional.of(swing(6)), 20);
        for (double h = 0; h < 48; h += 0.25) {
            assertThat(room.aheadC(h)).as("in %s h", h).isCloseTo(swing(6 + h), within(0.1));
        }
    }

    @Test
    void untilADayHasBeenSeenTheRoomStaysAsItIs() {
        RoomDay d = seen(RoomDay.NONE, 0, 20 * 60, RoomDayTest::swing);
        assertThat(d.known()).isFalse();
        assertThat(d.room(at(20 * 60, true), Optional.of(21.5), 20)).isEqualTo(Room.constant(21.5));
        assertThat(RoomDay.NONE.room(at(0, true), Optional.empty(), 20)).isEqualTo(Room.constant(20));
    }

    @Test
    void withoutATrustedClockNothingIsLearntAndNothingForeseen() {
        RoomDay d = RoomDay.NONE;
        for (long m = 0; m < 3 * DAY_MIN; m++) {
            d = d.after(at(m, false), MINUTE, Optional.of(swing(m / 60.0)));
        }
        assertThat(d).isEqualTo(RoomDay.NONE);
        RoomDay known = seen(RoomDay.NONE, 0, 2 * DAY_MIN, RoomDayTest::swing);
        assertThat(known.room(at(2 * DAY_MIN, false), Optional.of(19.0), 20)).isEqualTo(Room.constant(19));
    }

    @Test
    void aRoomThatIsWarmerThanUsualTodayIsAsUsualTomorrow() {
        RoomDay d = seen(RoomDay.NONE, 0, 3 * DAY_MIN, RoomDayTest::swing);
        Room room = d.room(at(3 * DAY_MIN, true), Optional.of(swing(0) + 3), 20);
        assertThat(room.aheadC(0)).isCloseTo(swing(0) + 3, within(0.01));
        assertThat(room.aheadC(12)).isCloseTo(swing(12) + 1.5, within(0.1));
        assertThat(room.aheadC(24)).isCloseTo(swing(24), within(0.1));
        assertThat(room.aheadC(60)).isCloseTo(swing(60), within(0.1));
    }

    @Test
    void aProbeThatFailsLeavesTheRoomsUsualDay() {
        RoomDay d = seen(RoomDay.NONE, 0, 2 * DAY_MIN, RoomDayTest::swing);
        assertThat(d.after(at(2 * DAY_MIN, true), MINUTE, Optional.empty())).isSameAs(d);
        Room room = d.room(at(2 * DAY_MIN, true), Optional.empty(), 30);
        assertThat(room.aheadC(16)).isCloseTo(22, within(0.1));
    }

    @Test
    void hoursThatNobodyMeasuredLieBetweenTheirNeighbours() {
        RoomDay d = seen(RoomDay.NONE, 60, 23 * 60, RoomDayTest::swing);
        assertThat(d.known()).as("midnight and the hour before it are not").isTrue();
        Room room = d.room(at(DAY_MIN, true), Optional.empty(), 20);
        assertThat(room.aheadC(0)).isBetween(19.0, 20.5);
        // A minute of an hour is not that hour.
        RoomDay little = seen(d, DAY_MIN, DAY_MIN + 20, h -> 40);
        little = seen(little, DAY_MIN + 60, DAY_MIN + 61, h -> 20);
        assertThat(little.hours().getFirst()).isEqualTo(RoomDay.Hour.UNKNOWN);
    }

    @Test
    void aColdWeekReplacesAWarmOneWithinDays() {
        RoomDay d = seen(RoomDay.NONE, 0, 10 * DAY_MIN, h -> 24);
        d = seen(d, 10 * DAY_MIN, 14 * DAY_MIN + 1, h -> 18);
        assertThat(d.hours()).allSatisfy(h -> assertThat(h.meanC()).isBetween(18.0, 20.0))
                .allSatisfy(h -> assertThat(h.days()).isEqualTo(RoomDay.MOST_DAYS));
    }

    @Test
    void whatACheckpointKeptIsGoneOnWith() {
        RoomDay d = seen(RoomDay.NONE, 0, 2 * DAY_MIN, RoomDayTest::swing);
        assertThat(RoomDay.resumed(d.kept()).hours()).isEqualTo(d.hours());
        assertThat(RoomDay.resumed(RoomDay.NONE.kept())).isEqualTo(RoomDay.NONE);
        assertThat(RoomDay.NONE.kept()).isEmpty();
        assertThatThrownBy(() -> new RoomDay(List.of(RoomDay.Hour.UNKNOWN), RoomDay.Open.NONE))
                .hasMessageContaining("24 hours");
    }
}
