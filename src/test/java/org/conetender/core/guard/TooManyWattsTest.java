package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor;
import org.conetender.core.Story;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: too many heaters at once on one supply. */
class TooManyWattsTest {

    private static Story cold(Story s) {
        for (String cone : new String[] {"a", "b", "c"}) {
            s.did(cone, Step.STARTED);
            s.senses.water(cone, 26.6);
        }
        return s;
    }

    private static int most(Story s, int seconds) {
        int most = 0;
        for (int i = 0; i < seconds; i++) {
            s.tick();
            int on = 0;
            for (String cone : new String[] {"a", "b", "c"}) {
                on += s.on(cone + ".heat") ? 1 : 0;
            }
            most = Math.max(most, on);
        }
        return most;
    }

    @Test
    void heatersOnTogetherNeverTakeMoreThanTheLimit() {
        assertThat(most(cold(new Story(Larkmoor.room().limit(25).build())), 900)).isEqualTo(1);
        assertThat(most(cold(new Story(Larkmoor.room().limit(60).build())), 900)).isEqualTo(2);
        assertThat(most(cold(new Story(Larkmoor.room().limit(75).build())), 900)).isEqualTo(3);
    }

    @Test
    void whoMustWaitIsToldWhy() {
        Story s = cold(new Story(Larkmoor.room().limit(25).build()));
        boolean seen = false;
        for (int i = 0; i < 600; i++) {
            s.tick();
            seen |= s.last().findings().get("c").stream().anyMatch(f -> f.what()
                    .equals("the site's 25 W are taken"));
        }
        assertThat(seen).isTrue();
        assertThat(s.told()).as("nobody is called for it").isEmpty();
    }

    @Test
    void aHeaterThatIsHeldBackForAnotherReasonDoesNotUseUpTheLimit() {
        Story s = cold(new Story(Larkmoor.room().limit(25).build()));
        s.did("a", Step.HANDS_IN);
        s.did("b", Step.HANDS_IN);
        assertThat(most(s, 600)).isEqualTo(1);
        assertThat(s.last().findings().get("c").stream().noneMatch(f -> f.guard().equals("watts"))).isTrue();
    }

    @Test
    void withoutThisGuardAllThreeWouldBurnTogether() {
        assertThat(most(cold(Story.without(TooManyWatts.class, Larkmoor.room().limit(25).build())), 900))
                .isEqualTo(3);
    }
}
