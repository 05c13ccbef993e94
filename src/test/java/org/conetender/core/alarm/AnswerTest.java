package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.conetender.core.alarm.Bell.cause;

import org.conetender.core.alarm.Alarms.Cause;
import org.junit.jupiter.api.Test;

/** Who answers has answered what was said to them, and nothing else. */
class AnswerTest {

    private static final Cause DRY = cause("a", AlarmKind.DRY);
    private static final Cause PROBE = cause("a", AlarmKind.PROBE);
    private static final Cause AIR_A = cause("a", AlarmKind.AIR_FAILED_ANIMALS);
    private static final Cause AIR_B = cause("b", AlarmKind.AIR_FAILED_ANIMALS);

    private final Bell bell = new Bell();

    @Test
    void whatWasNamedWithItAndStandsForItselfSinceIsNotAnsweredWithIt() {
        bell.pass(61, DRY, PROBE);
        assertThat(bell.said()).containsExactly("a/dry[a/probe]");
        bell.shelve("a", AlarmKind.DRY, 3_600);
        bell.pass(1, DRY, PROBE);
        bell.acknowledge("a", AlarmKind.DRY);
        assertThat(bell.alarm("a/dry").acknowledged()).isTrue();
        assertThat(bell.alarm("a/probe").acknowledged()).isFalse();
    }

    /** It may pass yet without ever having been one. */
    @Test
    void whatWasNamedBeforeItStoodIsNotAnsweredBeforeItDoes() {
        bell.pass(20, AIR_A);
        bell.pass(15, AIR_A, AIR_B);
        assertThat(bell.said()).containsExactly("a/air-failed-animals[b/air-failed-animals]");
        bell.acknowledge("a", AlarmKind.AIR_FAILED_ANIMALS);
        assertThat(bell.alarm("b/air-failed-animals").acknowledged()).isFalse();
        bell.pass(181, AIR_A, AIR_B);
        assertThat(bell.said()).last().isEqualTo("b/air-failed-animals");
    }

    @Test
    void whatCameAfterTheMessageIsNotAnsweredWithIt() {
        bell.pass(61, DRY);
        bell.pass(61, DRY, PROBE);
        bell.acknowledge("a", AlarmKind.DRY);
        assertThat(bell.alarm("a/probe").follows()).isTrue();
        assertThat(bell.alarm("a/probe").acknowledged()).isFalse();
    }

    /** The lock is released a tick or a write after the answer: that is no reason to call again. */
    @Test
    void whoAnsweredThatItIsOverIsNotCalledOnceMoreBeforeTheLockIsOff() {
        Cause over = new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.ONLY_BY_LATCH);
        bell.pass(1, new Cause("a", AlarmKind.OVERHEAT, "too warm", Alarm.Held.BY_LATCH));
        bell.acknowledge("a", AlarmKind.OVERHEAT);
        bell.pass(60, over);
        assertThat(bell.messages).hasSize(2);
        bell.acknowledge("a", AlarmKind.OVERHEAT);
        bell.pass(120, over);
        assertThat(bell.messages).hasSize(2);
        assertThat(bell.alarm("a/overheat").acknowledged()).isTrue();
    }

    @Test
    void anAnswerSaysWhenAndKeepsWhatItWasTold() {
        bell.pass(100, DRY);
        bell.acknowledge("a", AlarmKind.DRY);
        Alarm.Told told = bell.alarm("a/dry").told();
        assertThat(told.acknowledgedAtMs()).hasValue(100_000);
        assertThat(told.atMs()).isEqualTo(60_000);
        assertThat(told.firstMs()).as("nobody waits for an answer any more").isEmpty();
    }

    @Test
    void whatWasAnsweredStaysSoWhenItIsNamedWithItsCause() {
        bell.pass(1, DRY, cause("a", AlarmKind.NO_EFFECT));
        bell.acknowledge("a", AlarmKind.NO_EFFECT);
        bell.pass(60, DRY, cause("a", AlarmKind.NO_EFFECT));
        assertThat(bell.said()).containsExactly("a/no-effect", "a/dry[a/no-effect]");
        assertThat(bell.alarm("a/no-effect").acknowledged()).isTrue();
        assertThat(bell.alarm("a/no-effect").told().times()).isEqualTo(1);
    }

    @Test
    void whatWasAnsweredStaysSoWhenItStandsAlone() {
        bell.pass(61, DRY, PROBE);
        bell.acknowledge("a", AlarmKind.DRY);
        bell.pass(3_600, PROBE);
        assertThat(bell.alarm("a/probe").follows()).isFalse();
        assertThat(bell.said()).containsExactly("a/dry[a/probe]");
    }

    /** Want of air is silenced for ten minutes, whether it was named or had its own message. */
    @Test
    void whatMayBeQuietForMinutesOnlyWaitsForAnotherAnswerWhereItIsNamed() {
        bell.pass(31, AIR_A, AIR_B);
        bell.acknowledge("a", AlarmKind.AIR_FAILED_ANIMALS);
        bell.pass(602, AIR_A, AIR_B);
        assertThat(bell.messages).hasSize(2);
        assertThat(bell.alarm("b/air-failed-animals").acknowledged()).isFalse();
        assertThat(bell.alarm("b/air-failed-animals").told().way()).isEqualTo(Alarm.Way.NAMED);
    }

    /** Nobody answers the first cause, whose message comes every hour by then. */
    @Test
    void whoAnswersAWantOfAirThatWasNamedSilencesItForTenMinutesOnly() {
        bell.pass(4_000, AIR_A, AIR_B);
        bell.acknowledge("b", AlarmKind.AIR_FAILED_ANIMALS);
        bell.pass(595, AIR_A, AIR_B);
        assertThat(bell.alarm("b/air-failed-animals").acknowledged()).isTrue();
        bell.pass(10, AIR_A, AIR_B);
        assertThat(bell.alarm("b/air-failed-animals").acknowledged()).isFalse();
    }

    @Test
    void whatIsOverBreaksNoQuiet() {
        bell.pass(31, AIR_A);
        bell.acknowledge("a", AlarmKind.AIR_FAILED_ANIMALS);
        bell.pass(580, AIR_A);
        bell.pass(59);
        assertThat(bell.alarms.raised()).hasSize(1);
        assertThat(bell.messages).hasSize(1);
    }

    private static Cause locked(String cone, AlarmKind k) {
        return new Cause(cone, k, "locked off", Alarm.Held.ONLY_BY_LATCH);
    }

    /** The heaters' socket strip is dead: whoever acknowledges the first lock has opened that one only. */
    @Test
    void aLockThatWasNamedWithAnotherIsCalledOfByItselfOnceThatIsAcknowledged() {
        bell.pass(600, locked("a", AlarmKind.NO_EFFECT));
        bell.pass(301, locked("a", AlarmKind.NO_EFFECT), locked("b", AlarmKind.NO_EFFECT));
        assertThat(bell.said()).last().isEqualTo("a/no-effect[b/no-effect]");
        bell.acknowledge("a", AlarmKind.NO_EFFECT);
        assertThat(bell.alarm("b/no-effect").acknowledged()).isFalse();
        bell.pass(900, locked("b", AlarmKind.NO_EFFECT));
        assertThat(bell.messages).as("the answer has named it").hasSize(2);
        bell.pass(1, locked("b", AlarmKind.NO_EFFECT));
        assertThat(bell.said()).last().isEqualTo("b/no-effect");
        assertThat(bell.alarm("b/no-effect").shown()).as("and it lies there for whoever looks").isTrue();
        bell.pass(3_600, locked("b", AlarmKind.NO_EFFECT));
        assertThat(bell.messages).as("nor is it let alone after that").hasSize(4);
    }

    /** Its cause lasts, so that it stands on, is never told again and never names the other one again. */
    @Test
    void aLockIsCalledOfByItselfThoughWhatNamedItStandsAcknowledged() {
        Cause b = locked("b", AlarmKind.NO_EFFECT);
        Cause crossed = new Cause("a", AlarmKind.WRONG_CONE, "crossed", Alarm.Held.BY_LATCH);
        bell.pass(1, crossed, b);
        assertThat(bell.said()).containsExactly("a/wrong-cone[b/no-effect]");
        bell.acknowledge("a", AlarmKind.WRONG_CONE);
        bell.pass(900, crossed, b);
        assertThat(bell.messages).as("the answer has named it").hasSize(1);
        bell.pass(1, crossed, b);
        assertThat(bell.said()).last().isEqualTo("b/no-effect");
    }

    @Test
    void aLockOfTheSameConeIsCalledOfThoughItsProbeIsSilentOrBack() {
        for (boolean back : new boolean[] {false, true}) {
            Bell one = new Bell();
            one.pass(1, locked("a", AlarmKind.NO_EFFECT));
            one.pass(62, locked("a", AlarmKind.NO_EFFECT), PROBE);
            assertThat(one.said()).last().isEqualTo("a/probe[a/no-effect]");
            one.acknowledge("a", AlarmKind.PROBE);
            if (back) {
                one.pass(901, locked("a", AlarmKind.NO_EFFECT));
            } else {
                one.pass(901, locked("a", AlarmKind.NO_EFFECT), PROBE);
            }
            assertThat(one.said()).as("its probe is back: " + back).last().isEqualTo("a/no-effect");
        }
    }

    @Test
    void whoAcknowledgesBothIsCalledOfNeither() {
        Cause a = locked("a", AlarmKind.NO_EFFECT);
        bell.pass(1, a, locked("b", AlarmKind.NO_EFFECT));
        bell.acknowledge("a", AlarmKind.NO_EFFECT);
        bell.pass(60, locked("b", AlarmKind.NO_EFFECT));
        bell.acknowledge("b", AlarmKind.NO_EFFECT);
        bell.pass(7_200);
        assertThat(bell.messages).hasSize(1);
    }

    /** A probe that lies in the air comes and goes, beside a low level that was acknowledged from afar. */
    @Test
    void aLockWhoseCauseComesAndGoesIsNotCalledOfAtEachReturn() {
        Cause dry = cause("a", AlarmKind.DRY);
        bell.pass(61, dry);
        bell.acknowledge("a", AlarmKind.DRY);
        bell.pass(300, dry);
        for (int i = 0; i < 6; i++) {
            bell.pass(90, dry, new Cause("a", AlarmKind.PROBE_UNSTEADY, "unsteady", Alarm.Held.BY_LATCH));
            bell.pass(90, dry, locked("a", AlarmKind.PROBE_UNSTEADY));
        }
        assertThat(bell.said()).as("at once, and after a quarter of an hour")
                .containsExactly("a/dry", "a/probe-unsteady", "a/probe-unsteady");
    }

    /** By way of what nobody was told of yet. */
    @Test
    void ofAChainFromWhatIsAcknowledgedTheLockIsCalledOfAllTheSame() {
        Cause late = cause("", AlarmKind.LATE);
        bell.pass(11, late);
        bell.pass(65, late, PROBE);
        bell.pass(1, late, PROBE, locked("a", AlarmKind.NO_EFFECT));
        assertThat(bell.said()).containsExactly("/late");
        bell.acknowledge("", AlarmKind.LATE);
        bell.pass(900, late, PROBE, locked("a", AlarmKind.NO_EFFECT));
        assertThat(bell.alarm("a/probe").aside().follows()).contains("/late");
        assertThat(bell.said()).last().isEqualTo("a/no-effect");
    }

    /** Who saw on Monday that the computer is late has not seen that a plug fell out on Tuesday. */
    @Test
    void whatComesLongAfterItsCauseWasAcknowledgedIsCalledOfByItself() {
        Cause late = cause("", AlarmKind.LATE);
        bell.pass(11, late);
        bell.acknowledge("", AlarmKind.LATE);
        bell.pass(3_600, late);
        bell.pass(61, late, cause("c", AlarmKind.PROBE));
        assertThat(bell.said()).containsExactly("/late", "c/probe");
        assertThat(bell.alarm("c/probe").follows()).isFalse();
        bell.pass(601, late, cause("c", AlarmKind.PROBE), cause("", AlarmKind.RECORD));
        assertThat(bell.said()).last().isEqualTo("/record");
    }

    @Test
    void anotherConesTroubleIsNotThatOfTheCrossingThatIsBeingMended() {
        Cause crossed = new Cause("a", AlarmKind.WRONG_CONE, "crossed", Alarm.Held.BY_LATCH);
        bell.pass(10, crossed);
        bell.acknowledge("a", AlarmKind.WRONG_CONE);
        bell.pass(121, crossed);
        bell.pass(1, crossed, new Cause("c", AlarmKind.NO_EFFECT, "cold", Alarm.Held.BY_LATCH));
        assertThat(bell.said()).containsExactly("a/wrong-cone", "c/no-effect");
    }

    /** All probes fall silent at once: that is one incident, whatever else was acknowledged before. */
    @Test
    void whatComesTogetherLongAfterThatIsOneMessage() {
        Cause late = cause("", AlarmKind.LATE);
        bell.pass(11, late, cause("a", AlarmKind.DRY));
        bell.pass(60, late, cause("a", AlarmKind.DRY));
        bell.acknowledge("", AlarmKind.LATE);
        bell.acknowledge("a", AlarmKind.DRY);
        bell.pass(3_600, late, cause("a", AlarmKind.DRY));
        bell.pass(61, late, cause("a", AlarmKind.DRY), PROBE, cause("b", AlarmKind.PROBE),
                cause("c", AlarmKind.PROBE));
        assertThat(bell.said()).last().isEqualTo("b/probe[c/probe]");
    }

    /** Two minutes, and not a second more. */
    @Test
    void whatComesSoonAfterTheAnswerBelongsToIt() {
        Cause late = cause("", AlarmKind.LATE);
        bell.pass(11, late);
        bell.acknowledge("", AlarmKind.LATE);
        bell.pass(120, late);
        bell.pass(600, late, cause("b", AlarmKind.PROBE));
        assertThat(bell.said()).containsExactly("/late");
        assertThat(bell.alarm("b/probe").aside().follows()).contains("/late");
        Bell other = new Bell();
        other.pass(11, late);
        other.acknowledge("", AlarmKind.LATE);
        other.pass(121, late);
        other.pass(600, late, cause("b", AlarmKind.PROBE));
        assertThat(other.said()).containsExactly("/late", "b/probe");
    }

    /** A computer that is late loses its probes again and again. */
    @Test
    void whatWasNamedAndComesAndGoesWithItsCauseCallsNobody() {
        Cause late = cause("", AlarmKind.LATE);
        bell.pass(62, late, cause("b", AlarmKind.PROBE));
        bell.pass(900, late, cause("b", AlarmKind.PROBE));
        assertThat(bell.said()).last().isEqualTo("/late[b/probe]");
        bell.acknowledge("", AlarmKind.LATE);
        int told = bell.messages.size();
        for (int i = 0; i < 20; i++) {
            bell.pass(300, late);
            bell.pass(300, late, cause("b", AlarmKind.PROBE));
        }
        assertThat(bell.messages).hasSize(told);
        assertThat(bell.alarm("b/probe").aside().follows()).contains("/late");
    }
}
