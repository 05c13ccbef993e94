package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Change;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Crossing;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.Question;
import org.conetender.core.judge.Watch;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** Whose heater warms a cone: what is allowed while it is asked, and what follows from the answer. */
class AskedTest {

    private final Shown shown = new Shown();

    private View heated(Fitting... fittings) {
        shown.story(fittings).does(Step.STARTED).minutes(2);
        return shown.view();
    }

    private static View asking(View v, Question.Part part) {
        Crossing n = Crossing.NONE;
        return Shown.beside(v, new Beside(new Crossing(n.levelC(), n.surplusK(), n.others(),
                Optional.of(new Question(part, List.of("b"), 27, null, null, null)), true, n.risk()),
                Optional.empty(), false));
    }

    @Test
    void whileItIsAskedWhatWarmsItIsOff() {
        View v = heated();
        assertThat(new WrongCone().look(v)).isEmpty();
        for (Question.Part p : List.of(Question.Part.ALL_OFF, Question.Part.ONE_ON, Question.Part.ONE_OFF)) {
            assertThat(new WrongCone().look(asking(v, p))).as(p.name()).singleElement().satisfies(f -> {
                assertThat(f.what()).endsWith("whose heater does it is being found out");
                assertThat(f.denies()).containsExactly(Power.HEAT);
                assertThat(f.alarm()).isEmpty();
            });
            assertThat(WrongCone.warms(asking(v, p))).isTrue();
            assertThat(WrongCone.explains(asking(v, p))).isTrue();
        }
        assertThat(new WrongCone().look(asking(v, Question.Part.CLOSED))).isEmpty();
        assertThat(WrongCone.warms(asking(v, Question.Part.CLOSED))).isFalse();
    }

    @Test
    void theAnswerIsToldByNameAndLocksTheHeatOff() {
        View named = asking(heated(), Question.Part.NAMED);
        assertThat(new WrongCone().look(named)).singleElement().satisfies(f -> {
            assertThat(f.what()).startsWith("the heater of cone b warms cone a: ");
            assertThat(f.alarm()).contains(AlarmKind.WRONG_CONE);
            assertThat(f.clears()).isEqualTo(Finding.Clears.ACKNOWLEDGED);
        });
        View latched = Shown.noting(heated(), "a", new Change.Tripped(WrongCone.ID, "as it was told"));
        assertThat(new WrongCone().look(latched)).singleElement()
                .satisfies(f -> assertThat(f.what()).isEqualTo("as it was told"));
    }

    /** Warm water, with somebody else's heat in it, names no welded switch. */
    @Test
    void whatAnotherMayWarmIsNotCalledWelded() {
        View v = heated();
        ConeJudgement j = v.judged();
        View suspect = Shown.with(v, new ConeJudgement(j.water(), Optional.of(15.0), j.level(), j.heat(),
                j.thermal().map(t -> t.watched(w -> new Watch(w.expectedC(), w.underway(), w.driftKPerS(),
                        w.hot(), w.cold(), w.away(), w.still(), Watch.Suspect.WELDED))), j.air(), j.motion(),
                j.tried()));
        assertThat(new WeldedHeater().look(suspect)).hasSize(1);
        assertThat(new WeldedHeater().look(asking(suspect, Question.Part.ALL_OFF))).isEmpty();
        assertThat(new WeldedHeater().look(asking(suspect, Question.Part.NAMED))).isEmpty();
        HeatTrack h = j.heat();
        View risen = Shown.water(Shown.with(v, new ConeJudgement(j.water(), j.roomC(), j.level(),
                new HeatTrack(600_000, h.calmForMs(), 26, h.rise(), h.window(), h.way(), h.responded(),
                        false), j.thermal(), j.air(), j.motion(), j.tried())), 27);
        assertThat(new WeldedHeater().look(risen)).hasSize(1);
        assertThat(new WeldedHeater().look(asking(risen, Question.Part.ALL_OFF))).isEmpty();
    }

    private static View still(View v, long ms) {
        ConeJudgement j = v.judged();
        HeatTrack h = j.heat();
        HeatTrack.Rise r = h.rise();
        return Shown.with(v, new ConeJudgement(j.water(), j.roomC(), j.level(), new HeatTrack(h.offForMs(),
                h.calmForMs(), h.lowestOffC(), new HeatTrack.Rise(r.topC(), r.peakC(), ms, r.lowC(), r.far(),
                r.slope()), h.window(), h.way(), h.responded(), h.failed()), j.thermal(), j.air(),
                j.motion(), j.tried()));
    }

    @Test
    void waterThatRoseNoMoreForTenMinutesIsNotHeatedAnyMore() {
        View v = heated();
        for (Guard g : List.of(new WeldedHeater(), new WrongCone())) {
            assertThat(g.causeGone(still(v, 10 * Units.MINUTE_MS - 1))).isFalse();
            assertThat(g.causeGone(still(v, 10 * Units.MINUTE_MS))).isTrue();
        }
    }

    private static View heatJustOff(View v) {
        return Shown.heatOff(v, 0);
    }

    @Test
    void whoEmptiedAConeLatelyMayHaveMistakenItsPlug() {
        View v = heated();
        View filled = Shown.noting(v, "b", new Change.Told(new Ask.DidFill(2, 25)));
        View later = Shown.later(filled, Units.HOUR_MS);
        assertThat(WrongCone.maySoonTell(heatJustOff(later))).as("its first heat is over").isFalse();
        View emptied = Shown.noting(later, "b", new Change.Told(new Ask.Did(Step.DRAINED)));
        assertThat(WrongCone.maySoonTell(heatJustOff(emptied))).isTrue();
        assertThat(WrongCone.maySoonTell(heatJustOff(Shown.later(emptied, Units.HOUR_MS)))).isFalse();
    }
}
