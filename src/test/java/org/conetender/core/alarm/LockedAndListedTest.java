package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.alarm.Alarms.Cause;
import org.conetender.core.alarm.Alarms.Kept;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** Which alarm a person means, what a filling ends, and locks that an acknowledgement did not open. */
class LockedAndListedTest {

    private static final Cause LOCK = new Cause("a", AlarmKind.NO_EFFECT, "nothing warms",
            Alarm.Held.ONLY_BY_LATCH);
    private static final Cause RECORD = Bell.cause("", AlarmKind.RECORD);

    private final Bell bell = new Bell();

    @Test
    void anAlarmIsFoundInItsOwnConeOrAtTheSite() {
        bell.pass(120, Bell.cause("a", AlarmKind.OVERHEAT), Bell.cause("b", AlarmKind.DRY), RECORD);
        assertThat(bell.alarms.raised("a", "overheat")).hasValueSatisfying(
                a -> assertThat(a.key()).isEqualTo("a/overheat"));
        assertThat(bell.alarms.raised("a", "dry")).isEmpty();
        assertThat(bell.alarms.raised("b", "dry")).isPresent();
        assertThat(bell.alarms.raised("b", "record")).hasValueSatisfying(
                a -> assertThat(a.cone()).isEmpty());
        assertThat(bell.alarms.raised("a", "late")).isEmpty();
    }

    @Test
    void aFillingEndsWhatNobodyHadSeenOfItsOwnConeAlone() {
        bell.pass(120, Bell.cause("a", AlarmKind.COOKED), Bell.cause("b", AlarmKind.COOKED),
                Bell.cause("a", AlarmKind.DRY));
        Alarms filled = bell.alarms.filled("a", List.of(), now());
        assertThat(filled.standing()).containsOnlyKeys("a/dry", "b/cooked");
        bell.acknowledge("a", AlarmKind.COOKED);
        assertThat(bell.alarms.filled("a", List.of(), now()).standing()).containsKey("a/cooked");
    }

    @Test
    void whatTheRecordStillKeepsStandsAgainWithoutACall() {
        Kept kept = new Kept("a", AlarmKind.COOKED, "it was hot", now());
        Alarms is = bell.alarms.filled("a", List.of(kept), now());
        assertThat(is.raised("a", "cooked")).isPresent();
        bell.pass(120, Bell.cause("a", AlarmKind.COOKED));
        assertThat(bell.alarms.filled("a", List.of(kept), now()).standing()).containsOnlyKeys("a/cooked");
        assertThat(bell.alarms.filled("a", List.of(new Kept("a", AlarmKind.SIPHON, "wet", now())), now())
                .standing()).containsOnlyKeys("a/siphon");
    }

    private Moment now() {
        return new Moment("boot-1", bell.nowMs(), 0, true);
    }

    /** Told, acknowledged, and not opened: to the second when it is asked for again. */
    @Test
    void aLockThatItsAcknowledgementDidNotOpenIsAskedForAgain() {
        bell.pass(61, LOCK);
        assertThat(bell.messages).hasSize(1);
        bell.acknowledge("a", AlarmKind.NO_EFFECT);
        bell.pass(Alarms.UNKEPT_MS / 1_000, LOCK);
        assertThat(bell.messages).hasSize(1);
        bell.pass(1, LOCK);
        assertThat(bell.messages).hasSize(2);
        assertThat(bell.alarm("a/no-effect").told().onceMore()).isTrue();
    }

    @Test
    void butNotWhileNothingCanBeRecorded() {
        bell.pass(61, LOCK, RECORD);
        bell.acknowledge("a", AlarmKind.NO_EFFECT);
        bell.acknowledge("", AlarmKind.RECORD);
        int told = bell.messages.size();
        bell.pass(1_200, LOCK, RECORD);
        assertThat(bell.messages).hasSize(told);
        bell.pass(1, LOCK);
        assertThat(bell.messages).hasSize(told + 1);
    }

    @Test
    void norForWhatIsNotLocked() {
        Cause probe = Bell.cause("a", AlarmKind.PROBE);
        bell.pass(400, probe);
        bell.acknowledge("a", AlarmKind.PROBE);
        int told = bell.messages.size();
        bell.pass(2_000, probe);
        assertThat(bell.messages).hasSize(told);
    }

    @Test
    void whatLocksAndIsSeenToBeOverSaysSo() {
        assertThat(AlarmKind.values()).filteredOn(AlarmKind::mends)
                .containsExactlyInAnyOrder(AlarmKind.OVERHEAT, AlarmKind.PROBE_UNSTEADY,
                        AlarmKind.PROBE_FROZEN);
    }
}
