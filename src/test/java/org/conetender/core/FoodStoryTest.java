package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Harvest;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** The hours of most food are those of the lot in the water it has, not in the water that is wanted. */
class FoodStoryTest {

    /** A lot that was seen in water of 29 °C, which teaches its threshold, is stocked in water of 21 °C. */
    @Test
    void whatHatchesLateInCoolWaterIsFoodLate() {
        Story s = Story.at(Fitting.NO_HEAT);
        s.senses.water("a", 29);
        for (int batch = 0; batch < 3; batch++) {
            s.does(Step.STARTED).pass(Duration.ofHours(16));
            s.ask("a", new Ask.DidCount(20, 20, 160, 1));
            s.does(Step.VALVE_SHUT, Step.CLEANED);
        }
        s.senses.water("a", 21);
        s.does(Step.STARTED).pass(Duration.ofHours(12));
        ConeLive live = s.state().live().cones().get("a");
        Known known = live.known();
        Forecast f = live.outlook().forecast().orElseThrow();
        Harvest h = live.outlook().harvest().orElseThrow();
        Speed here = known.at(21);
        assertThat(known.at(27).k50DegreeHours()).isNotCloseTo(here.k50DegreeHours(), within(3.0));
        double perHour = (here.k90() - here.k10()) / (f.ready().median() - f.t10Hours());
        double done = here.k90() + perHour * (h.best().hours() - f.ready().median());
        assertThat(h.best().hatched()).isCloseTo(here.hatchedShare(done), within(0.002));
    }

    /** It hatched when it did, whatever its water does since. */
    @Test
    void theFoodHoursOfARipeBatchDoNotMoveWithItsWater() {
        Story s = Story.at(Fitting.NO_HEAT, Fitting.ROOM_PROBE);
        s.senses.water("a", 24).room(24);
        s.does(Step.STARTED).pass(Duration.ofHours(38));
        assertThat(s.stage()).isEqualTo("ready");
        double from = fromH(s);
        assertThat(from).as("behind").isLessThan(Units.hours(s.now().monoMs()));
        for (double c : new double[] {23, 21, 19, 16, 13, 11}) {
            s.senses.water("a", c).room(c);
            s.minutes(30);
            assertThat(fromH(s)).as("at %s °C", c).isCloseTo(from, within(0.2));
        }
        s.restart("boot-1", 5_000).minutes(3);
        assertThat(fromH(s)).as("after a restart").isCloseTo(from, within(0.2));
    }

    /** On the daemon's clock, h. */
    private static double fromH(Story s) {
        ConeLive.Outlook o = s.state().live().cones().get("a").outlook();
        return Units.hours(o.atMs()) + o.harvest().orElseThrow().fromHours();
    }
}
