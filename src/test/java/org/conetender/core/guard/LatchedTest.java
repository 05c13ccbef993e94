package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Change;
import org.conetender.core.image.Image;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.Crossing;
import org.junit.jupiter.api.Test;

/** What stands in the book until a person has answered, and what it withholds meanwhile. */
class LatchedTest {

    private static final String A_WARMS_B = "the heater of cone a warms cone b: the water followed that "
            + "heater and not its own switch; the heat of both is off";

    private final Shown shown = new Shown();

    private View heated(Fitting... fittings) {
        shown.story(fittings).does(Step.STARTED).minutes(2);
        return shown.view();
    }

    private static View latched(View v, String cone, String guard, String why) {
        return Shown.noting(v, cone, new Change.Tripped(guard, why));
    }

    @Test
    void eachIsKeptUpByItsOwnLatchAndByNoOther() {
        View v = heated();
        for (Guard g : List.of(new CookedBatch(), new WeldedHeater(), new SwitchesTried(), new WrongCone(),
                new NoEffect(), new LyingProbe(), new FrozenProbe())) {
            assertThat(g.look(latched(v, "a", g.id(), "why"))).as(g.id()).singleElement().satisfies(f -> {
                assertThat(f.clears()).isEqualTo(Finding.Clears.ACKNOWLEDGED);
                assertThat(f.denies()).contains(Power.HEAT, Power.CUT_OUT);
                assertThat(f.alarm()).isPresent();
            });
            assertThat(g.look(v)).as(g.id() + " without one").isEmpty();
            assertThat(g.look(latched(v, "b", g.id(), "why"))).as(g.id() + " of another cone")
                    .noneMatch(f -> f.alarm().isPresent());
        }
    }

    @Test
    void whatIsLockedForTheWholeSiteIsLockedInEachCone() {
        View v = heated();
        for (Guard g : List.of(new CrashLoop(), new DamagedRecord())) {
            assertThat(g.look(v)).isEmpty();
            assertThat(g.look(latched(v, "", g.id(), "why"))).singleElement().satisfies(f -> {
                assertThat(f.what()).isEqualTo("why");
                assertThat(f.clears()).isEqualTo(Finding.Clears.ACKNOWLEDGED);
                assertThat(f.denies()).containsExactly(Power.HEAT, Power.CUT_OUT, Power.LAMPS,
                        Power.AIR_OFF);
            });
        }
    }

    @Test
    void aHeaterThatWarmsAnotherConeIsOffAndOnlyThatConeCallsForIt() {
        View v = latched(heated(), "b", WrongCone.ID, A_WARMS_B);
        assertThat(new WrongCone().look(v)).singleElement().satisfies(f -> {
            assertThat(f.what()).isEqualTo("its heater warms cone b");
            assertThat(f.denies()).containsExactly(Power.HEAT, Power.CUT_OUT);
            assertThat(f.alarm()).isEmpty();
        });
        assertThat(WrongCone.known(v.settings(), v.book(), "a")).isTrue();
        assertThat(WrongCone.known(v.settings(), v.book(), "b")).isTrue();
        assertThat(WrongCone.known(v.settings(), v.book(), "c")).isFalse();
        assertThat(WrongCone.explains(v)).isTrue();
        assertThat(WrongCone.warms(v)).isTrue();
    }

    /** What an older version wrote of it does not say whose heater it is. */
    @Test
    void whereTheLatchNamesNobodyItMayBeAny() {
        View v = latched(heated(), "b", WrongCone.ID, "in other words");
        assertThat(WrongCone.known(v.settings(), v.book(), "a")).isTrue();
        assertThat(WrongCone.known(v.settings(), v.book(), "c")).isTrue();
        assertThat(atLarge(v, Set.of())).as("none is counted").isZero();
    }

    @Test
    void whileItIsAskedTheHeaterIsOffAndNothingElseIsNamed() {
        View v = heated();
        View paused = Shown.beside(v, new Beside(Crossing.NONE, Optional.of("b"), true));
        assertThat(new WrongCone().look(paused)).singleElement().satisfies(f -> {
            assertThat(f.what()).endsWith("to see whether it warms cone b");
            assertThat(f.denies()).containsExactly(Power.HEAT);
            assertThat(f.clears()).isEqualTo(Finding.Clears.CONDITION);
        });
        assertThat(WrongCone.explains(paused)).isTrue();
        assertThat(WrongCone.warms(paused)).as("that it may warm another warms it not").isFalse();
        assertThat(WrongCone.explains(v)).isFalse();
        assertThat(WrongCone.warms(v)).isFalse();
    }

    @Test
    void whereTheWaterIsTooWarmForQuestionsTheCutOutIsOpenToo() {
        Crossing n = Crossing.NONE;
        Crossing warm = new Crossing(n.levelC(), n.surplusK(), n.others(), n.question(), n.asked(),
                new Crossing.Risk(n.risk().way(), 30, true));
        View v = heated();
        assertThat(new WrongCone().look(Shown.beside(v, new Beside(warm, Optional.empty(), false))))
                .singleElement().satisfies(f -> {
                    assertThat(f.denies()).containsExactly(Power.HEAT, Power.CUT_OUT);
                    assertThat(f.what()).contains("cools before its cut-out closes");
                });
        assertThat(new WrongCone().look(Shown.beside(v, new Beside(warm, Optional.of("b"), true))))
                .singleElement().satisfies(f -> assertThat(f.denies()).containsExactly(Power.HEAT,
                        Power.CUT_OUT));
    }

    private static double atLarge(View v, Set<String> unset) {
        Image i = v.scene().image();
        Image.Pipes p = i.pipes();
        return StuckHeater.wattsAtLarge(v.settings(), v.book(), new Image(i.now(), i.probes(), i.contacts(),
                i.inbox(), new Image.Pipes(p.store(), p.history(), p.broker(), p.lateMs(), unset)));
    }

    @Test
    void aHeaterThatNothingHoldsTakesItsWatts() {
        View v = heated();
        assertThat(atLarge(v, Set.of())).isZero();
        assertThat(atLarge(v, Set.of("a.heat", "c.heat", "b.lamp"))).isEqualTo(50);
        assertThat(atLarge(v, Set.of("a.cut-out"))).as("its own switch obeys").isZero();
        View welded = latched(v, "a", WeldedHeater.ID, "why");
        assertThat(atLarge(welded, Set.of())).as("the cut-out holds it").isZero();
        assertThat(atLarge(welded, Set.of("b.cut-out"))).isZero();
        assertThat(atLarge(welded, Set.of("a.cut-out"))).isEqualTo(25);
        View tried = latched(v, "a", SwitchesTried.ID, "why");
        assertThat(atLarge(tried, Set.of())).as("one of the two holds it").isZero();
        assertThat(atLarge(tried, Set.of("a.cut-out"))).isEqualTo(25);
        assertThat(atLarge(latched(tried, "a", WeldedHeater.ID, "why"), Set.of())).as("neither does")
                .isEqualTo(25);
        assertThat(atLarge(latched(v, "b", WrongCone.ID, A_WARMS_B), Set.of())).as("by which switch?")
                .isEqualTo(25);
    }

    @Test
    void withoutACutOutNothingHoldsAWeldedHeater() {
        View v = heated(Fitting.NO_CUT_OUT);
        assertThat(atLarge(v, Set.of())).isZero();
        assertThat(atLarge(latched(v, "a", WeldedHeater.ID, "why"), Set.of())).isEqualTo(25);
        assertThat(new WeldedHeater().look(latched(v, "a", WeldedHeater.ID, "why"))).singleElement()
                .satisfies(f -> assertThat(f.what()).endsWith("no cut-out is fitted"));
        View fitted = latched(heated(), "a", WeldedHeater.ID, "why");
        assertThat(new WeldedHeater().look(fitted)).singleElement().satisfies(f -> {
            assertThat(f.what()).endsWith("the cut-out is open now");
            assertThat(f.alarm()).contains(AlarmKind.WELDED);
        });
    }
}
