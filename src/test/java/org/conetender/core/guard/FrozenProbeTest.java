package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.junit.jupiter.api.Test;

/** A probe that gives one reading for ever, over water that is known. */
class FrozenProbeTest extends KnownCone {

    @Test
    void aFrozenProbeIsLockedOffUntilItMovesAgain() {
        Story s = held(Fitting.ROOM_PROBE);
        basin.probe = Basin.Probe.FROZEN;
        assertThat(called(s, 180)).as("minutes").isLessThan(75);
        assertThat(s.standing("a")).containsExactly("probe-frozen");
        assertThat(basin.waterC).isLessThan(27.6);
        s.ask("a", new Ask.Acknowledge("probe-frozen"));
        s.minutes(15);
        assertThat(s.on("a.cut-out")).as("it stands still yet").isFalse();
        assertThat(s.standing("a")).containsExactly("probe-frozen");
        basin.probe = Basin.Probe.IN_WATER;
        s.minutes(5);
        s.ask("a", new Ask.Acknowledge("probe-frozen"));
        s.minutes(60);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.state().book().cone("a").latches()).isEmpty();
    }

    /** A mat is not watched: full power on a figure just below the set-point would cook the batch. */
    @Test
    void whereAMatHeatsAReadingThatNeverChangesIsEnough() {
        Story s = Story.at(Fitting.MAT, Fitting.ROOM_PROBE);
        s.senses.water("a", 26.875);
        s.does(Step.STARTED).minutes(120);
        assertThat(s.standing("a")).as("one that trembles").isEmpty();
        s.senses.frozen("a-water");
        s.minutes(80);
        assertThat(s.standing("a")).isEmpty();
        assertThat(called(s, 15)).as("minutes").isLessThan(15);
        assertThat(s.standing("a")).containsExactly("probe-frozen");
        assertThat(s.on("a.heat")).isFalse();
        s.senses.water("a", 27);
        s.minutes(2).ask("a", new Ask.Acknowledge("probe-frozen"));
        assertThat(s.minutes(2).standing("a")).isEmpty();
    }

    /** Nothing moves it there, so that it shows nothing. */
    @Test
    void butNotWhereNothingHeats() {
        Story s = Story.at(Fitting.MAT, Fitting.ROOM_PROBE);
        s.senses.water("a", 29);
        s.senses.frozen("a-water");
        s.does(Step.STARTED).minutes(180);
        assertThat(s.on("a.heat")).isFalse();
        assertThat(s.standing("a")).doesNotContain("probe-frozen");
    }

    @Test
    void withoutTheseGuardsNobodyWouldBeCalledForAFrozenProbe() {
        Story s = held(Story.without(FrozenProbe.class, Fitting.ROOM_PROBE));
        basin.probe = Basin.Probe.FROZEN;
        s.minutes(60).minutes(60);
        assertThat(s.told()).isEmpty();
    }
}
