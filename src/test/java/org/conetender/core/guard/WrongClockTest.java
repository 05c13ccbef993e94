package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Story;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: a wall clock that is wrong. Nothing is controlled by it. */
class WrongClockTest {

    @Test
    void anUntrustedClockIsAStatusForItsFirstHourAndAnAlarmAfterwards() {
        Story s = Story.at();
        s.wall(0, false).minutes(59);
        assertThat(s.told()).isEmpty();
        s.minutes(2);
        assertThat(s.standing("")).containsExactly("clock");
        s.wall(0, true).minutes(2);
        assertThat(s.standing("")).isEmpty();
    }

    @Test
    void aJumpOfTenYearsMovesNoBatchAndEndsNoSeparation() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(5);
        s.wall(10L * 365 * 86_400_000, true).minutes(5);
        assertThat(s.stage()).isEqualTo("hydrating");
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        s.wall(-20L * 365 * 86_400_000, false).minutes(5);
        assertThat(s.stage()).isEqualTo("settling");
        assertThat(s.on("a.air-pause")).isTrue();
        s.minutes(6);
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void withoutThisGuardNobodyWouldHearOfIt() {
        Story s = Story.without(WrongClock.class);
        s.wall(0, false).pass(java.time.Duration.ofHours(3));
        assertThat(s.told()).isEmpty();
    }
}
