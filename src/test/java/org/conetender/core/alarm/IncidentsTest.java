package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.conetender.core.alarm.Bell.cause;

import org.conetender.core.alarm.Alarms.Cause;
import org.junit.jupiter.api.Test;

/** One incident is one message, with what follows from it named; no danger hides in another. */
class IncidentsTest {

    private static final Cause DRY = cause("a", AlarmKind.DRY);
    private static final Cause PROBE = cause("a", AlarmKind.PROBE);
    private static final Cause AIR_A = cause("a", AlarmKind.AIR_FAILED_ANIMALS);
    private static final Cause AIR_B = cause("b", AlarmKind.AIR_FAILED_ANIMALS);
    private static final Cause AIR_C = cause("c", AlarmKind.AIR_FAILED_ANIMALS);

    private final Bell bell = new Bell();

    @Test
    void aSharedPumpThatDiesIsOneMessageThatNamesAllItsCones() {
        bell.pass(31, AIR_A, AIR_B, AIR_C);
        assertThat(bell.said()).containsExactly("a/air-failed-animals"
                + "[b/air-failed-animals, c/air-failed-animals]");
        bell.pass(180, AIR_A, AIR_B, AIR_C);
        assertThat(bell.said()).as("again after three minutes, and once").hasSize(2);
        assertThat(bell.alarms.raised()).as("but each is in the list").hasSize(3);
        assertThat(bell.alarm("b/air-failed-animals").aside().follows()).contains("a/air-failed-animals");
        assertThat(bell.alarm("a/air-failed-animals").follows()).isFalse();
    }

    @Test
    void aConeWhoseContactOpensAMomentLaterIsNamedBeforeItsOwnDelayIsOver() {
        bell.pass(20, AIR_A);
        bell.pass(60, AIR_A, AIR_B);
        assertThat(bell.said()).containsExactly("a/air-failed-animals[b/air-failed-animals]");
    }

    @Test
    void aConeThatFailsAfterTheMessageHasOneOfItsOwnBecauseItsAnimalsAreNamedNowhere() {
        bell.pass(61, AIR_A);
        bell.pass(61, AIR_A, AIR_B);
        assertThat(bell.said()).containsExactly("a/air-failed-animals", "b/air-failed-animals");
        bell.pass(180, AIR_A, AIR_B);
        assertThat(bell.said().getLast()).isEqualTo("a/air-failed-animals[b/air-failed-animals]");
    }

    @Test
    void whoAcknowledgesTheFirstHasSeenWhatWasNamedWithIt() {
        bell.pass(31, AIR_A, AIR_B);
        bell.acknowledge("a", AlarmKind.AIR_FAILED_ANIMALS);
        assertThat(bell.alarm("b/air-failed-animals").acknowledged()).isTrue();
        bell.pass(600, AIR_A, AIR_B);
        assertThat(bell.messages).hasSize(1);
        bell.pass(2, AIR_A, AIR_B);
        assertThat(bell.said()).hasSize(2).last().isEqualTo("a/air-failed-animals[b/air-failed-animals]");
    }

    @Test
    void aDangerThatComesAfterItsCauseWasAcknowledgedIsTold() {
        Cause welded = cause("a", AlarmKind.WELDED);
        bell.pass(1, welded);
        bell.acknowledge("a", AlarmKind.WELDED);
        bell.pass(600, welded);
        bell.pass(1, welded, cause("a", AlarmKind.OVERHEAT));
        assertThat(bell.said()).containsExactly("a/welded", "a/overheat");
        assertThat(bell.alarm("a/overheat").aside().follows()).contains("a/welded");
        bell.pass(900, welded, cause("a", AlarmKind.OVERHEAT));
        assertThat(bell.said().getLast()).as("and again, for nobody answered it").isEqualTo("a/overheat");
    }

    @Test
    void whatFollowsIsNotToldWhileItsCauseStandsAndIsToldWhenItStandsAlone() {
        bell.pass(61, DRY);
        bell.acknowledge("a", AlarmKind.DRY);
        bell.pass(600, DRY, PROBE);
        assertThat(bell.said()).containsExactly("a/dry");
        assertThat(bell.alarm("a/probe").aside().follows()).contains("a/dry");
        bell.pass(59, PROBE);
        assertThat(bell.said()).hasSize(1);
        bell.pass(2, PROBE);
        assertThat(bell.said()).containsExactly("a/dry", "a/probe");
        assertThat(bell.alarm("a/probe").follows()).isFalse();
    }

    @Test
    void ofAChainTheFirstOutIsNamed() {
        Cause other = cause("b", AlarmKind.PROBE);
        bell.pass(61, DRY);
        bell.pass(61, DRY, PROBE, other);
        assertThat(bell.alarm("b/probe").aside().follows()).contains("a/dry");
    }

    @Test
    void theSameFailureAnHourLaterIsAnotherIncident() {
        bell.pass(3_600, PROBE);
        bell.acknowledge("a", AlarmKind.PROBE);
        bell.pass(700, PROBE);
        bell.pass(61, PROBE, cause("b", AlarmKind.PROBE));
        assertThat(bell.said()).last().isEqualTo("b/probe");
        assertThat(bell.alarm("b/probe").follows()).isFalse();
    }

    @Test
    void whatIsOnlyLockedOffExplainsNothingAnyMore() {
        Cause latch = new Cause("a", AlarmKind.WELDED, "x", Alarm.Held.ONLY_BY_LATCH);
        bell.pass(61, cause("a", AlarmKind.WELDED));
        bell.pass(100, latch);
        bell.pass(1, latch, cause("a", AlarmKind.ARREST));
        assertThat(bell.alarm("a/arrest").follows()).isFalse();
        assertThat(bell.said()).last().isEqualTo("a/arrest");
    }

    /** Heaters without mains are missed one after the other, and each is locked off at once. */
    @Test
    void whatBeganWithItFollowsThoughOnlyItsLatchIsLeft() {
        Cause a = new Cause("a", AlarmKind.NO_EFFECT, "x", Alarm.Held.ONLY_BY_LATCH);
        Cause b = new Cause("b", AlarmKind.NO_EFFECT, "x", Alarm.Held.ONLY_BY_LATCH);
        bell.pass(600, a);
        bell.pass(3_600, a, b);
        assertThat(bell.said()).allMatch(m -> m.startsWith("a/no-effect"));
        bell.pass(62, b);
        assertThat(bell.said()).last().isEqualTo("b/no-effect");
    }

    /** The second person must not be called later because another alarm came and went. */
    @Test
    void aDangerThatWasToldByItselfIsNotCountedAnewWhenItStandsAloneAgain() {
        Cause welded = cause("a", AlarmKind.WELDED);
        Cause overheat = cause("a", AlarmKind.OVERHEAT);
        bell.pass(300, overheat);
        bell.pass(60, overheat, welded);
        bell.pass(100, overheat);
        assertThat(bell.said()).containsExactly("a/overheat", "a/welded[a/overheat]", "a/overheat");
        bell.pass(900, overheat);
        assertThat(bell.messages).filteredOn(Message::second).hasSize(1);
        assertThat(bell.alarm("a/overheat").told().firstMs()).hasValue(0);
    }

    @Test
    void whatStaysTrueIsToldOnceItStandsAloneThoughItsCauseWasBrief() {
        Cause loop = cause("", AlarmKind.CRASH_LOOP);
        bell.pass(61, loop);
        bell.pass(1, loop, cause("a", AlarmKind.AIR_BACK));
        bell.pass(120, loop);
        assertThat(bell.said()).containsExactly("/crash-loop");
        bell.acknowledge("", AlarmKind.CRASH_LOOP);
        assertThat(bell.alarm("a/air-back").acknowledged()).as("it was named nowhere").isFalse();
        bell.pass(62);
        assertThat(bell.said()).last().isEqualTo("a/air-back");
        bell.pass(8 * 3600);
        assertThat(bell.messages).as("and never again").hasSize(2);
    }

    /** It may never become an alarm. */
    @Test
    void whatHasNotLastedItsDelayExplainsNothingYet() {
        bell.pass(1, DRY, cause("a", AlarmKind.NO_EFFECT));
        assertThat(bell.said()).containsExactly("a/no-effect");
        bell.pass(60, DRY, cause("a", AlarmKind.NO_EFFECT));
        assertThat(bell.alarm("a/no-effect").aside().follows()).contains("a/dry");
        assertThat(bell.said()).last().isEqualTo("a/dry[a/no-effect]");
        assertThat(bell.alarm("a/no-effect").told().way()).as("that sentence says it now")
                .isEqualTo(Alarm.Way.NAMED);
        assertThat(bell.alarm("a/no-effect").told().times()).isEqualTo(2);
    }

    @Test
    void whatIsGoneOrOnTheShelfIsNotNamed() {
        bell.shelve("b", AlarmKind.NO_EFFECT, 3_600);
        bell.pass(55, cause("b", AlarmKind.DRY), cause("b", AlarmKind.NO_EFFECT), DRY,
                cause("a", AlarmKind.NO_EFFECT));
        bell.pass(10, cause("b", AlarmKind.DRY), cause("b", AlarmKind.NO_EFFECT), DRY);
        assertThat(bell.said()).containsExactly("a/no-effect", "a/dry b/dry");
    }

    /** It explains others for a minute after it is over, and not a second longer. */
    @Test
    void whatIsLongOverExplainsNothing() {
        bell.pass(1, cause("a", AlarmKind.AIR_BACK));
        bell.pass(59);
        bell.pass(1, cause("b", AlarmKind.AIR_BACK));
        assertThat(bell.alarm("b/air-back").aside().follows()).contains("a/air-back");
        bell.pass(1, cause("b", AlarmKind.AIR_BACK));
        assertThat(bell.alarm("b/air-back").follows()).isFalse();
        assertThat(bell.said()).containsExactly("a/air-back", "b/air-back");
    }

    /** It is repeated with its cause, as long as nobody answers that. */
    @Test
    void aDangerThatHadItsOwnMessageIsRepeatedWithItsCause() {
        Cause welded = cause("a", AlarmKind.WELDED);
        bell.pass(1_000, welded);
        bell.pass(3_600, welded, cause("a", AlarmKind.OVERHEAT));
        assertThat(bell.said()).containsExactly("a/welded", "a/welded", "a/overheat",
                "a/welded[a/overheat]");
        assertThat(bell.at).containsExactly(0L, 900L, 1_000L, 4_500L);
    }

    @Test
    void whatEndangersPeopleOrAnimalsIsSaidFirst() {
        bell.pass(1, cause("a", AlarmKind.ARREST), cause("b", AlarmKind.COOKED),
                cause("c", AlarmKind.WELDED));
        assertThat(bell.said()).containsExactly("c/welded a/arrest b/cooked");
    }
}
