package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.conetender.core.alarm.Bell.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.conetender.core.alarm.Alarms.Cause;
import org.conetender.core.alarm.Alarms.Kept;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** After a restart nobody is called for what they have seen, and nothing is lost that they have not. */
class ResumedTest {

    private static final long BEGUN_S = 1_000;
    private static final Moment BEFORE = new Moment("boot-1", 100_000, 0, true);

    private final Bell bell = new Bell();
    /** What ended, with the seconds since the start. */
    private final List<String> over = new ArrayList<>();

    private void resume(Map<String, List<String>> acknowledged, Kept... unseen) {
        bell.seconds = BEGUN_S;
        bell.alarms = Alarms.resumed(acknowledged, List.of(unseen),
                new Moment("boot-1", bell.nowMs(), 0, true));
    }

    private void pass(long s, Cause... causes) {
        for (long i = 0; i < s; i++) {
            bell.alarms.after(List.of(causes), new Moment("boot-1", bell.nowMs(), 0, true)).over()
                    .forEach(a -> over.add(a.key() + "@" + (bell.seconds - BEGUN_S)));
            bell.pass(1, causes);
        }
    }

    @Test
    void whatAPersonHasSeenStandsAtOnceAndIsNotToldAgain() {
        resume(Map.of("a", List.of("probe", "record")));
        pass(1, cause("a", AlarmKind.PROBE), cause("", AlarmKind.RECORD));
        assertThat(bell.alarms.raised()).extracting(Alarm::key).containsExactly("/record", "a/probe");
        assertThat(bell.alarms.raised()).allMatch(Alarm::acknowledged).allMatch(Alarm::raised);
        assertThat(bell.alarm("a/probe").told().acknowledgedAtMs()).hasValue(BEGUN_S * 1_000);
        pass(5 * 3_600, cause("a", AlarmKind.PROBE), cause("", AlarmKind.RECORD));
        assertThat(bell.messages).isEmpty();
        assertThat(over).isEmpty();
    }

    /** Whoever acknowledged it did so too early: nothing else would ever ask for the other one. */
    @Test
    void whatIsHeldByItsLatchAloneIsToldOnceMoreAlsoAfterARestart() {
        resume(Map.of("a", List.of("overheat")));
        Cause mended = new Cause("a", AlarmKind.OVERHEAT, "too hot", Alarm.Held.ONLY_BY_LATCH);
        pass(61, mended);
        assertThat(bell.said()).containsExactly("a/overheat");
        assertThat(bell.alarm("a/overheat").told().onceMore()).isTrue();
        bell.acknowledge("a", AlarmKind.OVERHEAT);
        pass(290, mended);
        assertThat(bell.said()).hasSize(1);
    }

    @Test
    void itIsRecognisedOnceAndTheNextTimeIsNew() {
        resume(Map.of("a", List.of("dry")));
        pass(10, cause("a", AlarmKind.DRY));
        pass(61);
        assertThat(over).containsExactly("a/dry@70");
        pass(61, cause("a", AlarmKind.DRY));
        assertThat(bell.said()).containsExactly("a/dry");
        pass(600, cause("a", AlarmKind.DRY));
        assertThat(over).as("nothing else has ended").hasSize(1);
    }

    @Test
    void anotherAlarmAndTheSameOneOfAnotherConeAreNew() {
        resume(Map.of("a", List.of("dry")));
        pass(61, cause("b", AlarmKind.DRY), cause("a", AlarmKind.WELDED));
        assertThat(bell.said()).containsExactly("a/welded", "b/dry");
    }

    @Test
    void whatDoesNotShowItselfWithinFiveMinutesHasEnded() {
        resume(Map.of("a", List.of("dry", "probe")));
        pass(300, cause("a", AlarmKind.PROBE));
        assertThat(over).isEmpty();
        pass(1, cause("a", AlarmKind.PROBE));
        assertThat(over).as("once it was waited for").containsExactly("a/dry@300");
        pass(100, cause("a", AlarmKind.PROBE));
        assertThat(over).hasSize(1);
        pass(61, cause("a", AlarmKind.PROBE), cause("a", AlarmKind.DRY));
        assertThat(bell.alarm("a/dry").acknowledged()).as("and is new when it comes").isFalse();
    }

    /** It would show at once, by its latch or its output. */
    @Test
    void aDangerIsWaitedForAMinute() {
        resume(Map.of("a", List.of("heater-stuck"), "b", List.of("heater-stuck")));
        pass(60);
        assertThat(over).isEmpty();
        pass(1, cause("b", AlarmKind.HEATER_STUCK));
        assertThat(over).as("b's has come in time").containsExactly("a/heater-stuck@60");
        pass(61, cause("b", AlarmKind.HEATER_STUCK), cause("a", AlarmKind.HEATER_STUCK));
        assertThat(bell.said()).containsExactly("a/heater-stuck");
    }

    /** A clock counts as unset only after an hour of it. */
    @Test
    void aClockIsWaitedForAnHourLonger() {
        resume(Map.of("", List.of("clock")));
        pass(3_600 + 300);
        assertThat(over).isEmpty();
        pass(1);
        assertThat(over).containsExactly("/clock@3900");
    }

    /** Nobody knows how much of the ten minutes was over. */
    @Test
    void wantOfAirIsToldAgain() {
        resume(Map.of("a", List.of("air-failed-animals")));
        pass(31, cause("a", AlarmKind.AIR_FAILED_ANIMALS));
        assertThat(bell.said()).containsExactly("a/air-failed-animals");
        pass(400, cause("a", AlarmKind.AIR_FAILED_ANIMALS));
        assertThat(over).isEmpty();
    }

    @Test
    void whatNobodyHasSeenStandsAsItStoodAndIsNotCalledOut() {
        resume(Map.of(), new Kept("a", AlarmKind.AIR_BACK, "it was off for 10 min", BEFORE));
        assertThat(bell.alarm("a/air-back").shown()).as("in the list from the first second").isTrue();
        pass(3_600);
        Alarm stands = bell.alarm("a/air-back");
        assertThat(stands.what()).isEqualTo("it was off for 10 min");
        assertThat(stands.course().since()).isEqualTo(BEFORE);
        assertThat(stands.raised()).isTrue();
        assertThat(stands.acknowledged()).isFalse();
        assertThat(bell.messages).isEmpty();
        bell.acknowledge("a", AlarmKind.AIR_BACK);
        pass(1);
        assertThat(over).containsExactly("a/air-back@3600");
        assertThat(bell.alarms.raised()).isEmpty();
    }

    @Test
    void whenItsCauseComesAgainThatIsAnotherTime() {
        resume(Map.of(), new Kept("a", AlarmKind.AIR_BACK, "before", BEFORE));
        pass(1, new Cause("a", AlarmKind.AIR_BACK, "once more", Alarm.Held.BY_CAUSE));
        assertThat(bell.said()).containsExactly("a/air-back");
        assertThat(bell.alarm("a/air-back").what()).isEqualTo("once more");
    }

    /** Nobody has ever acknowledged it, and what explains it is told no more. */
    @Test
    void aLockThatFollowsFromWhatAPersonHasSeenIsCalledOf() {
        resume(Map.of("a", List.of("probe")));
        pass(180, cause("a", AlarmKind.PROBE), new Cause("a", AlarmKind.NO_EFFECT, "it did not warm",
                Alarm.Held.ONLY_BY_LATCH));
        assertThat(bell.said()).containsExactly("a/no-effect");
    }
}
