package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.conetender.core.alarm.Bell.cause;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.alarm.Alarms.Cause;
import org.junit.jupiter.api.Test;

/** What is told by itself, what together, and when; a storm of it is {@link StormTest}'s. */
class CallsTest {

    private final Bell bell = new Bell();

    @Test
    void twoIncidentsAreTwoMessages() {
        bell.pass(61, cause("a", AlarmKind.DRY), cause("b", AlarmKind.WELDED));
        assertThat(bell.said()).containsExactly("b/welded", "a/dry");
        assertThat(bell.messages).noneMatch(Message::many);
        assertThat(bell.alarm("a/dry").shown()).isTrue();
    }

    @Test
    void whatComesWithinAMinuteOfAMessageWaitsForTheRestOfIt() {
        bell.pass(10, cause("a", AlarmKind.WELDED));
        bell.pass(60, cause("a", AlarmKind.WELDED), cause("b", AlarmKind.WELDED),
                cause("c", AlarmKind.SWITCH_STUCK));
        assertThat(bell.said()).containsExactly("a/welded", "b/welded c/switch-stuck");
        assertThat(bell.at).containsExactly(0L, 60L);
        assertThat(bell.alarm("b/welded").shown()).as("it stands among others").isFalse();
        assertThat(bell.alarms.calls().many()).isPresent();
    }

    @Test
    void theSentenceForManyStandsUntilTheLastOfThemHasEnded() {
        List<Cause> three = List.of(cause("a", AlarmKind.WELDED), cause("b", AlarmKind.WELDED),
                cause("c", AlarmKind.WELDED));
        bell.pass(1, three);
        assertThat(bell.messages).singleElement().satisfies(m -> assertThat(m.many()).isTrue());
        bell.pass(120, three.subList(0, 1));
        assertThat(bell.alarms.calls().many()).isPresent();
        bell.pass(61);
        assertThat(bell.alarms.calls().many()).isEmpty();
    }

    @Test
    void whatStillWaitsForAnAnswerIsNamedAgainWithWhatIsNew() {
        List<Cause> three = List.of(cause("a", AlarmKind.WELDED), cause("b", AlarmKind.WELDED),
                cause("c", AlarmKind.WELDED));
        bell.pass(1, three);
        bell.acknowledge("b", AlarmKind.WELDED);
        List<Cause> more = new ArrayList<>(three);
        more.addAll(List.of(cause("a", AlarmKind.SWITCH_STUCK), cause("b", AlarmKind.SWITCH_STUCK)));
        bell.pass(61, more);
        assertThat(bell.said()).last().isEqualTo("a/welded c/welded a/switch-stuck b/switch-stuck");
        assertThat(bell.alarm("a/welded").told().times()).as("not told again for its own sake").isEqualTo(1);
    }

    @Test
    void ofTwoInOneSecondTheMoreUrgentIsSaidFirst() {
        bell.pass(1, cause("a", AlarmKind.NO_EFFECT), cause("b", AlarmKind.SWITCH_STUCK));
        assertThat(bell.said()).containsExactly("b/switch-stuck", "a/no-effect");
    }

    @Test
    void whatHasAMessageOfItsOwnSinceNeedsNoSentenceForMany() {
        List<Cause> three = List.of(cause("a", AlarmKind.WELDED), cause("b", AlarmKind.WELDED),
                cause("c", AlarmKind.WELDED));
        bell.pass(1, three);
        bell.pass(899, three.subList(0, 1));
        assertThat(bell.alarms.calls().many()).isPresent();
        bell.pass(1, three.subList(0, 1));
        assertThat(bell.said()).last().isEqualTo("a/welded");
        assertThat(bell.alarms.calls().many()).isEmpty();
    }

    @Test
    void whatIsOnTheShelfOrFollowsIsNotNamedAgainWithWhatIsNew() {
        List<Cause> three = List.of(cause("a", AlarmKind.NO_EFFECT), cause("b", AlarmKind.ARREST),
                cause("c", AlarmKind.ARREST));
        bell.pass(1, three);
        assertThat(bell.said()).containsExactly("b/arrest c/arrest a/no-effect");
        bell.shelve("a", AlarmKind.NO_EFFECT, 600);
        List<Cause> more = new ArrayList<>(three);
        more.addAll(List.of(cause("b", AlarmKind.WELDED), cause("c", AlarmKind.SWITCH_STUCK)));
        bell.pass(61, more);
        assertThat(bell.said()).last().isEqualTo("b/welded[b/arrest] c/switch-stuck[c/arrest]");
    }
}
