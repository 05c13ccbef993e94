package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.junit.jupiter.api.Test;

/** Danger: a daemon that fails silently. */
class SilentFailureTest {

    private static final String HEART = "site.heartbeat";

    /** Edges of the heartbeat in so many ticks that all begin so late. */
    private static int edges(Story s, int ticks, long lateMs) {
        int edges = 0;
        for (int i = 0; i < ticks; i++) {
            boolean before = s.on(HEART);
            s.tick(lateMs);
            edges += s.on(HEART) == before ? 0 : 1;
        }
        return edges;
    }

    @Test
    void theHeartTurnsOverWithEachTickSoThatALineThatSticksIsNoBeat() {
        Story s = Story.at(Fitting.HEARTBEAT);
        assertThat(edges(s, 100, 0)).isEqualTo(100);
        assertThat(edges(s, 10, 1_900)).as("a little late is on time").isEqualTo(10);
        assertThat(Story.at().last().outputs()).as("none is fitted").doesNotContainKey(HEART);
    }

    @Test
    void aLateLoopStopsTheHeartbeatAndIsTold() {
        Story s = Story.at(Fitting.HEARTBEAT);
        edges(s, 4, 0);
        assertThat(edges(s, 15, 2_500)).as("it falls to its safe level and stays").isEqualTo(1);
        assertThat(s.on(HEART)).isFalse();
        assertThat(s.standing("")).containsExactly("late");
        assertThat(s.told().getFirst().what()).contains("2.5 s late");
        s.minutes(2);
        assertThat(edges(s, 10, 0)).isEqualTo(10);
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
    void aNewLifeBeginsToBeatInItsFirstTick() {
        Story s = Story.at(Fitting.HEARTBEAT);
        edges(s, 3, 0);
        s.restart("boot-1", 3_000);
        assertThat(edges(s, 10, 0)).isGreaterThanOrEqualTo(9);
    }

    @Test
    void withoutThisGuardTheHeartbeatWouldGoOn() {
        Story s = Story.without(SilentFailure.class, Fitting.HEARTBEAT);
        assertThat(edges(s, 10, 60_000)).isEqualTo(10);
    }
}
