package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.conetender.core.alarm.Bell.cause;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Nobody answers: again, and then the second person. */
class EscalationTest {

    private final Bell bell = new Bell();

    private List<Long> escalated() {
        return java.util.stream.IntStream.range(0, bell.messages.size())
                .filter(i -> bell.messages.get(i).second()).mapToObj(bell.at::get).toList();
    }

    @Test
    void wantOfAirIsToldEveryThreeMinutesFiveTimesAndThenTheSecondPersonToo() {
        bell.pass(3 * 3600, cause("a", AlarmKind.AIR_FAILED_ANIMALS));
        assertThat(bell.at).containsExactly(30L, 210L, 390L, 570L, 750L, 930L, 1830L, 5430L);
        assertThat(escalated()).containsExactly(930L, 1830L, 5430L);
    }

    @Test
    void whoAnswersIsBelievedAndNobodyElseIsCalled() {
        bell.pass(700, cause("a", AlarmKind.AIR_FAILED_ANIMALS));
        bell.acknowledge("a", AlarmKind.AIR_FAILED_ANIMALS);
        bell.pass(1_200, cause("a", AlarmKind.AIR_FAILED_ANIMALS));
        assertThat(bell.messages).hasSizeGreaterThan(5);
        assertThat(escalated()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(AlarmKind.class)
    void theSecondPersonIsCalledForDangerAloneAndAfterAQuarterOfAnHour(AlarmKind k) {
        bell.pass(k.onDelayMs() / 1_000 + 2 * 3600, cause("a", k));
        if (k.dangerous()) {
            assertThat(escalated().getFirst()).isEqualTo(k.onDelayMs() / 1_000 + 900);
        } else {
            assertThat(escalated()).isEmpty();
        }
    }

    @Test
    void onlyWantOfAirIsSilencedForMinutes() {
        assertThat(Arrays.stream(AlarmKind.values()).filter(Again::minutesOnly)).containsExactlyInAnyOrder(
                AlarmKind.AIR_FAILED_ANIMALS, AlarmKind.AIR_SHUT_IN);
    }

    @Test
    void whatSomebodyHasAnsweredIsNotForTheSecondPerson() {
        bell.pass(1_000, cause("a", AlarmKind.WELDED));
        assertThat(Again.forSecond(bell.alarm("a/welded"))).isTrue();
        bell.acknowledge("a", AlarmKind.WELDED);
        assertThat(Again.forSecond(bell.alarm("a/welded"))).isFalse();
    }
}
