package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A batch is called ready when the hour comes that was announced for it. */
class ReadyStageTest {

    /** In cool water a probe's doubt is a good part of the way, and moves the later quartile by hours. */
    @ParameterizedTest(name = "{0} °C")
    @ValueSource(doubles = {14, 16, 20, 27})
    void theStageIsReadyWhenTheAnnouncedHourComes(double waterC) {
        Story s = Story.at(Fitting.NO_HEAT, Fitting.ROOM_PROBE);
        s.senses.water("a", 27);
        s.does(Step.STARTED).pass(Duration.ofHours(26));
        s.senses.water("a", waterC).room(waterC);
        comesAsAnnounced(s.minutes(5));
    }

    @Test
    void alsoInAHeatedCone() {
        Story s = Story.at(Fitting.ROOM_PROBE);
        s.does(Step.STARTED).pass(Duration.ofHours(26));
        comesAsAnnounced(s);
    }

    @Test
    void alsoAfterARestart() {
        Story s = Story.at(Fitting.NO_HEAT, Fitting.ROOM_PROBE);
        s.does(Step.STARTED).pass(Duration.ofHours(26));
        s.senses.water("a", 20).room(20);
        comesAsAnnounced(s.minutes(5).restart("boot-1", 5_000).minutes(3));
    }

    /** What grew meanwhile is an interval, and it is called ready by its middle, as it is announced. */
    @Test
    void alsoAfterItsProbeWasLostForAWhile() {
        Story s = Story.at(Fitting.NO_HEAT, Fitting.ROOM_PROBE);
        s.senses.room(27);
        s.does(Step.STARTED).pass(Duration.ofHours(24));
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(40);
        assertThat(s.state().live().cones().get("a").judged().belief().known()).isFalse();
        s.senses.water("a", 27);
        comesAsAnnounced(s.minutes(10));
    }

    private static void comesAsAnnounced(Story s) {
        assertThat(s.stage()).isEqualTo("hatching");
        double announcedH = 0;
        while (s.stage().equals("hatching")) {
            Forecast f = forecast(s);
            announcedH = hour(s) + f.ready().announced();
            s.seconds(60);
            assertThat(f.ready().announced()).as("not overdue").isGreaterThan(-0.1);
        }
        assertThat(hour(s)).isCloseTo(announcedH, within(0.05));
    }

    private static Forecast forecast(Story s) {
        return s.state().live().cones().get("a").outlook().forecast().orElseThrow();
    }

    /** On the clock of the forecast, h. */
    private static double hour(Story s) {
        return Units.hours(s.state().live().cones().get("a").outlook().atMs());
    }
}
