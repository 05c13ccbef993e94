package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.alarm.AlarmKind;
import org.junit.jupiter.api.Test;

/** What becomes of a finding: what ends it, and what it still withholds. */
class FindingTest {

    private static final Finding VETO = Finding.veto("dry", "no water", Power.HEAT, Power.CUT_OUT);
    private static final Finding TRIP = Finding.trip("welded", "it warms", Power.HEAT);

    @Test
    void aDoubtStaysTrueOfTheBatchAndALatchWaitsForAPerson() {
        assertThat(VETO.clears()).isEqualTo(Finding.Clears.CONDITION);
        assertThat(VETO.doubting("too warm").clears()).isEqualTo(Finding.Clears.BATCH_ENDS);
        assertThat(VETO.doubting("too warm").doubt()).contains("too warm");
        assertThat(TRIP.doubting("too warm").clears()).isEqualTo(Finding.Clears.ACKNOWLEDGED);
    }

    @Test
    void onlyItsLatchIsLeft() {
        assertThat(TRIP.mended()).isFalse();
        assertThat(TRIP.alarm(AlarmKind.WELDED).latchOnly().mended()).isTrue();
        assertThat(TRIP.alarm(AlarmKind.WELDED).latchOnly().alarm()).contains(AlarmKind.WELDED);
        assertThat(TRIP.latchOnly().denies()).containsExactly(Power.HEAT);
    }

    @Test
    void whatIsJustBackWithholdsNothing() {
        Finding f = VETO.alarm(AlarmKind.DRY).doubting("x").justBack();
        assertThat(f.denies()).isEmpty();
        assertThat(f.doubt()).isEmpty();
        assertThat(f.nearly()).isTrue();
        assertThat(f.alarm()).contains(AlarmKind.DRY);
    }

    @Test
    void untilWhenItStandsIsToldInWords() {
        assertThat(Finding.Clears.CONDITION.words()).isEqualTo("its cause is gone");
        assertThat(Finding.Clears.ACKNOWLEDGED.words()).contains("acknowledged the alarm");
        assertThat(Finding.Clears.BATCH_ENDS.words()).isEqualTo("the batch ends");
    }
}
