package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Belief;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** The limits of {@link CookedBatch}, to the hundredth of a degree: guard 31, arrest 33, loss 38 °C. */
class CookedLimitsTest {

    private final Shown shown = new Shown();
    private final CookedBatch guard = new CookedBatch();

    private View hydrating() {
        shown.story().does(Step.STARTED);
        return shown.view();
    }

    private List<AlarmKind> alarms(View v) {
        return guard.look(v).stream().flatMap(f -> f.alarm().stream()).toList();
    }

    private static View heating(View v) {
        return Shown.wants(v, new View.Wants(true, false, true));
    }

    @Test
    void eachLimitCountsFromItsOwnDegreeOn() {
        View v = hydrating();
        assertThat(guard.look(Shown.water(v, 30.69))).isEmpty();
        assertThat(alarms(Shown.water(v, 31))).containsExactly(AlarmKind.ROOM_TOO_WARM);
        assertThat(alarms(Shown.water(v, 32.69))).containsExactly(AlarmKind.ROOM_TOO_WARM);
        assertThat(alarms(Shown.water(v, 33))).containsExactly(AlarmKind.ROOM_TOO_WARM, AlarmKind.ARREST);
        assertThat(alarms(Shown.water(v, 38))).containsExactly(AlarmKind.ROOM_TOO_WARM, AlarmKind.ARREST,
                AlarmKind.COOKED);
        assertThat(guard.look(Shown.water(v, 37.99))).allMatch(f -> f.doubt().isEmpty());
        assertThat(guard.look(Shown.water(v, 38))).anyMatch(f -> f.doubt().isPresent());
        assertThat(alarms(Shown.water(v, new Belief.Untrusted("silent")))).as("nobody knows").isEmpty();
    }

    @Test
    void justBelowALimitItOnlyKeepsUpWhatStands() {
        View v = hydrating();
        for (double limitC : new double[] {31, 33, 38}) {
            AlarmKind kind = limitC == 31 ? AlarmKind.ROOM_TOO_WARM : limitC == 33 ? AlarmKind.ARREST
                    : AlarmKind.COOKED;
            for (double c : new double[] {limitC - 0.01, limitC - CookedBatch.BAND_K}) {
                assertThat(guard.look(Shown.water(v, c)).stream().filter(Finding::nearly)).as(c + " °C")
                        .singleElement().satisfies(f -> {
                            assertThat(f.alarm()).contains(kind);
                            assertThat(f.denies()).isEmpty();
                        });
            }
            assertThat(guard.look(Shown.water(v, limitC - CookedBatch.BAND_K - 0.01)).stream()
                    .noneMatch(Finding::nearly)).isTrue();
            assertThat(guard.look(Shown.water(v, limitC)).stream().noneMatch(Finding::nearly)).isTrue();
        }
    }

    @Test
    void whatIsEmptyOrHoldsNoCystsIsNotToldOf() {
        shown.story();
        View empty = shown.view();
        assertThat(guard.look(Shown.water(empty, 39))).singleElement().satisfies(f -> {
            assertThat(f.alarm()).isEmpty();
            assertThat(f.denies()).contains(Power.HEAT, Power.CUT_OUT, Power.LAMPS);
        });
        for (double c : new double[] {30.9, 32.9, 37.9}) {
            assertThat(guard.look(Shown.water(empty, c)).stream().noneMatch(Finding::nearly)).isTrue();
        }
        Shown filled = new Shown();
        filled.story().ask("a", new Ask.DidFill(2, 25));
        assertThat(alarms(Shown.water(filled.view(), 39))).containsExactly(AlarmKind.ROOM_TOO_WARM);
        assertThat(alarms(Shown.water(filled.view(), 30.9))).containsExactly(AlarmKind.ROOM_TOO_WARM);
        assertThat(alarms(Shown.water(filled.view(), 37.9))).containsExactly(AlarmKind.ROOM_TOO_WARM);
    }

    @Test
    void itIsTheHeaterWhereItWasAtWorkOrItsHeatIsOnItsWay() {
        View v = Shown.water(hydrating(), 31.5);
        assertThat(alarms(heating(v))).containsExactly(AlarmKind.OVERHEAT);
        assertThat(guard.look(heating(v))).allMatch(f -> f.clears() == Finding.Clears.ACKNOWLEDGED);
        View warm = Shown.later(v, 10 * Units.MINUTE_MS);
        assertThat(alarms(Shown.heatOff(warm, 2 * Units.MINUTE_MS - 1))).containsExactly(AlarmKind.OVERHEAT);
        assertThat(alarms(Shown.heatOff(warm, 2 * Units.MINUTE_MS)))
                .containsExactly(AlarmKind.ROOM_TOO_WARM);
    }

    /** A process that has just begun does not know when heat was given last. */
    @Test
    void inTheFirstTwoMinutesNobodyKnowsOfHeatBefore() {
        View v = Shown.heatOff(Shown.water(hydrating(), 31.5), 0);
        long sinceMs = v.now().monoMs() - v.scene().begun().monoMs();
        assertThat(alarms(Shown.later(v, 2 * Units.MINUTE_MS - sinceMs)))
                .containsExactly(AlarmKind.ROOM_TOO_WARM);
        assertThat(alarms(Shown.later(v, 2 * Units.MINUTE_MS - sinceMs + 1)))
                .containsExactly(AlarmKind.OVERHEAT);
    }

    @Test
    void itsCauseIsGoneOnceTheWaterIsKnownToBeCoolerByTheDeadband() {
        View v = hydrating();
        assertThat(guard.causeGone(Shown.water(v, 31 - CookedBatch.BAND_K))).isFalse();
        assertThat(guard.causeGone(Shown.water(v, 30.69))).isTrue();
        assertThat(guard.causeGone(Shown.water(v, new Belief.Untrusted("silent")))).isFalse();
    }
}
