package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.conetender.core.alarm.Bell.cause;

import java.util.Arrays;
import org.conetender.core.alarm.Alarms.Cause;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a list says of one alarm, and by what name it goes. */
class AlarmTest {

    private final Bell bell = new Bell();

    private Alarm stands(Alarm.Held held) {
        bell.pass(1, new Cause("a", AlarmKind.OVERHEAT, "too warm", held));
        return bell.alarm("a/overheat");
    }

    @Test
    void itIsActiveWhileItsCauseIsThere() {
        assertThat(stands(Alarm.Held.BY_CAUSE).active()).isTrue();
        assertThat(stands(Alarm.Held.BY_LATCH).active()).isTrue();
        assertThat(stands(Alarm.Held.ONLY_BY_LATCH).active()).as("a lock is no cause").isFalse();
        assertThat(stands(Alarm.Held.BY_CAUSE).active()).isTrue();
        bell.pass(1);
        assertThat(bell.alarm("a/overheat").active()).isFalse();
    }

    @Test
    void itIsLatchedWhereOnlyAPersonEndsIt() {
        assertThat(stands(Alarm.Held.BY_CAUSE).latched()).isFalse();
        assertThat(stands(Alarm.Held.BY_LATCH).latched()).isTrue();
        assertThat(stands(Alarm.Held.ONLY_BY_LATCH).latched()).isTrue();
        bell.pass(1, cause("a", AlarmKind.COOKED));
        assertThat(bell.alarm("a/cooked").latched()).isTrue();
    }

    @Test
    void itTellsHowLongItsCauseHasBeenAway() {
        assertThat(stands(Alarm.Held.BY_CAUSE).goneMs(bell.nowMs())).isZero();
        bell.pass(11);
        assertThat(bell.alarm("a/overheat").goneMs(bell.nowMs())).isEqualTo(11_000);
    }

    @Test
    void aMessageOfItsOwnStandsOnceItWasTold() {
        bell.pass(60, cause("a", AlarmKind.DRY));
        assertThat(bell.alarm("a/dry").shown()).as("not yet").isFalse();
        bell.pass(1, cause("a", AlarmKind.DRY));
        assertThat(bell.alarm("a/dry").shown()).isTrue();
        bell.shelve("a", AlarmKind.DRY, 600);
        bell.pass(1, cause("a", AlarmKind.DRY));
        assertThat(bell.alarm("a/dry").shown()).as("on the shelf").isFalse();
    }

    @Test
    void ofWhatFollowsOnlyADangerKeepsAMessageOfItsOwn() {
        Cause later = cause("a", AlarmKind.WELDED);
        bell.pass(61, cause("a", AlarmKind.ARREST), cause("a", AlarmKind.OVERHEAT));
        assertThat(bell.alarm("a/overheat").shown()).isTrue();
        assertThat(bell.alarm("a/arrest").shown()).as("it was named").isFalse();
        bell.pass(1, cause("b", AlarmKind.ARREST));
        assertThat(bell.alarm("b/arrest").shown()).isTrue();
        bell.pass(70, cause("b", AlarmKind.ARREST), cause("b", AlarmKind.OVERHEAT));
        assertThat(bell.alarm("b/arrest").follows()).isTrue();
        assertThat(bell.alarm("b/arrest").shown()).as("its first cause says it now").isFalse();
        bell.pass(1, later, cause("b", AlarmKind.OVERHEAT), cause("b", AlarmKind.WELDED));
        assertThat(bell.alarm("b/overheat").follows()).isTrue();
        assertThat(bell.alarm("b/overheat").shown()).isTrue();
    }

    @ParameterizedTest
    @EnumSource(AlarmKind.class)
    void everyKindIsFoundByItsId(AlarmKind k) {
        assertThat(AlarmKind.of(k.id())).contains(k);
        assertThat(AlarmKind.of(k.id() + "s")).isEmpty();
    }

    /** What would be another alarm in each cone must not be one for all, nor the other way round. */
    @Test
    void theseConcernTheWholeSite() {
        assertThat(Arrays.stream(AlarmKind.values()).filter(AlarmKind::siteWide)).containsExactlyInAnyOrder(
                AlarmKind.RECORD, AlarmKind.HISTORY, AlarmKind.CLOCK, AlarmKind.CRASH_LOOP,
                AlarmKind.RECORD_DAMAGED, AlarmKind.LATE);
    }

    @Test
    void theseStandUntilAPersonHasSeenThem() {
        assertThat(Arrays.stream(AlarmKind.values()).filter(AlarmKind::standsUntilSeen))
                .containsExactlyInAnyOrder(AlarmKind.AIR_BACK, AlarmKind.SIPHON, AlarmKind.COOKED);
    }

    @ParameterizedTest
    @EnumSource(AlarmKind.class)
    void itsDangerIsThatOfItsStakes(AlarmKind k) {
        assertThat(k.dangerous()).isEqualTo(k.stakes().dangerous());
        assertThat(k.priority()).isEqualTo(k.stakes().priority());
    }
}
