package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.conetender.core.alarm.Alarms.Cause;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Raise, acknowledge, return, repeat. */
class AlarmsTest {

    private Alarms alarms = Alarms.NONE;
    private final List<String> told = new ArrayList<>();
    private final List<String> over = new ArrayList<>();
    private final List<String> raised = new ArrayList<>();
    private long seconds;

    private void pass(long s, Cause... causes) {
        for (long i = 0; i < s; i++) {
            Alarms.Turn t = alarms.after(List.of(causes), new Moment("boot-1", seconds * 1000, 0, true));
            alarms = t.next();
            t.tell().forEach(a -> told.add(a.key() + "@" + seconds));
            t.over().forEach(a -> over.add(a.key() + "@" + seconds));
            t.raised().forEach(a -> raised.add(a.key() + "@" + seconds));
            seconds++;
        }
    }

    private static Cause cause(AlarmKind k) {
        return new Cause(k.siteWide() ? "" : "a", k, "something is wrong", Alarm.Held.BY_CAUSE);
    }

    @Test
    void aCauseIsToldWhenItHasLastedItsDelayAndAgainAfterAQuarterAnHourAndFour() {
        pass(6 * 3600, cause(AlarmKind.PROBE));
        assertThat(told).containsExactly("a/probe@60", "a/probe@960", "a/probe@4560", "a/probe@18960");
        assertThat(raised).as("it begins to stand once").containsExactly("a/probe@60");
    }

    @Test
    void aBriefCauseIsNeverTold() {
        for (int i = 0; i < 20; i++) {
            pass(50, cause(AlarmKind.PROBE));
            pass(5);
        }
        assertThat(told).isEmpty();
        assertThat(over).as("what was not told does not end").isEmpty();
    }

    @Test
    void aFlutteringCauseIsOneIncident() {
        pass(70, cause(AlarmKind.PROBE));
        for (int i = 0; i < 10; i++) {
            pass(30);
            pass(30, cause(AlarmKind.PROBE));
        }
        assertThat(told).hasSize(1);
        pass(61);
        assertThat(over).hasSize(1);
        pass(61, cause(AlarmKind.PROBE));
        assertThat(told).hasSize(2);
    }

    /** A level that has come back by less than its deadband keeps up what stands, and begins nothing. */
    @Test
    void aLevelThatHoversAtItsLimitIsOneIncident() {
        Cause over = cause(AlarmKind.ARREST);
        Cause justBack = new Cause("a", AlarmKind.ARREST, "just below", Alarm.Held.BY_CAUSE, true,
                true);
        pass(600, justBack);
        assertThat(alarms.standing()).isEmpty();
        for (int i = 0; i < 6; i++) {
            pass(5, over);
            pass(120, justBack);
        }
        assertThat(told).hasSize(1);
        pass(61);
        pass(120, justBack);
        assertThat(alarms.raised()).isEmpty();
        assertThat(this.over).hasSize(1);
    }

    @Test
    void acknowledgingSilencesButOnlyTheEndOfTheCauseClears() {
        pass(10, cause(AlarmKind.WELDED));
        alarms = alarms.acknowledged("a", "welded", seconds * 1000);
        pass(24 * 3600, cause(AlarmKind.WELDED));
        assertThat(told).hasSize(1);
        assertThat(alarms.raised()).singleElement().satisfies(a -> assertThat(a.acknowledged()).isTrue());
        pass(61);
        assertThat(alarms.raised()).isEmpty();
        pass(2, cause(AlarmKind.WELDED));
        assertThat(told).as("a new incident is told anew").hasSize(2);
    }

    @Test
    void acknowledgingWhatDoesNotStandChangesNothing() {
        assertThat(alarms.acknowledged("a", "welded", 0)).isSameAs(alarms);
    }

    @Test
    void suffocatingNaupliiAreToldEveryThreeMinutesAndSilencedForTen() {
        pass(31, cause(AlarmKind.AIR_FAILED_ANIMALS));
        alarms = alarms.acknowledged("a", "air-failed-animals", seconds * 1000);
        pass(601, cause(AlarmKind.AIR_FAILED_ANIMALS));
        assertThat(told).hasSize(2);
        pass(180, cause(AlarmKind.AIR_FAILED_ANIMALS));
        assertThat(told).hasSize(3);
    }

    @Test
    void theSameAlarmOfTwoConesIsTwoAlarms() {
        pass(61, new Cause("a", AlarmKind.DRY, "x", Alarm.Held.BY_CAUSE),
                new Cause("b", AlarmKind.DRY, "x", Alarm.Held.BY_CAUSE));
        assertThat(told).containsExactly("a/dry@60", "b/dry@60");
    }

    @Test
    void theFirstWordsStandWhileTheCauseLasts() {
        pass(1, new Cause("a", AlarmKind.OVERHEAT, "first", Alarm.Held.BY_CAUSE));
        pass(1, new Cause("a", AlarmKind.OVERHEAT, "later", Alarm.Held.BY_CAUSE));
        assertThat(alarms.raised().getFirst().what()).isEqualTo("first");
    }

    @Test
    void whatNobodyHasSeenStandsThoughItsCauseWasBriefAndIsNotRepeated() {
        pass(1, cause(AlarmKind.AIR_BACK));
        pass(8 * 3600);
        assertThat(alarms.raised()).hasSize(1);
        assertThat(told).as("nobody can do more about it by hearing it again").hasSize(1);
        alarms = alarms.acknowledged("a", "air-back", seconds * 1000);
        pass(2);
        assertThat(alarms.raised()).isEmpty();
        assertThat(over).hasSize(1);
    }

    @Test
    void aSecondIncidentIsToldAlsoWhileTheFirstStandsUnseen() {
        pass(1, cause(AlarmKind.AIR_BACK));
        pass(300);
        pass(1, new Cause("a", AlarmKind.AIR_BACK, "once more", Alarm.Held.BY_CAUSE));
        assertThat(told).hasSize(2);
        assertThat(alarms.raised()).singleElement()
                .satisfies(a -> assertThat(a.what()).isEqualTo("once more"));
    }

    private Alarms filled(String cone) {
        return alarms.filled(cone, List.of(), new Moment("boot-1", seconds * 1000, 0, true));
    }

    @Test
    void aNewFillingEndsWhatWasSaidOfTheBatchBefore() {
        pass(1, cause(AlarmKind.SIPHON));
        pass(300);
        assertThat(filled("b").raised()).hasSize(1);
        assertThat(filled("a").raised()).isEmpty();
    }

    @Test
    void whatLastsAndWhatAPersonHasSeenOutlivesAFilling() {
        pass(61, cause(AlarmKind.PROBE), cause(AlarmKind.COOKED));
        alarms = alarms.acknowledged("a", "cooked", seconds * 1000);
        assertThat(filled("a").raised()).hasSize(2);
    }

    @Test
    void aLevelThatWasCoolerIsNotKeptUpByBeingNear() {
        Cause justBack = new Cause("a", AlarmKind.ARREST, "just below", Alarm.Held.BY_CAUSE, true,
                true);
        pass(5, cause(AlarmKind.ARREST));
        pass(10);
        pass(60, justBack);
        assertThat(over).containsExactly("a/arrest@65");
        assertThat(alarms.standing()).isEmpty();
    }

    /** A minute without its cause, and not a second more. */
    @Test
    void whatComesBackAfterAMinuteIsAnotherIncident() {
        pass(1, cause(AlarmKind.WELDED));
        pass(59);
        pass(1, cause(AlarmKind.WELDED));
        assertThat(alarms.raised()).singleElement()
                .satisfies(a -> assertThat(a.course().since().monoMs()).isZero());
        pass(60);
        pass(1, cause(AlarmKind.WELDED));
        assertThat(alarms.raised()).singleElement()
                .satisfies(a -> assertThat(a.course().since().monoMs()).isEqualTo(121_000));
        assertThat(told).containsExactly("a/welded@0", "a/welded@121");
    }

    /** What was told of a set-point that moves would soon be wrong. */
    @Test
    void theWordsOfASetPointOutOfReachAreThoseOfNow() {
        pass(601, new Cause("a", AlarmKind.OUT_OF_REACH, "27 °C", Alarm.Held.BY_CAUSE));
        pass(1, new Cause("a", AlarmKind.OUT_OF_REACH, "28 °C", Alarm.Held.BY_CAUSE));
        assertThat(alarms.raised().getFirst().what()).isEqualTo("28 °C");
    }

    /** Only a person's answer releases it: that its guard is silent for a tick does not. */
    @Test
    void aLatchThatNobodyAnsweredIsKeptUpForAMinuteToo() {
        pass(1, new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.BY_LATCH));
        pass(59);
        assertThat(alarms.raised()).hasSize(1);
        pass(2);
        assertThat(over).containsExactly("a/overheat@61");
    }

    @Test
    void whoAcknowledgedTooEarlyIsToldWhenTheCauseIsGone() {
        Cause mended = new Cause("a", AlarmKind.OVERHEAT, "over now", Alarm.Held.ONLY_BY_LATCH);
        pass(10, cause(AlarmKind.OVERHEAT));
        alarms = alarms.acknowledged("a", "overheat", seconds * 1000);
        pass(600, cause(AlarmKind.OVERHEAT));
        assertThat(told).hasSize(1);
        pass(60, mended);
        assertThat(told).hasSize(2);
        assertThat(alarms.raised()).singleElement().satisfies(a -> {
            assertThat(a.acknowledged()).isFalse();
            assertThat(a.what()).isEqualTo("over now");
            assertThat(a.told().onceMore()).isTrue();
        });
    }

    @Test
    void whatComesBackIsNotCalledOver() {
        pass(10, cause(AlarmKind.OVERHEAT));
        alarms = alarms.acknowledged("a", "overheat", seconds * 1000);
        pass(1, new Cause("a", AlarmKind.OVERHEAT, "over now", Alarm.Held.ONLY_BY_LATCH));
        pass(10, new Cause("a", AlarmKind.OVERHEAT, "hot again", Alarm.Held.BY_LATCH));
        assertThat(alarms.raised()).singleElement().satisfies(a -> {
            assertThat(a.acknowledged()).as("it is another time").isFalse();
            assertThat(a.what()).isEqualTo("hot again");
            assertThat(a.told().onceMore()).isFalse();
        });
    }

    /** Its words change when it is told, and no sooner. */
    @Test
    void whatWasToldStaysWhileNobodyKnowsWhetherItIsOver() {
        Cause unknown = new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.BY_LATCH, false, false);
        pass(10, unknown);
        alarms = alarms.acknowledged("a", "overheat", seconds * 1000);
        pass(60, new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.ONLY_BY_LATCH));
        Alarm told = alarms.raised().getFirst();
        pass(800, unknown);
        assertThat(alarms.raised()).singleElement().satisfies(a -> {
            assertThat(a.what()).isEqualTo(told.what());
            assertThat(a.told()).isEqualTo(told.told()).matches(Alarm.Told::onceMore);
        });
        pass(101, unknown);
        assertThat(alarms.raised().getFirst().told().onceMore()).as("told next").isFalse();
    }

    /** From the shelf it comes back with all that its message has to say. */
    @Test
    void whatWaitsForItsSecondAnswerStillDoesWhenItComesBackFromTheShelf() {
        Cause over = new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.ONLY_BY_LATCH);
        pass(10, cause(AlarmKind.OVERHEAT));
        alarms = alarms.acknowledged("a", "overheat", seconds * 1000);
        pass(1, over);
        alarms = alarms.shelving(Map.of("a/overheat", seconds * 1000 + 60_000));
        pass(59, over);
        assertThat(told).hasSize(1);
        pass(2, over);
        assertThat(told).hasSize(2);
        assertThat(alarms.raised().getFirst().told().onceMore()).isTrue();
    }

    /** Words that move are those of each telling; in between nobody is called by new ones. */
    @Test
    void anHourThatIsMissedIsToldEachTimeAsItStandsThen() {
        pass(700, new Cause("a", AlarmKind.HOUR_MISSED, "it comes at 18:40", Alarm.Held.BY_CAUSE));
        assertThat(told).hasSize(1);
        pass(800, new Cause("a", AlarmKind.HOUR_MISSED, "it comes at 18:50", Alarm.Held.BY_CAUSE));
        assertThat(told).hasSize(1);
        assertThat(alarms.raised().getFirst().what()).as("as it was told").isEqualTo("it comes at 18:40");
        assertThat(alarms.raised().getFirst().asItIs().what()).isEqualTo("it comes at 18:50");
        pass(200, new Cause("a", AlarmKind.HOUR_MISSED, "it comes at 19:00", Alarm.Held.BY_CAUSE));
        assertThat(told).hasSize(2);
        assertThat(alarms.raised().getFirst().what()).isEqualTo("it comes at 19:00");
    }

    /** It is told at once, and once. */
    @Test
    void aDangerThatIsSeenToBeBackIsToldAnew() {
        Cause hot = new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.BY_LATCH);
        Cause over = new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.ONLY_BY_LATCH);
        pass(100, hot);
        pass(900, over);
        assertThat(told).hasSize(2);
        pass(100, hot);
        pass(100, over);
        pass(100, hot);
        assertThat(told).as("it flutters").hasSize(2);
        pass(400, over);
        assertThat(told).hasSize(2);
        pass(100, hot);
        assertThat(told).as("ten minutes after it was told to be over").hasSize(3);
    }

    @ParameterizedTest
    @EnumSource(AlarmKind.class)
    void everyAlarmAsksSomethingOfAPersonAndIsRepeatedUntilAcknowledged(AlarmKind k) {
        assertThat(k.todo()).matches("[A-Z].*[.?]").hasSizeGreaterThan(10);
        assertThat(k.id()).matches("[a-z-]+");
        pass(k.onDelayMs() / 1000 + 3601, cause(k));
        assertThat(told).hasSizeGreaterThanOrEqualTo(2);
        alarms = alarms.acknowledged(k.siteWide() ? "" : "a", k.id(), seconds * 1000);
        told.clear();
        pass(590, cause(k));
        assertThat(told).as("quiet after it was acknowledged").isEmpty();
    }

    @Test
    void aLatchThatAPersonReleasedLeavesNothingStanding() {
        Cause latched = new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.BY_LATCH);
        pass(61, latched);
        alarms = alarms.acknowledged("a", "overheat", seconds * 1000);
        pass(1);
        assertThat(alarms.raised()).as("at once").isEmpty();
    }

    @Test
    void aCauseThatMayFlutterIsKeptUpForAMinute() {
        pass(61, new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.BY_CAUSE));
        alarms = alarms.acknowledged("a", "overheat", seconds * 1000);
        pass(30);
        assertThat(alarms.raised()).hasSize(1);
        pass(31);
        assertThat(alarms.raised()).isEmpty();
    }
}
