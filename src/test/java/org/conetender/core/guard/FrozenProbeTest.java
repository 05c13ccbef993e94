package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.judge.Basin;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A probe that gives one reading for ever, over water that is known. */
@Tag("slow")
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

    @Test
    void withoutTheseGuardsNobodyWouldBeCalledForAFrozenProbe() {
        Story s = held(Story.without(FrozenProbe.class, Fitting.ROOM_PROBE));
        basin.probe = Basin.Probe.FROZEN;
        s.minutes(60).minutes(60);
        assertThat(s.told()).isEmpty();
    }
}
