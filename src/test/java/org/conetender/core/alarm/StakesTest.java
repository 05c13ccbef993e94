package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.conetender.core.alarm.AlarmKind.Priority;
import org.conetender.core.alarm.Stakes.Harm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The priority follows from what may come of it and from the time there is. */
class StakesTest {

    @ParameterizedTest
    @CsvSource({
        "PEOPLE, 2, NOW", "PEOPLE, 60, NOW", "PEOPLE, 61, SOON", "PEOPLE, 1440, SOON",
        "ANIMALS, 15, NOW", "ANIMALS, 16, SOON", "ANIMALS, 60, SOON", "ANIMALS, 61, LATER",
        "BATCH, 15, NOW", "BATCH, 60, SOON", "BATCH, 360, LATER",
        "WORK, 1, SOON", "WORK, 60, SOON", "WORK, 61, LATER"})
    void theRule(Harm harm, int minutes, Priority priority) {
        assertThat(new Stakes(harm, minutes).priority()).isEqualTo(priority);
    }

    @ParameterizedTest
    @EnumSource(Harm.class)
    void lessTimeIsNeverLessUrgentAndGraverHarmNeither(Harm harm) {
        for (int m = 1; m < 3 * Stakes.DAY; m++) {
            Priority p = new Stakes(harm, m).priority();
            assertThat(p).isLessThanOrEqualTo(new Stakes(harm, m + 1).priority());
            for (Harm lighter : Harm.values()) {
                if (lighter.compareTo(harm) > 0) {
                    assertThat(p).isLessThanOrEqualTo(new Stakes(lighter, m).priority());
                }
            }
        }
    }

    @Test
    void onlyDangerToPeopleOrAnimalsIsDangerous() {
        assertThat(new Stakes(Harm.PEOPLE, 60).dangerous()).isTrue();
        assertThat(new Stakes(Harm.ANIMALS, 15).dangerous()).isTrue();
        assertThat(new Stakes(Harm.ANIMALS, 60).dangerous()).isFalse();
        assertThat(new Stakes(Harm.BATCH, 1).dangerous()).isFalse();
    }

    @Test
    void theTimeIsToldInWords() {
        assertThat(Stakes.animals(5).time()).isEqualTo("now: 5 min");
        assertThat(Stakes.people(60).time()).isEqualTo("now: the hour");
        assertThat(Stakes.batch(60).time()).isEqualTo("soon: within the hour");
        assertThat(Stakes.work(360).time()).isEqualTo("later: within 6 h");
        assertThat(Stakes.work(Stakes.DAY).time()).isEqualTo("later: within the day");
    }

    @Test
    void whatStandsAtRiskIsToldInWords() {
        assertThat(Stakes.people(1).harm().words()).isEqualTo("people");
        assertThat(Stakes.animals(1).harm().words()).isEqualTo("the animals");
        assertThat(Stakes.batch(1).harm().words()).isEqualTo("the batch");
        assertThat(Stakes.work(1).harm().words()).isEqualTo("your time");
    }

    @ParameterizedTest
    @EnumSource(AlarmKind.class)
    void everyAlarmHasItsWholeRow(AlarmKind k) {
        assertThat(k.cause()).matches("[a-z].*[^.?!]").hasSizeGreaterThan(10);
        assertThat(k.consequence()).matches("[a-z].*[^.?!]").hasSizeGreaterThan(5);
        assertThat(k.todo()).matches("[A-Z].*[.?]");
        assertThat(k.stakes().minutes()).isPositive();
        // Its cause is known before its time has run out by half.
        assertThat(k.onDelayMs()).isLessThanOrEqualTo(k.stakes().minutes() * 30_000L);
    }

    /** Where everything is urgent nothing is (EEMUA 191 wants 5, 15 and 80 per cent of what is told). */
    @Test
    void notEveryAlarmIsUrgent() {
        assertThat(Arrays.stream(AlarmKind.values()).filter(k -> k.priority() == Priority.NOW).count())
                .isLessThan(AlarmKind.values().length / 2);
    }
}
