package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** How many messages may go out now. */
class GateTest {

    private static final long MINUTE = 60_000;

    private static List<Alarm> due(int count, AlarmKind kind) {
        return Collections.nCopies(count, Alarm.begun(Bell.cause("a", kind),
                new Moment("boot-1", 0, 0, true)));
    }

    private static int dull(Gate g, int count, long nowMs) {
        return g.messages(due(count, AlarmKind.DRY), nowMs);
    }

    private static int danger(Gate g, int count, long nowMs) {
        return g.messages(due(count, AlarmKind.WELDED), nowMs);
    }

    @Test
    void oneOrTwoHaveTheirOwnAndMoreShareOne() {
        assertThat(dull(Gate.FRESH, 0, 0)).isZero();
        assertThat(dull(Gate.FRESH, 1, 0)).isEqualTo(1);
        assertThat(dull(Gate.FRESH, 2, 0)).isEqualTo(2);
        assertThat(dull(Gate.FRESH, 3, 0)).isEqualTo(1);
        assertThat(danger(Gate.FRESH, 3, 0)).isEqualTo(1);
    }

    @Test
    void forAMinuteAfterAMessageThereIsNoneEvenOfADanger() {
        Gate g = Gate.FRESH.after(1, 5_000);
        assertThat(danger(g, 1, 5_000)).isZero();
        assertThat(danger(g, 1, 5_000 + MINUTE - 1)).isZero();
        assertThat(danger(g, 1, 5_000 + MINUTE)).isEqualTo(1);
        assertThat(dull(g, 1, 5_000 + MINUTE)).isEqualTo(1);
        assertThat(dull(g, 2, 5_000 + MINUTE)).as("with the one before they are three").isEqualTo(1);
    }

    @Test
    void afterTwoInTenMinutesOnlyADangerIsTold() {
        Gate g = Gate.FRESH.after(1, 0).after(1, MINUTE);
        assertThat(dull(g, 1, 3 * MINUTE)).isZero();
        assertThat(danger(g, 1, 3 * MINUTE)).isEqualTo(1);
        assertThat(danger(g, 2, 3 * MINUTE)).isEqualTo(1);
        assertThat(dull(g, 1, 10 * MINUTE - 1)).isZero();
        assertThat(dull(g, 1, 10 * MINUTE)).as("the first is forgotten").isEqualTo(1);
        assertThat(dull(g, 2, 10 * MINUTE)).isEqualTo(1);
        assertThat(dull(g, 2, 11 * MINUTE)).isEqualTo(2);
    }

    @Test
    void itKeepsWhatItNeedsAndNoMore() {
        Gate g = Gate.FRESH.after(2, 0);
        assertThat(g.sentMs()).containsExactly(0L, 0L);
        assertThat(g.after(0, 20 * MINUTE)).as("nothing was said").isSameAs(g);
        assertThat(g.after(1, 9 * MINUTE).sentMs()).containsExactly(0L, 0L, 9 * MINUTE);
        assertThat(g.after(1, 10 * MINUTE).sentMs()).containsExactly(10 * MINUTE);
    }
}
