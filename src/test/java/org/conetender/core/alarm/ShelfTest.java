package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.conetender.core.alarm.Bell.cause;

import java.util.List;
import java.util.Map;
import org.conetender.core.alarm.Alarms.Cause;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** On the shelf for a time: listed, not told, and back by itself. */
class ShelfTest {

    private static final Cause DRY = cause("a", AlarmKind.DRY);
    private static final long HOUR_S = 3_600;

    private final Bell bell = new Bell();

    @Test
    void whatIsOnTheShelfIsListedAndNotTold() {
        bell.shelve("a", AlarmKind.DRY, 2 * HOUR_S);
        bell.pass(HOUR_S, DRY, cause("b", AlarmKind.DRY));
        assertThat(bell.alarm("a/dry").shelved()).isTrue();
        assertThat(bell.alarm("a/dry").active()).isTrue();
        assertThat(bell.alarms.raised()).hasSize(2);
        assertThat(bell.said()).allMatch(s -> s.equals("b/dry")).isNotEmpty();
    }

    @Test
    void itReturnsByItselfAndIsToldIfItStillStands() {
        bell.shelve("a", AlarmKind.DRY, 2 * HOUR_S);
        bell.pass(2 * HOUR_S, DRY);
        assertThat(bell.messages).isEmpty();
        bell.pass(1, DRY);
        assertThat(bell.said()).containsExactly("a/dry");
        assertThat(bell.alarm("a/dry").shelved()).isFalse();
    }

    @Test
    void whatWasToldBeforeIsToldAtOnceWhenItReturns() {
        bell.pass(61 + 5 * HOUR_S, DRY);
        int before = bell.messages.size();
        bell.shelve("a", AlarmKind.DRY, 600);
        bell.pass(600, DRY);
        assertThat(bell.messages).hasSize(before);
        bell.pass(1, DRY);
        assertThat(bell.messages).hasSize(before + 1);
    }

    @Test
    void whatIsOverWhenItReturnsIsNotTold() {
        bell.shelve("a", AlarmKind.DRY, 600);
        bell.pass(500, DRY);
        bell.pass(300);
        assertThat(bell.messages).isEmpty();
        assertThat(bell.alarms.raised()).isEmpty();
    }

    @Test
    void whatHasJustPassedWhenItReturnsIsNotToldEither() {
        bell.shelve("a", AlarmKind.DRY, 600);
        bell.pass(570, DRY);
        bell.pass(59);
        assertThat(bell.alarm("a/dry").shelved()).isFalse();
        assertThat(bell.messages).isEmpty();
    }

    @Test
    void whatWasAcknowledgedStaysQuietWhenItReturns() {
        bell.pass(61, DRY);
        bell.acknowledge("a", AlarmKind.DRY);
        bell.shelve("a", AlarmKind.DRY, 600);
        bell.pass(HOUR_S, DRY);
        assertThat(bell.messages).hasSize(1);
    }

    @Test
    void nothingHidesBehindWhatIsOnTheShelf() {
        bell.shelve("a", AlarmKind.DRY, HOUR_S);
        bell.pass(HOUR_S / 2, DRY, cause("a", AlarmKind.PROBE));
        assertThat(bell.said()).contains("a/probe");
        assertThat(bell.alarm("a/probe").follows()).isFalse();
    }

    /** Whoever keeps the list may be late in taking it down. */
    @Test
    void itComesBackAtItsTimeAlsoWhereItStandsInTheListYet() {
        bell.pass(61, DRY);
        bell.alarms = bell.alarms.shelving(Map.of("a/dry", 600_000L));
        assertThat(after(599_999).shelved()).isTrue();
        assertThat(after(600_000).shelved()).isFalse();
    }

    private Alarm after(long ms) {
        bell.alarms = bell.alarms.after(List.of(DRY), new Moment("boot-1", ms, 0, true)).next();
        return bell.alarm("a/dry");
    }

    @Test
    void itIsStillKnownWhenItWasTold() {
        bell.pass(61, DRY);
        bell.shelve("a", AlarmKind.DRY, 600);
        bell.pass(10, DRY);
        assertThat(bell.alarm("a/dry").told().times()).isEqualTo(1);
        assertThat(bell.alarm("a/dry").told().atMs()).isEqualTo(60_000);
        assertThat(bell.alarm("a/dry").shown()).isFalse();
    }

    @Test
    void theSameShelvesChangeNothing() {
        Alarms some = Alarms.NONE.shelving(Map.of("a/dry", 600_000L));
        assertThat(some.shelving(Map.of("a/dry", 600_000L))).isSameAs(some);
        assertThat(some.shelving(Map.of())).isEqualTo(Alarms.NONE);
    }
}
