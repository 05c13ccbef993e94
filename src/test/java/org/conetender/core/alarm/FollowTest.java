package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.Set;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.FieldSource;

/** The declared table of what explains what. */
class FollowTest {

    private static final java.util.List<Follow> TABLE = Follow.TABLE;

    /** What is graver than its cause must be heard of all the same. */
    @ParameterizedTest
    @FieldSource("TABLE")
    void nothingHidesBehindALighterCause(Follow f) {
        f.followers().forEach(k -> assertThat(k.priority()).as(f.cause() + " -> " + k)
                .isGreaterThanOrEqualTo(f.cause().priority()));
    }

    @ParameterizedTest
    @FieldSource("TABLE")
    void whatStandsOnceDoesNotExplainItself(Follow f) {
        if (f.where() == Follow.Where.HERE || f.cause().siteWide()) {
            assertThat(f.followers()).doesNotContain(f.cause());
        }
        assertThat(f.followers()).isNotEmpty();
    }

    /** Else two alarms could hide behind each other. */
    @ParameterizedTest
    @EnumSource(AlarmKind.class)
    void noOtherKindLeadsBack(AlarmKind from) {
        Set<AlarmKind> reached = EnumSet.noneOf(AlarmKind.class);
        Deque<AlarmKind> todo = new ArrayDeque<>(java.util.List.of(from));
        while (!todo.isEmpty()) {
            AlarmKind k = todo.pop();
            for (Follow f : TABLE) {
                for (AlarmKind next : f.cause() == k ? f.followers() : Set.<AlarmKind>of()) {
                    if (next != k && reached.add(next)) {
                        todo.push(next);
                    }
                }
            }
        }
        assertThat(reached).doesNotContain(from);
    }

    @Test
    void itSaysForHowLong() {
        assertThat(Follow.TABLE.stream().map(Follow::span).distinct())
                .containsExactlyInAnyOrder("within 2 min", "within 30 min", "while it stands");
    }

    private static Alarm alarm(String cone, AlarmKind kind, long sinceMs) {
        return Alarm.begun(Bell.cause(cone, kind), new Moment("boot-1", sinceMs, 0, true));
    }

    /** What belongs to one cone explains nothing in another; what belongs to the site is everywhere. */
    @Test
    void aCauseReachesItsOwnConeOrAll() {
        Alarm dry = alarm("a", AlarmKind.DRY, 0);
        assertThat(Follow.explains(dry, alarm("a", AlarmKind.PROBE, 9_000_000))).isTrue();
        assertThat(Follow.explains(dry, alarm("b", AlarmKind.PROBE, 0))).isFalse();
        assertThat(Follow.explains(dry, alarm("a", AlarmKind.OVERHEAT, 0))).isFalse();
        assertThat(Follow.explains(alarm("", AlarmKind.LATE, 0), alarm("b", AlarmKind.PROBE, 1))).isTrue();
        assertThat(Follow.explains(alarm("a", AlarmKind.PROBE, 0), alarm("b", AlarmKind.PROBE, 120_000)))
                .as("two minutes").isTrue();
        assertThat(Follow.explains(alarm("a", AlarmKind.PROBE, 0), alarm("b", AlarmKind.PROBE, 120_001)))
                .isFalse();
        assertThat(Follow.explains(alarm("b", AlarmKind.PROBE, 0), alarm("a", AlarmKind.PROBE, 1))).isTrue();
        assertThat(Follow.explains(alarm("a", AlarmKind.PROBE, 1), alarm("b", AlarmKind.PROBE, 0)))
                .as("only the first explains the other").isFalse();
    }

    @Test
    void ofTwoThatBeganAtOnceOneIsTheFirst() {
        Alarm a = alarm("a", AlarmKind.PROBE, 5);
        Alarm b = alarm("b", AlarmKind.PROBE, 5);
        assertThat(Follow.explains(a, b)).isTrue();
        assertThat(Follow.explains(b, a)).isFalse();
        assertThat(Follow.explains(a, a)).isFalse();
    }

    /** Others that may have begun a moment before it was seen itself. */
    @Test
    void aCauseThatIsSeenLaterExplainsWhatWasSeenBefore() {
        assertThat(Follow.explains(alarm("a", AlarmKind.HEATER_STUCK, 120_000),
                alarm("b", AlarmKind.OUTPUT_STUCK, 0))).isTrue();
        assertThat(Follow.explains(alarm("a", AlarmKind.HEATER_STUCK, 120_001),
                alarm("b", AlarmKind.OUTPUT_STUCK, 0))).isFalse();
    }
}
