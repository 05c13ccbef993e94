package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.AirTrack;
import org.conetender.core.judge.Breath;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** When air returns, fails or stands against a shut valve, to the millisecond. */
class AirLimitsTest {

    private final Shown shown = new Shown();

    private static List<AlarmKind> alarms(Guard g, View v) {
        return g.look(v).stream().flatMap(f -> f.alarm().stream()).toList();
    }

    private View settling() {
        Story s = shown.story(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE).seconds(30);
        return shown.view();
    }

    private View drawing() {
        Story s = shown.story();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE).seconds(30);
        s.does(Step.DRAWING).seconds(10);
        return shown.view();
    }

    /** So long after the air went off: the settled one, and another while a person draws. */
    private static View capped(View v, long settledMs, long drawingMs) {
        return Shown.caps(v, new View.Caps(settledMs, drawingMs, 240_000));
    }

    @Test
    void itReturnsALeaseBeforeTheCapOfItsStage() {
        View v = settling();
        long due = v.airOffForMs() + View.LEASE_MS;
        assertThat(v.airOffForMs()).isBetween(30_000L, 40_000L);
        assertThat(alarms(new Suffocation(), capped(v, due + 1, 1))).isEmpty();
        assertThat(alarms(new Suffocation(), capped(v, due, 9_999_999))).containsExactly(AlarmKind.AIR_BACK);
        View d = drawing();
        long drawn = d.airOffForMs() + View.LEASE_MS;
        assertThat(alarms(new Suffocation(), capped(d, 1, drawn + 1))).isEmpty();
        assertThat(alarms(new Suffocation(), capped(d, 9_999_999, drawn)))
                .containsExactly(AlarmKind.AIR_BACK);
    }

    @Test
    void itIsAnnouncedTwoMinutesAndWhatTheCapMayFallBefore() {
        View v = settling();
        long due = v.airOffForMs() + View.LEASE_MS + View.NOTICE_MS;
        assertThat(View.NOTICE_MS).isEqualTo(120_000 + 15_000);
        assertThat(alarms(new ShutValve(), capped(v, due + 1, 1))).isEmpty();
        assertThat(alarms(new ShutValve(), capped(v, due, 1))).containsExactly(AlarmKind.AIR_DUE);
        assertThat(alarms(new AirWhileDrawing(), capped(v, 1, 1))).as("nobody draws").isEmpty();
        View d = drawing();
        long drawn = d.airOffForMs() + View.LEASE_MS + View.NOTICE_MS;
        assertThat(alarms(new AirWhileDrawing(), capped(d, 1, drawn + 1))).isEmpty();
        assertThat(alarms(new AirWhileDrawing(), capped(d, 1, drawn))).containsExactly(AlarmKind.AIR_DUE);
        assertThat(alarms(new ShutValve(), capped(d, 1, 1))).as("its valve is open").isEmpty();
    }

    @Test
    void afterARestartTheAirIsBackAtOnce() {
        Story s = shown.story();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE).seconds(5);
        assertThat(alarms(new Suffocation(), shown.view())).isEmpty();
        s.restart("boot-1", 1_000).tick();
        assertThat(s.told("air-back")).isEqualTo(1);
        assertThat(s.on("a.air-pause")).isFalse();
    }

    private static AirTrack track(long onMs, long unprovenMs, long withoutMs) {
        return new AirTrack(0, onMs, unprovenMs, 0, AirTrack.Proof.UNVERIFIED, new Breath(0, withoutMs, 0));
    }

    @Test
    void aPumpMayRunAgainstAShutValveForAMinute() {
        shown.story(Fitting.SIPHONING).does(Step.STARTED, Step.VALVE_SHUT).minutes(3);
        View v = shown.view();
        assertThat(alarms(new ShutValve(), Shown.air(v, track(59_999, 0, 0)))).isEmpty();
        assertThat(alarms(new ShutValve(), Shown.air(v, track(60_000, 0, 0))))
                .containsExactly(AlarmKind.AIR_SHUT_IN);
        Shown open = new Shown();
        open.story().does(Step.STARTED).minutes(2);
        assertThat(new ShutValve().look(open.view())).isEmpty();
    }

    @Test
    void theMinuteOfWhoShutsTheValveCountsFromTheReport() {
        shown.story(Fitting.SIPHONING).does(Step.STARTED).minutes(3).does(Step.VALVE_SHUT).seconds(10);
        View v = shown.view();
        long shutForMs = v.valveShutForMs();
        assertThat(shutForMs).isBetween(5_000L, 20_000L);
        View on = Shown.air(v, track(600_000, 0, 0));
        assertThat(alarms(new ShutValve(), Shown.later(on, 59_999 - shutForMs))).isEmpty();
        assertThat(alarms(new ShutValve(), Shown.later(on, 60_000 - shutForMs)))
                .containsExactly(AlarmKind.AIR_SHUT_IN);
    }

    @Test
    void whereNoCystsAreAShutValveHarmsNothing() {
        Story s = shown.story(Fitting.SIPHONING);
        s.ask("a", new Ask.DidFill(2, 25));
        s.does(Step.VALVE_SHUT).minutes(3);
        assertThat(new ShutValve().look(shown.view())).isEmpty();
        assertThat(shown.view().valveShutForMs()).isGreaterThan(Units.MINUTE_MS);
    }

    @Test
    void airThatDoesNotArriveIsMissedByWhatTheConeHolds() {
        Shown empty = new Shown();
        empty.story();
        assertThat(new AirFailed().look(Shown.air(empty.view(), track(9, 1, 0)))).isEmpty();
        shown.story().does(Step.STARTED).minutes(1);
        assertThat(alarms(new AirFailed(), Shown.air(shown.view(), track(9, 1, 0))))
                .containsExactly(AlarmKind.AIR_FAILED);
        assertThat(alarms(new AirFailed(), Shown.air(shown.view(), track(9, 0, 0)))).isEmpty();
        Shown swim = new Shown();
        Story s = swim.story();
        s.does(Step.STARTED, Step.FIRST_SEEN).minutes(1);
        assertThat(alarms(new AirFailed(), Shown.air(swim.view(), track(9, 1, 0))))
                .containsExactly(AlarmKind.AIR_FAILED_ANIMALS);
        s.does(Step.VALVE_SHUT).seconds(2);
        long toldMs = AlarmKind.AIR_FAILED_ANIMALS.onDelayMs() + swim.view().valveShutForMs();
        assertThat(new AirFailed().look(Shown.air(swim.view(), track(9_000, toldMs, 0))))
                .as("what stands is kept up until the shut valve is told").singleElement()
                .matches(Finding::nearly);
        assertThat(new AirFailed().look(Shown.air(swim.view(), track(9_000, toldMs - 1, 0))))
                .as("what nobody was told when the valve was shut").isEmpty();
        s.minutes(1);
        assertThat(alarms(new AirFailed(), Shown.air(swim.view(), track(69_000, 1, 0))))
                .as("the shut valve is another's affair").isEmpty();
    }

    @Test
    void naupliiAreInDoubtTwoMinutesBeyondTheCapOfDrawing() {
        Story s = shown.story();
        s.does(Step.STARTED, Step.FIRST_SEEN).minutes(1);
        View v = capped(shown.view(), 1, 600_000);
        assertThat(new AirFailed().look(Shown.air(v, track(9, 0, 720_000)))).isEmpty();
        assertThat(new AirFailed().look(Shown.air(v, track(9, 0, 720_001)))).singleElement().satisfies(f -> {
            assertThat(f.doubt()).contains(
                    "no air was seen to arrive for more than 12 min with nauplii in the water");
            assertThat(f.alarm()).contains(AlarmKind.DOUBTFUL);
        });
        Shown cysts = new Shown();
        cysts.story().does(Step.STARTED).minutes(1);
        assertThat(new AirFailed().look(Shown.air(cysts.view(), track(9, 0, 9_999_999)))).isEmpty();
    }
}
