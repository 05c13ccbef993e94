package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Lives;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Crossing;
import org.conetender.core.judge.CutShort;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.Motion;
import org.conetender.core.judge.Proving;
import org.conetender.core.judge.Tried;
import org.conetender.core.judge.Watch;
import org.conetender.core.judge.Watch.Suspect;
import org.junit.jupiter.api.Test;

/** What guards make of what is suspected, tried or watched. */
class SuspectedTest {

    private static final Request SETTLE = new Request("r", Request.Origin.fresh("test", ""), "a",
            new Ask.Did(Step.SETTLE));
    private static final Request DRAIN = new Request("r", Request.Origin.fresh("test", ""), "a",
            new Ask.Did(Step.DRAINED));

    private final Shown shown = new Shown();

    private View heated(Fitting... fittings) {
        shown.story(fittings).does(Step.STARTED).minutes(2);
        return shown.view();
    }

    private static View suspecting(View v, Suspect on, CutShort.Answer cut, Double roomC) {
        ConeJudgement j = v.judged();
        return Shown.with(v, new ConeJudgement(j.water(), Optional.ofNullable(roomC), j.level(), j.heat(),
                j.thermal().map(t -> t.watched(w -> new Watch(w.expectedC(), w.underway(), w.driftKPerS(),
                        w.hot(), w.cold(), w.away(), w.still(), on))), j.air(), j.motion(),
                new Tried(j.proving(), new CutShort(Double.NaN, 0, Double.NaN, Optional.ofNullable(cut)))));
    }

    private static View suspecting(View v, Suspect on) {
        return suspecting(v, on, null, 15.0);
    }

    private static View heat(View v, double lowestOffC, boolean failed, long offMs) {
        ConeJudgement j = v.judged();
        HeatTrack h = j.heat();
        return Shown.with(v, new ConeJudgement(j.water(), j.roomC(), j.level(), new HeatTrack(offMs,
                h.calmForMs(), lowestOffC, h.rise(), h.window(), h.way(), h.responded(), failed), j.thermal(),
                j.air(), j.motion(), j.tried()));
    }

    private static View proving(View v, Proving.Part part) {
        Proving p = v.judged().proving();
        return Shown.with(v, v.judged().proven(new Proving(part, p.forMs(), p.triedMs(), p.reading(),
                p.round())));
    }

    private static void trips(Guard g, View v, AlarmKind kind, String words) {
        assertThat(g.look(v)).singleElement().satisfies(f -> {
            assertThat(f.clears()).isEqualTo(Finding.Clears.ACKNOWLEDGED);
            assertThat(f.alarm()).contains(kind);
            assertThat(f.what()).contains(words);
            assertThat(f.denies()).containsExactly(Power.HEAT, Power.CUT_OUT);
        });
    }

    private static void doubts(Guard g, View v, String words, Power... denied) {
        assertThat(g.look(v)).singleElement().satisfies(f -> {
            assertThat(f.clears()).isEqualTo(Finding.Clears.CONDITION);
            assertThat(f.alarm()).isEmpty();
            assertThat(f.what()).contains(words);
            assertThat(f.denies()).containsExactly(denied);
        });
    }

    @Test
    void inAColdRoomASuspectedSwitchIsNamedAtOnceElseTheCutOutTells() {
        View v = heated();
        Guard g = new WeldedHeater();
        trips(g, suspecting(v, Suspect.WELDED), AlarmKind.WELDED, "the cut-out is open now");
        doubts(g, suspecting(v, Suspect.WELDED, null, null), "it warms more than its heater and a usual room"
                + " explain; its cut-out is open, to see whether", Power.HEAT, Power.CUT_OUT);
        doubts(g, suspecting(v, Suspect.WELDED, CutShort.Answer.WENT_ON, 15.0), "did not end that",
                Power.HEAT, Power.CUT_OUT);
        trips(g, suspecting(v, Suspect.WELDED, CutShort.Answer.STOPPED, null), AlarmKind.WELDED,
                "stopped when the cut-out opened");
    }

    @Test
    void waterAboveItsSetPointIsDoubtedAndNamedOnlyByItsCutOut() {
        View v = heated();
        Guard g = new WeldedHeater();
        doubts(g, suspecting(v, Suspect.ABOVE), "it is above its set-point", Power.HEAT, Power.CUT_OUT);
        trips(g, suspecting(v, Suspect.ABOVE, CutShort.Answer.STOPPED, 15.0), AlarmKind.WELDED, "stopped");
        assertThat(g.look(suspecting(v, Suspect.NONE, CutShort.Answer.STOPPED, 15.0))).isEmpty();
        View bare = heated(Fitting.NO_CUT_OUT);
        doubts(g, suspecting(bare, Suspect.ABOVE), "it is above its set-point", Power.HEAT);
        trips(g, suspecting(bare, Suspect.WELDED), AlarmKind.WELDED, "no cut-out is fitted");
        trips(g, suspecting(bare, Suspect.WELDED, CutShort.Answer.STOPPED, null), AlarmKind.WELDED,
                "no cut-out is fitted");
    }

    @Test
    void waterThatRoseByThreeTenthsWithTheHeatOffIsHeated() {
        View v = Shown.water(heated(), 0.3);
        trips(new WeldedHeater(), heat(v, 0, false, 600_000), AlarmKind.WELDED, "although");
        assertThat(new WeldedHeater().look(heat(v, 0.01, false, 600_000))).isEmpty();
        View asked = Shown.beside(v, new Beside(Crossing.NONE, Optional.of("b"), false));
        trips(new WeldedHeater(), heat(asked, 0, false, 600_000), AlarmKind.WELDED, "although");
        shown.story().minutes(2);
        View empty = Shown.water(shown.view(), 0.3);
        assertThat(new WeldedHeater().look(heat(empty, 0, false, 600_000))).isEmpty();
        assertThat(new WeldedHeater().causeGone(empty)).as("a person's word counts").isTrue();
        assertThat(new WeldedHeater().causeGone(v)).isFalse();
        assertThat(new WrongCone().causeGone(empty)).isTrue();
        assertThat(new WrongCone().causeGone(v)).isFalse();
    }

    /** What has one cause needs no second name, and an empty cone none. */
    @Test
    void whatIsNamedAlreadyIsNotNamedAgain() {
        View v = heated();
        for (String other : List.of(NoEffect.ID, FrozenProbe.ID, SwitchesTried.ID, WrongCone.ID)) {
            View named = Shown.noting(suspecting(v, Suspect.WELDED), "a", new Change.Tripped(other, "why"));
            assertThat(new WeldedHeater().look(named)).as(other).isEmpty();
        }
        View dry = Shown.noting(suspecting(v, Suspect.WELDED), "a", new Change.Tripped("probe", "why"));
        assertThat(new WeldedHeater().look(dry)).as("a probe names no cause of it").hasSize(1);
        View drained = Shown.noting(v, "a", new Change.Told(new Ask.Did(Step.DRAINED)));
        for (Suspect s : Suspect.values()) {
            View empty = suspecting(drained, s);
            assertThat(new WeldedHeater().look(empty)).isEmpty();
            assertThat(new NoEffect().look(empty)).isEmpty();
            assertThat(new FrozenProbe().look(empty)).isEmpty();
        }
    }

    @Test
    void aHeaterWithoutEffectIsNamedUnlessAnotherConeMayHaveIt() {
        View v = heated();
        String words = "the heater was on but the water did not warm";
        trips(new NoEffect(), suspecting(v, Suspect.DEAD), AlarmKind.NO_EFFECT, words);
        trips(new NoEffect(), heat(v, Double.NaN, true, 0), AlarmKind.NO_EFFECT, words);
        assertThat(new NoEffect().look(heat(v, Double.NaN, false, 0))).isEmpty();
        View asked = Shown.beside(v, new Beside(Crossing.NONE, Optional.of("b"), false));
        assertThat(new NoEffect().look(heat(asked, Double.NaN, true, 0))).isEmpty();
        assertThat(new NoEffect().look(suspecting(asked, Suspect.DEAD))).isEmpty();
        assertThat(new WeldedHeater().look(suspecting(asked, Suspect.WELDED)))
                .as("that its heater warms another does not warm it").hasSize(1);
        View filled = Shown.noting(v, "b", new Change.Told(new Ask.DidFill(2, 25)));
        doubts(new NoEffect(), heat(filled, Double.NaN, true, 0), "is being found out", Power.HEAT);
        View latched = Shown.noting(filled, "a", new Change.Tripped(NoEffect.ID, "why"));
        trips(new NoEffect(), heat(latched, Double.NaN, true, 0), AlarmKind.NO_EFFECT, words);
    }

    @Test
    void whoWasFilledLatelyMaySoonTellForFortyMinutesWithoutHeatAndThreeQuartersOfAnHourAtAll() {
        View v = heated();
        View filled = Shown.noting(v, "b", new Change.Told(new Ask.DidFill(2, 25)));
        assertThat(WrongCone.maySoonTell(heat(v, 0, true, 0))).as("nobody has water").isFalse();
        assertThat(WrongCone.maySoonTell(heat(filled, 0, true, 40 * 60_000 - 1))).isTrue();
        assertThat(WrongCone.maySoonTell(heat(filled, 0, true, 40 * 60_000))).isFalse();
        View later = heat(filled, 0, true, 0);
        assertThat(WrongCone.maySoonTell(Shown.later(later, 45 * 60_000 - 1))).isTrue();
        assertThat(WrongCone.maySoonTell(Shown.later(later, 45 * 60_000))).isFalse();
        View itself = Shown.noting(v, "a", new Change.Told(new Ask.DidFill(2, 25)));
        assertThat(WrongCone.maySoonTell(heat(itself, 0, true, 0))).as("its own filling tells nothing")
                .isFalse();
        View mat = heated(Fitting.MAT);
        View beside = Shown.noting(mat, "b", new Change.Told(new Ask.DidFill(2, 25)));
        assertThat(WrongCone.maySoonTell(heat(beside, 0, true, 0))).as("mats are not mistaken").isFalse();
    }

    @Test
    void aProbeThatStandsStillIsNamedAndItsReadingMustMove() {
        View v = heated();
        trips(new FrozenProbe(), suspecting(v, Suspect.FROZEN), AlarmKind.PROBE_FROZEN, "stood still");
        ConeJudgement j = v.judged();
        for (long stillMs : new long[] {0, 599_999, 600_000, 9_000_000}) {
            View still = Shown.with(v, new ConeJudgement(j.water(), j.roomC(), j.level(), j.heat(),
                    j.thermal(), j.air(), new Motion(27, stillMs, true), j.tried()));
            assertThat(new FrozenProbe().causeGone(still)).as(stillMs + " ms").isEqualTo(
                    new Motion(27, stillMs, true).within(600_000));
            assertThat(new FrozenProbe().causeGone(Shown.water(still, new Belief.Untrusted("silent"))))
                    .isFalse();
        }
    }

    @Test
    void whileSwitchesAreTriedOnlyThatOneIsClosed() {
        View v = heated();
        Guard g = new SwitchesTried();
        assertThat(g.look(proving(v, Proving.Part.PASSED))).isEmpty();
        doubts(g, proving(v, Proving.Part.UNTESTABLE), "could not be tried");
        doubts(g, proving(v, Proving.Part.HEATER), "are tried", Power.CUT_OUT);
        doubts(g, proving(v, Proving.Part.CUT_OUT), "are tried", Power.HEAT);
        for (Proving.Part p : List.of(Proving.Part.WAITING, Proving.Part.BETWEEN, Proving.Part.AGAIN,
                Proving.Part.OFF, Proving.Part.LOOKING)) {
            doubts(g, proving(v, p), "are tried", Power.HEAT, Power.CUT_OUT);
        }
        trips(g, proving(v, Proving.Part.CUT_OUT_STUCK), AlarmKind.SWITCH_STUCK,
                "the cut-out of cone a does not open");
        trips(g, proving(v, Proving.Part.HEATER_STUCK), AlarmKind.SWITCH_STUCK,
                "the heater's own switch of cone a does not open");
        assertThat(g.causeGone(v)).isTrue();
    }

    @Test
    void nobodySettlesWhileTheSiteIsLocked() {
        View v = heated();
        for (Guard g : List.of(new CrashLoop(), new DamagedRecord())) {
            assertThat(g.refuses(SETTLE, v)).isEmpty();
            View locked = Shown.noting(v, "", new Change.Tripped(g.id(), "why"));
            assertThat(g.refuses(SETTLE, locked)).hasValueSatisfying(w -> assertThat(w)
                    .contains("acknowledge '" + g.id() + "' first."));
            assertThat(g.refuses(DRAIN, locked)).isEmpty();
        }
    }

    @Test
    void aLoopIsOverOnceEveryConeIsReportedAnew() {
        View v = Shown.noting(heated(), "", new Change.Tripped(Lives.LOOP, "why"));
        assertThat(new CrashLoop().causeGone(v)).isTrue();
        View aside = Shown.noting(v, "b", new Change.SetAside("r-1", "b", "'drained' of cone b"));
        assertThat(new CrashLoop().causeGone(aside)).isFalse();
        View nobodys = Shown.noting(v, "", new Change.SetAside("r-1", "", "'away'"));
        assertThat(new CrashLoop().causeGone(nobodys)).isTrue();
    }
}
