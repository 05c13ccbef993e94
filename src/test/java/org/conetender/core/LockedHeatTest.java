package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Optional;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** A heater that waits for a person warms nothing, one that waits for others less; the forecast knows it. */
class LockedHeatTest {

    private static final double ROOM_C = 21;
    private static final String WANTED = "homie/5/larkmoor-a/hatch/ready-by-outlook";

    private static Forecast forecast(Story s) {
        return s.state().live().cones().get("a").outlook().forecast().orElseThrow();
    }

    private static double announcedH(Story s) {
        return forecast(s).ready().announced();
    }

    /** Water of 22 °C that nobody warms: the heater is dead, and it cools to the room. */
    private static Story dead() {
        Story s = new Story(Larkmoor.with(Larkmoor.Fitting.ROOM_PROBE));
        double[] c = {22};
        s.senses.water("a", c[0]).room(ROOM_C).dead("a");
        return s.each(x -> {
            double next = ROOM_C + (c[0] - ROOM_C) * Math.exp(-1 / 7_200.0);
            x.senses.moves("a", next - c[0]);
            c[0] = next;
        }).does(Step.STARTED).minutes(2);
    }

    private static Story locked() {
        Story s = dead().minutes(60);
        assertThat(s.state().book().cone("a").latch("no-effect")).isPresent();
        return s;
    }

    @Test
    void aBatchWhoseHeatIsLockedIsForecastAsWaterThatCools() {
        Story s = dead();
        assertThat(s.state().book().cone("a").latches()).isEmpty();
        assertThat(announcedH(s)).as("held at 27 °C: 399 °C·h in 15 an hour, and warming up")
                .isBetween(26.0, 30.0);
        s.minutes(60);
        assertThat(s.state().book().cone("a").latch("no-effect")).isPresent();
        assertThat(announcedH(s)).as("in water of 19 to 22 °C it takes more than twice as long")
                .isGreaterThan(48);
        assertThat(forecast(s).course().headingC()).as("open water evaporates, and stands below its room")
                .isCloseTo(ROOM_C - 2.1, within(0.3));
        s.senses.works("a");
        s.ask("a", new Ask.Acknowledge("no-effect"));
        s.seconds(3);
        assertThat(s.state().book().cone("a").latches()).isEmpty();
        assertThat(announcedH(s)).as("released, it is foreseen to warm, and at once").isLessThan(30);
    }

    @Test
    void anHourThatOnlyHeatWouldKeepIsNotPromisedWhileItIsLocked() {
        Story s = locked();
        Result.Reply r = s.ask("a", new Ask.ReadyBy(Optional.of(Hour.parse("tue 14:30"))));
        assertThat(r.accepted()).isFalse();
        assertThat(r.sentence()).contains("not likely enough to be ready by 2026-03-03 14:30 (Tue)",
                "its heat is locked off",
                "see to its alarm").doesNotContain("the most that is safe");
    }

    @Test
    void anHourThatIsLostWithTheHeatIsSaidToBeSo() {
        Story s = dead();
        assertThat(s.ask("a", new Ask.ReadyBy(Optional.of(Hour.parse("tue 14:30")))).accepted()).isTrue();
        s.minutes(60);
        assertThat(s.state().book().cone("a").latch("no-effect")).isPresent();
        String said = Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now()).get(WANTED);
        assertThat(said).startsWith("Not likely enough to be ready by Tue 14:30 while its heat is locked "
                + "off, which brings it at ").contains(": see to its alarm.");
        s.wall(Duration.ofHours(14).toMillis(), true).minutes(2);
        s.wall(Duration.ofHours(10).toMillis(), true).minutes(15);
        assertThat(s.told("hour-missed")).isEqualTo(1);
        assertThat(s.told().getLast().what()).contains("while its heat is locked off it comes at ");
    }

    @Test
    void aSiteThatIsLockedWarmsNothing() {
        Story s = new Story(Larkmoor.with(Larkmoor.Fitting.ROOM_PROBE));
        s.senses.water("a", 22).room(ROOM_C);
        s.does(Step.STARTED).minutes(15);
        double held = announcedH(s);
        for (int i = 0; i < 3; i++) {
            s.restart("boot-1", 3_000).seconds(20);
        }
        assertThat(s.state().book().lives().locks()).isNotEmpty();
        s.minutes(2);
        assertThat(announcedH(s)).isGreaterThan(1.5 * held);
    }

    /** Three cones in a cold room, of which the site's limit lets one heat at a time. */
    private static Story three(double limitWatts) {
        Story s = new Story(Larkmoor.room(Larkmoor.Fitting.ROOM_PROBE).limit(limitWatts).build());
        s.senses.room(10);
        for (String cone : new String[] {"a", "b", "c"}) {
            s.senses.water(cone, 24);
            assertThat(s.did(cone, Step.STARTED).accepted()).isTrue();
        }
        return s.minutes(2);
    }

    @Test
    void aHeaterThatSharesTheSitesWattsIsForecastWithWhatTheOthersLeave() {
        double all = forecast(three(75)).course().headingC();
        assertThat(all).as("25 W hold it").isCloseTo(27, within(0.05));
        Forecast shared = forecast(three(25));
        assertThat(shared.course().headingC()).as("a third of the time does not").isLessThan(all - 3);
        assertThat(shared.ready().announced()).isGreaterThan(forecast(three(75)).ready().announced() + 4);
    }

    @Test
    void aHeaterWhoseNeighboursAreLockedOrEmptySharesWithNobody() {
        Story s = new Story(Larkmoor.room(Larkmoor.Fitting.ROOM_PROBE).limit(25).build());
        s.senses.room(10).water("a", 24);
        s.does(Step.STARTED).minutes(2);
        assertThat(forecast(s).course().headingC()).isCloseTo(27, within(0.05));
    }
}
