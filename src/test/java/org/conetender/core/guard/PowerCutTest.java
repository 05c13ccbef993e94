package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: a power cut that stopped the air for too long once nauplii swim. */
class PowerCutTest {

    private static Story hatching(Story s) {
        s.does(Step.STARTED, Step.FIRST_SEEN);
        return s.minutes(5);
    }

    private static final long HALF_HOUR = 30 * 60_000;

    @Test
    void nauplliWithoutAirForHalfAnHourAreDoubtful() {
        Story s = hatching(Story.at()).restart("boot-2", HALF_HOUR).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString()
                .contains("30 min with nauplii in the water");
        assertThat(s.standing("a")).containsExactly("doubtful");
        assertThat(s.standing("b")).isEmpty();
    }

    @Test
    void aCutShorterThanTheCapIsNot() {
        Story s = hatching(Story.at()).restart("boot-2", 8 * 60_000).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.told()).isEmpty();
    }

    @Test
    void cystsBeforeHatchingAreNot() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(5).restart("boot-2", HALF_HOUR).minutes(5);
        s.does(Step.FIRST_SEEN);
        s.minutes(5);
        assertThat(s.told("doubtful")).isZero();
    }

    @Test
    void anUnsetClockMeansAnUnknownTime() {
        Story s = hatching(Story.at()).restart("boot-2", HALF_HOUR).wall(0, false).minutes(1);
        s = hatching(Story.at());
        s.wall(0, false);
        s.minutes(2);
        s.restart("boot-2", HALF_HOUR).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("unknown time");
    }

    @Test
    void aRestartOfTheDaemonAloneStopsNoPump() {
        Story s = hatching(Story.at()).restart("boot-1", HALF_HOUR).minutes(1);
        assertThat(s.told()).isEmpty();
    }

    @Test
    void theNextBatchHasNothingToDoWithIt() {
        Story s = hatching(Story.at()).restart("boot-2", HALF_HOUR).minutes(1);
        s.does(Step.DRAINED, Step.CLEANED);
        s.minutes(5);
        long before = s.told("doubtful");
        s.does(Step.STARTED);
        s.minutes(5);
        s.does(Step.FIRST_SEEN);
        s.minutes(5);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.told("doubtful")).isEqualTo(before);
    }

    @Test
    void withoutThisGuardTheyWouldBeFedUnseen() {
        Story s = hatching(Story.without(PowerCut.class)).restart("boot-2", HALF_HOUR).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }
}
