package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.Set;
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
}
