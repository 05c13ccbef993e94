package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.junit.jupiter.api.Test;

/** A heater that is too weak for its set-point: that is said, with what it reaches, and only if it is so. */
class OutOfReachTest {

    private static final String ALARM = AlarmKind.OUT_OF_REACH.id();
    /** It loses 1.34 W/K to a room of 20 °C: 6 W hold 24.5 °C. */
    private final Basin weak = new Basin(new Basin.Build(6, 2, 1.34, 45, 15), 20, 1);

    private static Story story(Basin basin, double watts) {
        Story s = new Story(Larkmoor.room(Larkmoor.Fitting.ROOM_PROBE).watts(watts).build());
        s.each(x -> {
            s.senses.room(basin.roomC);
            s.senses.water("a", basin.second(x.on("a.heat") && x.on("a.cut-out")));
            s.senses.frozen("a-water");
        });
        return s.minutes(10).does(Step.STARTED);
    }

    private static String limited(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now())
                .get("homie/5/larkmoor-a/heat/limited");
    }

    /** In ticks of a second, as the basin has them. */
    private static void hours(Story s, int h) {
        for (int i = 0; i < h; i++) {
            s.minutes(60);
        }
    }

    @Test
    void aWeakHeaterIsToldOnceWithWhatItReaches() {
        Story s = story(weak, 6);
        hours(s, 4);
        assertThat(s.standing("a")).containsExactly(ALARM);
        assertThat(s.told(ALARM)).isPositive();
        assertThat(limited(s)).isEqualTo("27.0 °C cannot be reached: in this room of 20 °C its heater brings "
                + "the water to about 24.5 °C");
        assertThat(s.ask("a", new Ask.SetSetpoint(28)).sentence()).contains("is held at 28 °C")
                .endsWith(" But 28.0 °C cannot be reached: in this room of 20 °C its heater brings the water "
                + "to about 24.5 °C.");
        assertThat(s.ask("a", new Ask.SetSetpoint(24)).sentence()).doesNotContain("cannot be reached");
        s.minutes(5);
        assertThat(s.standing("a")).as("what is wanted now is reached").isEmpty();
        assertThat(limited(s)).isNull();
    }

    @Test
    void whatIsToldFollowsTheSetpoint() {
        Story s = story(weak, 6);
        hours(s, 4);
        s.ask("a", new Ask.SetSetpoint(28));
        s.minutes(1);
        assertThat(limited(s)).startsWith("28.0 °C cannot be reached");
    }

    /** For an hour the water is held as warm as can be, and {@code hour-missed} tells if that is too cool. */
    @Test
    void anHourThatIsWantedIsNoSetpointThatCannotBeReached() {
        Story s = story(weak, 6);
        hours(s, 4);
        assertThat(s.standing("a")).contains(ALARM);
        int hour = 10;
        while (!s.ask("a", new Ask.ReadyBy(Optional.of(Hour.parse("tue " + hour + ":00")))).accepted()) {
            hour++;
        }
        s.minutes(5);
        assertThat(s.state().live().cones().get("a").hold().aimC()).isGreaterThan(26);
        assertThat(s.standing("a")).doesNotContain(ALARM);
    }

    @Test
    void aConeWithoutAHeaterIsToldThatNothingHoldsIt() {
        Story s = Story.at(Larkmoor.Fitting.NO_HEAT).does(Step.STARTED);
        Result.Reply no = s.ask("a", new Ask.SetSetpoint(26));
        assertThat(no.accepted()).isFalse();
        assertThat(no.sentence()).isEqualTo("Cone a: it has no heater, so its water goes by the room and "
                + "nothing holds it at a set-point.");
    }

    @Test
    void aHeaterThatSufficesIsNeverCalledWeakHoweverLongItWarms() {
        Basin basin = new Basin(new Basin.Build(12, 2, 1.34, 45, 15), 12, 1);
        Story s = story(basin, 12);
        for (int h = 0; h < 6; h++) {
            hours(s, 1);
            assertThat(s.standing("a")).doesNotContain(ALARM);
        }
        assertThat(basin.waterC).as("it holds").isGreaterThan(26.5);
    }
}
