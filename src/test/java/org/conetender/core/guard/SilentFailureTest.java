package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.junit.jupiter.api.Test;

/** Danger: a daemon that fails silently. */
class SilentFailureTest {

    @Test
    void aLateLoopStopsTheHeartbeatAndIsTold() {
        Story s = Story.at(Fitting.HEARTBEAT);
        s.tick();
        assertThat(s.on("site.heartbeat")).isTrue();
        s.tick(1_900);
        assertThat(s.on("site.heartbeat")).isTrue();
        for (int i = 0; i < 15; i++) {
            s.tick(2_500);
            assertThat(s.on("site.heartbeat")).isFalse();
        }
        assertThat(s.standing("")).containsExactly("late");
        assertThat(s.told().getFirst().what()).contains("2.5 s late");
        s.minutes(2);
        assertThat(s.on("site.heartbeat")).isTrue();
        assertThat(s.standing("")).isEmpty();
    }

    @Test
    void oneLateTickIsNotAnAlarm() {
        Story s = Story.at(Fitting.HEARTBEAT);
        s.tick(3_000);
        s.minutes(2);
        assertThat(s.told()).isEmpty();
    }

    @Test
    void withoutThisGuardTheHeartbeatWouldGoOn() {
        Story s = Story.without(SilentFailure.class, Fitting.HEARTBEAT);
        s.tick(60_000);
        assertThat(s.on("site.heartbeat")).isTrue();
    }
}
