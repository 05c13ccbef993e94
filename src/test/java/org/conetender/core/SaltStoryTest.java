package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Ask;
import org.junit.jupiter.api.Test;

/** Whether the salt of the water counts: only where somebody wants it to. */
class SaltStoryTest {

    private static Story stocked(double ppt, Fitting... fittings) {
        Story s = Story.at(fittings);
        s.ask("a", new Ask.DidFill(2, ppt));
        assertThat(s.ask("a", new Ask.DidStock("L-0417", 2)).accepted()).isTrue();
        s.pass(Duration.ofHours(5));
        return s;
    }

    private static double done(Story s) {
        return s.state().live().cones().get("a").growth().done().degreeHours();
    }

    private static double medianH(Story s) {
        return s.state().live().cones().get("a").outlook().forecast().orElseThrow().ready().median();
    }

    @Test
    void saltChangesNothingUnlessItIsWanted() {
        assertThat(done(stocked(14))).isEqualTo(done(stocked(42)));
        assertThat(medianH(stocked(14))).isEqualTo(medianH(stocked(42)));
    }

    @Test
    void whereItIsWantedTheSaltierWaterIsSlowerInPastAndFuture() {
        Story fresh = stocked(14, Fitting.SALT_SLOWS);
        Story salty = stocked(42, Fitting.SALT_SLOWS);
        assertThat(done(fresh) / done(salty)).isCloseTo(1.108 / 0.856, within(0.01));
        double all = medianH(salty) + 5;
        assertThat(all / (medianH(fresh) + 5)).isCloseTo(1.108 / 0.856, within(0.02));
    }
}
