package org.conetender.sim.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.heat.Predict;
import org.conetender.core.judge.Cooling;
import org.conetender.core.judge.Thermal;
import org.conetender.core.unit.Units;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Power cuts of random cones: whether the time constant that a cone has shown bounds how it really cools. */
class CoolingTrialTest {

    private static final long SEED = 91_000;
    private static final int CONES = 80;
    private static final int HELD_S = 14 * 3_600;
    /** As the daemon asks for, K. */
    private static final double OVER_K = 4;

    /** @param shownH time constant by the last proof, h  @param trueH in the cut, h  @param bookH nominal */
    private record Cut(double shownH, double trueH, double bookH) {}

    /** The last shown before the cut, h; NaN where the cone showed none. */
    private static double held(TrialCone cone, TrialBench bench) {
        Predict law = Predict.IDLE;
        Thermal known = null;
        boolean on = false;
        double shownH = Double.NaN;
        for (int t = 0; t < HELD_S; t++) {
            bench.step(on);
            Law.Seen s = bench.seen(on);
            known = known == null ? Thermal.from(cone.known().nominal(), s.probeC())
                    : known.after(s.step(), cone.known().setpointC());
            law = law.steered(known, cone.known().setpointC(), new Predict.Around(s.roomC(), 1),
                    Switches.RELAY_400.kind());
            on = law.on();
            double overK = known.estimate().readingC() - s.roomC();
            if (known.proof().passed() && known.proofAgeS() == 0 && overK >= OVER_K && known.holding() > 0) {
                shownH = Units.hours(1_000) * overK
                        / (known.holding() * known.estimate().traits().riseKPerS());
            }
        }
        return shownH;
    }

    private static List<Cut> cuts(boolean airToo) {
        List<Cut> out = new ArrayList<>();
        for (long seed = SEED; seed < SEED + CONES; seed++) {
            TrialCone cone = TrialCone.draw(seed);
            if (!cone.known().roomProbe()) {
                continue;
            }
            TrialBench bench = new TrialBench(cone);
            double shownH = held(cone, bench);
            double before = bench.waterC();
            for (int s = 1; s <= 6 * 3_600 && !Double.isNaN(shownH); s++) {
                if (airToo) {
                    bench.room().step((HELD_S + s) * 1_000L, 1);
                    bench.plant().step(0, 0, 0, 1);
                } else {
                    bench.step(false);
                }
                double roomC = bench.room().airC();
                boolean tells = bench.waterC() - roomC > 1.5;
                if (tells && (s == 1_800 || s == 3_600 || s == 2 * 3_600 || s == 4 * 3_600)) {
                    double hours = s / 3_600.0;
                    out.add(new Cut(shownH,
                            hours / Math.log((before - roomC) / (bench.waterC() - roomC)),
                            1 / cone.known().nominal().lossPerS() / 3_600));
                }
            }
        }
        return out;
    }

    @ParameterizedTest(name = "without air {0}")
    @ValueSource(booleans = {true, false})
    void whatAConeHasShownBoundsHowItCools(boolean airToo) {
        List<Cut> cuts = cuts(airToo);
        assertThat(cuts.size()).isGreaterThan(60);
        double[] ratios = cuts.stream().mapToDouble(c -> c.trueH() / c.shownH()).sorted().toArray();
        Cooling of = Cooling.shown(1);
        assertThat(ratios[0]).as("fastest").isGreaterThan(of.quickestH());
        assertThat(ratios[ratios.length - 1]).as("slowest").isLessThan(of.slowestH());
        assertThat(cuts).as("by the book it is in bounds too, which are wider").allSatisfy(c ->
                assertThat(c.trueH()).isBetween(Cooling.nominal(c.bookH()).quickestH(),
                        Cooling.nominal(c.bookH()).slowestH()));
        assertThat(ratios[ratios.length / 2]).as("the middle one is as it was shown").isBetween(0.9, 1.15);
    }
}
