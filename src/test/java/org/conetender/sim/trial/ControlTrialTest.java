package org.conetender.sim.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.judge.Losses;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A small trial, on other seeds than the real one wherever a test may choose. */
class ControlTrialTest {

    private static final ControlTrial.Plan SMALL = new ControlTrial.Plan(1, 1, 1, 1);
    /** Seeds that the trial does not use. */
    private static final long OTHER_SEED = 77_000;

    @Test
    void theSamePlanComesOutTheSameOnOneThreadAndOnTwo() throws InterruptedException {
        List<Double> heard = new ArrayList<>();
        TrialReport one = ControlTrial.run(SMALL, heard::add);
        TrialReport two = ControlTrial.run(new ControlTrial.Plan(1, 1, 1, 2), _ -> { });
        assertThat(two.targets()).isEqualTo(one.targets());
        assertThat(two.lines()).isEqualTo(one.lines());
        assertThat(heard).as("the share that is done").hasSize(3).isSorted().endsWith(1.0);
        assertThat(one.lines()).anyMatch(l -> l.contains("true water") || l.startsWith("True water"))
                .anyMatch(l -> l.startsWith("Calm: 72 h"));
        for (Laws law : Laws.values()) {
            assertThat(one.lines()).as("a row").anyMatch(l -> l.contains(law.words()));
        }
        assertThat(one.targets()).as("six of holding, four for each switch, one of calm")
                .hasSize(6 + 4 * Switches.values().length + 1);
        assertThat(one.targetLines()).hasSameSizeAs(one.targets());
    }

    @Test
    void conesAreDrawnFromAllThatTheIssueAllows() {
        double smallestL = 99;
        double largestL = 0;
        int lids = 0;
        for (int i = 0; i < 400; i++) {
            TrialCone c = TrialCone.draw(OTHER_SEED + i);
            double litres = c.build().litres();
            smallestL = Math.min(smallestL, litres);
            largestL = Math.max(largestL, litres);
            lids += c.lid() ? 1 : 0;
            assertThat(c.build().watts() / litres).isBetween(3.0, 25.0);
            assertThat(c.climate().meanC()).isBetween(12.0, 26.0);
            assertThat(c.build().quirks().lagS()).isBetween(20.0, 90.0);
            assertThat(c.probeS()).isBetween(5.0, 20.0);
            assertThat(c.known().setpointC()).isLessThanOrEqualTo(27);
            assertThat(c.known().nominal().lossPerS() * litres * Units.BRINE_J_PER_L_K)
                    .as("the configuration's losses, not the cone's")
                    .isCloseTo(Losses.wattsPerK(litres, c.lid()),
                            within(0.2 * Losses.wattsPerK(litres, c.lid())));
            assertThat(TrialCone.draw(OTHER_SEED + i)).isEqualTo(c);
        }
        assertThat(smallestL).isBetween(0.5, 0.6);
        assertThat(largestL).isBetween(17.0, 20.0);
        assertThat(lids).isBetween(160, 240);
    }

    @Test
    void aWeakConeHoldsTheWaterThatItCanHold() {
        TrialCone weak = null;
        for (int i = 0; weak == null; i++) {
            TrialCone c = TrialCone.draw(OTHER_SEED + i);
            weak = c.weak() ? c : null;
        }
        assertThat(weak.known().setpointC()).isLessThan(TrialCone.USUAL_SETPOINT_C)
                .isGreaterThan(weak.climate().meanC());
        Measures m = new TrialRun(weak, Laws.OURS_SOLID.of(weak)).run();
        assertThat(m.warmS()).as("it came there").isPositive();
        assertThat(m.rmsK()).isLessThan(0.1);
    }

    @ParameterizedTest
    @EnumSource(Mishap.class)
    void aMishapIsNoticedAndCalledByItsName(Mishap what) {
        for (int i = 0; i < 3; i++) {
            TrialCone cone = TrialCone.draw(OTHER_SEED + 50 + i);
            MishapRun.Notice n = new MishapRun(cone, what,
                    new Laws.Ours(cone, Switches.RELAY_400.kind())).run();
            assertThat(n.early()).as("spoke before anything was wrong").isFalse();
            assertThat(n.named()).isEqualTo(what.rightName());
            assertThat(n.delayS()).isBetween(0.0, 4 * 3_600.0);
        }
    }

    @Test
    void calmDaysHaveNoFalseAlarm() {
        TrialCone cone = TrialCone.draw(OTHER_SEED + 60);
        CalmRun.Calm calm = new CalmRun(cone, new Laws.Ours(cone, Switches.RELAY_150.kind())).run(72);
        assertThat(calm.hours()).isEqualTo(72);
        assertThat(calm.first()).isEqualTo(Suspect.NONE);
        assertThat(calm.falseAlarms()).isZero();
    }

    /** Its estimate wandered off after lids and top-ups; nothing more was learned, and 22 welds named. */
    @Test
    void anEstimateThatWanderedOffBeginsAgainAtTheProof() {
        TrialCone cone = TrialCone.draw(66_000_209);
        CalmRun.Calm calm = new CalmRun(cone, new Laws.Ours(cone, Switches.RELAY_150.kind())).run(72);
        assertThat(calm.falseAlarms()).isZero();
    }

    @Test
    void handsThatComeThriceInAnHourCallAPersonAndThatIsNotFalse() {
        TrialCone busy = TrialCone.draw(9_500_013);
        CalmRun.Calm calm = new CalmRun(busy, new Laws.Ours(busy, Switches.RELAY_400.kind())).run(72);
        assertThat(calm.latched()).isPositive();
        assertThat(calm.pauses()).as("let off before").isGreaterThanOrEqualTo(2);
        assertThat(calm.falseAlarms()).isZero();
    }

    @Test
    void oursHoldsCloserThanAThermostat() {
        TrialCone cone = TrialCone.draw(OTHER_SEED + 70);
        Measures ours = new TrialRun(cone, Laws.OURS_SOLID.of(cone)).run();
        Measures thermostat = new TrialRun(cone, Laws.THERMOSTAT.of(cone)).run();
        assertThat(ours.rmsK()).isLessThan(thermostat.rmsK() / 3);
        assertThat(ours.overshootK()).isLessThan(thermostat.overshootK());
        assertThat(thermostat.cycles()).as("a thermostat of half a kelvin switches seldom")
                .isLessThan(ours.cycles());
    }
}
