package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Proving;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is forecast when a batch begins knows of the time in which its switches are tried. */
class ForeseenTrialTest {

    /** Little power over much water is tried for long. */
    private static Basin of(double watts) {
        return new Basin(new Basin.Build(watts, 2, 1.0, 50, 10), 21, 3);
    }

    private static double readyInH(Story s) {
        return s.state().live().cones().get("a").outlook().forecast().orElseThrow().ready().announced();
    }

    private static Proving.Part part(Story s) {
        return s.state().live().cones().get("a").judged().proving().part();
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 5})
    void theHourIsTheSameBeforeTheTrialAndAfterIt(long waitMinutes) {
        Basin basin = of(25);
        Story s = Story.at(Larkmoor.Fitting.ROOM_PROBE).trying();
        s.senses.room(20);
        s.each(x -> {
            s.senses.water("a", basin.second(x.on("a.heat") && x.on("a.cut-out")));
            s.senses.frozen("a-water");
        });
        s.minutes(1 + waitMinutes).does(Step.STARTED).minutes(1);
        assertThat(part(s).over()).isFalse();
        long from = s.now().monoMs();
        double announced = readyInH(s);
        for (int i = 0; i < 90; i++) {
            s.minutes(1);
        }
        assertThat(part(s)).isEqualTo(Proving.Part.PASSED);
        double passedH = (s.now().monoMs() - from) / 3_600_000.0;
        assertThat(passedH + readyInH(s)).as("hours from the start").isCloseTo(announced, within(0.07));
    }
}
