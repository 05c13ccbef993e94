package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Change;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Water;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** What is allowed in water that may be gone, was touched, or is not known. */
class WaterLimitsTest {

    private static final Belief SILENT = new Belief.Untrusted("silent");

    private final Shown shown = new Shown();

    private static List<AlarmKind> alarms(Guard g, View v) {
        return g.look(v).stream().flatMap(f -> f.alarm().stream()).toList();
    }

    private View after(Fitting fitting, Step... steps) {
        shown.story(fitting).does(steps).minutes(5);
        return shown.view();
    }

    @Test
    void aContactIsBelievedAgainstAReport() {
        View v = after(Fitting.LEVEL, Step.STARTED);
        assertThat(new DryHeater().look(Shown.level(v, Level.CLOSED))).isEmpty();
        for (Level l : new Level[] {Level.OPEN, Level.UNKNOWN}) {
            assertThat(new DryHeater().look(Shown.level(v, l))).singleElement().satisfies(f -> {
                assertThat(f.alarm()).contains(AlarmKind.DRY);
                assertThat(f.denies()).containsExactly(Power.HEAT, Power.CUT_OUT);
            });
        }
    }

    @Test
    void whoseHandsAreInTheWaterIsNotToldThatItIsLow() {
        View v = after(Fitting.LEVEL, Step.STARTED, Step.HANDS_IN);
        assertThat(new DryHeater().look(Shown.level(v, Level.OPEN))).singleElement()
                .satisfies(f -> assertThat(f.alarm()).isEmpty());
    }

    @Test
    void aContactThatSaysWetIsDoubtedAfterTheDrainingOnly() {
        View drained = after(Fitting.LEVEL, Step.STARTED, Step.DRAINED);
        assertThat(alarms(new DryHeater(), Shown.level(drained, Level.CLOSED)))
                .containsExactly(AlarmKind.WET_CONTACT);
        assertThat(alarms(new DryHeater(), Shown.level(drained, Level.OPEN))).isEmpty();
        Shown clean = new Shown();
        clean.story(Fitting.LEVEL).minutes(1);
        assertThat(alarms(new DryHeater(), Shown.level(clean.view(), Level.CLOSED))).isEmpty();
    }

    @Test
    void noHeatWhereNoWaterWasReportedOrTheBatchWasGivenUp() {
        View v = after(Fitting.ROOM_PROBE, Step.STARTED, Step.ABANDONED);
        assertThat(new DryHeater().look(v)).singleElement()
                .satisfies(f -> assertThat(f.denies()).containsExactly(Power.HEAT, Power.CUT_OUT));
        assertThat(new DryHeater().look(Shown.level(v, Level.OPEN))).as("it has no contact").hasSize(1);
        Shown filled = new Shown();
        filled.story().does(Step.STARTED);
        assertThat(new DryHeater().look(filled.view())).isEmpty();
    }

    @Test
    void handsCountForAQuarterOfAnHour() {
        View v = after(Fitting.ROOM_PROBE, Step.STARTED, Step.HANDS_IN);
        long agoMs = v.since(v.batch().marks().handsIn().orElseThrow()).leastMs();
        View last = Shown.later(v, 15 * Units.MINUTE_MS - agoMs - 1);
        assertThat(new Handled().look(last)).singleElement().satisfies(f -> assertThat(f.denies())
                .containsExactly(Power.HEAT, Power.CUT_OUT, Power.LAMPS, Power.AIR_OFF));
        assertThat(last.handled()).isTrue();
        View over = Shown.later(v, 15 * Units.MINUTE_MS - agoMs);
        assertThat(new Handled().look(over)).isEmpty();
        assertThat(over.handled()).isFalse();
    }

    @Test
    void aTopUpCountsAsLongButWithholdsHeatAlone() {
        View v = after(Fitting.ROOM_PROBE, Step.STARTED, Step.TOPPED_UP);
        long agoMs = v.since(v.batch().marks().toppedUp().orElseThrow()).leastMs();
        View last = Shown.later(v, 15 * Units.MINUTE_MS - agoMs - 1);
        assertThat(new Handled().look(last)).singleElement().satisfies(f -> assertThat(f.denies())
                .containsExactly(Power.HEAT, Power.CUT_OUT));
        assertThat(last.handled()).isTrue();
        assertThat(new Handled().look(Shown.later(v, 15 * Units.MINUTE_MS - agoMs))).isEmpty();
        assertThat(Shown.later(v, 15 * Units.MINUTE_MS - agoMs).handled()).isFalse();
    }

    @Test
    void aFillingIsWaitedForThreeMinutes() {
        Story s = shown.story();
        s.ask("a", new Ask.DidFill(2, 25));
        View v = shown.view();
        long agoMs = v.since(v.batch().fill().orElseThrow().at()).leastMs();
        assertThat(Shown.later(v, 3 * Units.MINUTE_MS - agoMs - 1).handled()).isTrue();
        assertThat(Shown.later(v, 3 * Units.MINUTE_MS - agoMs).handled()).isFalse();
        assertThat(new Handled().look(v)).as("that withholds nothing").isEmpty();
    }

    @Test
    void aProbeThatIsNotBelievedIsToldWhereWaterIsAndNobodysHands() {
        View v = after(Fitting.ROOM_PROBE, Step.STARTED);
        assertThat(new LyingProbe().look(v)).isEmpty();
        assertThat(new LyingProbe().look(Shown.water(v, SILENT))).singleElement().satisfies(f -> {
            assertThat(f.alarm()).contains(AlarmKind.PROBE);
            assertThat(f.what()).isEqualTo("its temperature is not known: silent");
            assertThat(f.denies()).containsExactly(Power.HEAT, Power.CUT_OUT);
        });
        assertThat(new LyingProbe().causeGone(v)).isTrue();
        assertThat(new LyingProbe().causeGone(Shown.water(v, SILENT))).isFalse();
        Shown empty = new Shown();
        empty.story();
        assertThat(new LyingProbe().look(Shown.water(empty.view(), SILENT))).singleElement()
                .satisfies(f -> assertThat(f.alarm()).isEmpty());
        Shown hands = new Shown();
        hands.story().does(Step.STARTED, Step.HANDS_IN);
        assertThat(new LyingProbe().look(Shown.water(hands.view(), SILENT))).singleElement()
                .satisfies(f -> assertThat(f.alarm()).isEmpty());
    }

    @Test
    void oneOfTwoProbesThatIsGoneIsToldAndWithholdsNothing() {
        Story s = shown.story(Fitting.TWO_PROBES);
        s.senses.probe("a-second", new Reading.Value(27));
        s.does(Step.STARTED).minutes(5);
        assertThat(new LyingProbe().look(shown.view())).as("both serve").isEmpty();
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(5);
        View v = shown.view();
        assertThat(v.water().known()).isTrue();
        assertThat(new LyingProbe().look(v)).singleElement().satisfies(f -> {
            assertThat(f.what()).isEqualTo("its probe a-water has gone silent; the other one serves");
            assertThat(f.alarm()).contains(AlarmKind.ONE_PROBE);
            assertThat(f.denies()).isEmpty();
        });
        assertThat(new LyingProbe().look(Shown.water(v, SILENT))).as("then neither serves").singleElement()
                .satisfies(f -> assertThat(f.alarm()).contains(AlarmKind.PROBE));
        assertThat(new LyingProbe().look(Shown.noting(v, "a", new Change.Told(new Ask.Did(Step.HANDS_IN)))))
                .as("whose hands are in it moves them").isEmpty();
        assertThat(new LyingProbe().look(Shown.noting(v, "a", new Change.Told(new Ask.Did(Step.DRAINED)))))
                .isEmpty();
    }

    @Test
    void theOnlyProbeHasNoOther() {
        Story s = shown.story();
        s.does(Step.STARTED).minutes(5);
        s.senses.probe("a-water", new Reading.Absent());
        s.tick();
        assertThat(shown.view().water().known()).as("for a moment yet").isTrue();
        assertThat(new LyingProbe().look(shown.view())).isEmpty();
    }

    @Test
    void theThirdDepartureWithinAnHourLocksTheHeat() {
        View v = after(Fitting.ROOM_PROBE, Step.STARTED);
        assertThat(new LyingProbe().look(departed(v, 2))).isEmpty();
        assertThat(new LyingProbe().look(departed(v, 3))).singleElement().satisfies(f -> {
            assertThat(f.alarm()).contains(AlarmKind.PROBE_UNSTEADY);
            assertThat(f.clears()).isEqualTo(Finding.Clears.ACKNOWLEDGED);
        });
    }

    private static View departed(View v, int times) {
        ConeJudgement j = v.judged();
        Water w = j.water();
        return Shown.with(v, new ConeJudgement(new Water(w.lastC(), w.lastAtMs(), w.trail(), w.doubt(),
                Collections.nCopies(times, 1L), w.belief(), w.voices()), j.roomC(), j.level(), j.heat(),
                j.thermal(), j.air(), j.motion(), j.tried()));
    }
}
