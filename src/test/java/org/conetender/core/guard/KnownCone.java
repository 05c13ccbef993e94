package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;

/** A daemon over water of its own that is known by now. */
class KnownCone {

    Basin basin = new Basin(Basin.Build.USUAL, 24, 1);
    /** Whether its own switch conducts for ever, before a cut-out that works. */
    boolean welded;
    double highestC;

    /** Cone a, held for hours until its heater is known. */
    Story held(Story s) {
        s.senses.room(basin.roomC);
        s.each(x -> {
            s.senses.water("a", basin.second((welded || x.on("a.heat")) && x.on("a.cut-out")));
            highestC = Math.max(highestC, basin.waterC);
            s.senses.frozen("a-water"); // the basin has a noise of its own
        });
        s.does(Step.STARTED);
        for (int i = 0; i < 5; i++) {
            s.minutes(55);
        }
        assertThat(s.told()).as("nothing was wrong yet").isEmpty();
        assertThat(s.state().live().cones().get("a").judged().thermal().orElseThrow().proof().passed())
                .isTrue();
        return s;
    }

    Story held(Fitting... fittings) {
        return held(Story.at(fittings));
    }

    /** Minutes until somebody is called, so many at most. */
    static int called(Story s, int most) {
        int n = 0;
        for (; n < most && s.standing("a").isEmpty(); n++) {
            s.minutes(1);
        }
        return n;
    }
}
