package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.heat.Predict.Switching;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Watch.Suspect;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** After a part was drawn nobody knows how much water is left: no speed of it is a fault. */
class PartDrawnTest {

    private static final double AIM_C = 27;
    private static final int HOUR_S = 3_600;
    private static final double MAY_BE_GONE = 0.5;
    private static final List<Basin.Build> BUILDS = List.of(Basin.Build.USUAL, Basin.Build.FIERCE,
            new Basin.Build(100, 20, 5, 30, 8), new Basin.Build(30, 2, 0.94, 25, 10),
            new Basin.Build(20, 1, 1, 60, 12));

    private final Switching switching = new Switching(Double.POSITIVE_INFINITY, 1);
    private Basin basin;
    private Thermal known;
    private Predict law;

    private void begun(Basin.Build build, long seed) {
        basin = new Basin(build, 20, seed);
        known = Thermal.from(build.configured(0.9), 20);
        law = Predict.IDLE;
        run(5 * HOUR_S);
        assertThat(known.proof().passed()).isTrue();
    }

    private int run(int seconds) {
        int t = 0;
        for (; t < seconds && known.watch().suspect() == Suspect.NONE; t++) {
            boolean on = law.on();
            double shown = basin.second(on);
            known = known.after(new Step(1, on ? 1 : 0, 20, t % 2 == 0 ? shown : Double.NaN, true), AIM_C);
            law = law.steered(known, AIM_C, new Predict.Around(20, 1), switching);
        }
        return t;
    }

    /** Twenty minutes without air and heat, in which a share is drawn. */
    private void drawn(double share) {
        for (int t = 0; t < 1_200; t++) {
            basin.second(false);
        }
        basin.gone = share;
        known = known.left().again(basin.second(false)).refilled(MAY_BE_GONE);
        law = Predict.IDLE;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.25, 0.5})
    void aHealthyConeIsCalledNothingAndIsProvenSoon(double share) {
        for (Basin.Build b : BUILDS) {
            for (int seed = 1; seed <= 4; seed++) {
                begun(b, seed);
                drawn(share);
                run(3 * HOUR_S);
                assertThat(known.watch().suspect()).as("%s seed %d", b, seed).isEqualTo(Suspect.NONE);
                assertThat(known.proof().passed()).as("%s seed %d", b, seed).isTrue();
                assertThat(known.proof().gone()).as("the doubt ends with the proof").isZero();
                assertThat(known.proof().traits().riseKPerS() * (1 - share) / b.riseKPerS())
                        .as("%s seed %d", b, seed).isBetween(0.8, 1.25);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0,false", "0.5,false", "0,true", "0.5,true"})
    void aSwitchThatWeldsMeanwhileIsStillFound(double share, boolean proven) {
        for (Basin.Build b : BUILDS) {
            begun(b, 7);
            drawn(share);
            run(proven ? 3 * HOUR_S : 0);
            basin.power = Basin.Power.WELDED;
            assertThat(run(2 * HOUR_S)).as("%s, seconds", b).isLessThan(HOUR_S);
            assertThat(known.watch().suspect()).as("%s", b).isIn(Suspect.WELDED, Suspect.IN_AIR);
        }
    }
}
