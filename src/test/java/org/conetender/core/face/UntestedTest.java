package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Where the room leaves a probe's test without an answer, that is a state, and no alarm. */
class UntestedTest {

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    @Test
    void aProbeThatTheRoomKeepsStillIsSaidToBeUntestedUntilItMoves() {
        String untested = "homie/5/larkmoor-a/water/untested";
        Story s = new Story(Larkmoor.room(Fitting.ROOM_PROBE).setpoint(22).build());
        s.senses.room(24).water("a", 24);
        s.senses.frozen("a-water");
        s.does(Step.STARTED).minutes(60);
        assertThat(tree(s)).doesNotContainKey(untested);
        s.minutes(25);
        assertThat(tree(s)).containsEntry(untested,
                "its probe cannot be tested now: the room keeps the water where it is");
        assertThat(tree(s)).containsEntry("homie/5/larkmoor-a/water/trust", "trusted");
        assertThat(s.standing("a")).isEmpty();
        s.senses.water("a", 24.0625);
        s.minutes(1);
        assertThat(tree(s)).doesNotContainKey(untested);
    }
}
