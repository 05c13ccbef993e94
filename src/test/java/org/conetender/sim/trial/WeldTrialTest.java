package org.conetender.sim.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A small trial of welded switches under the whole daemon, on seeds that the real one does not use. */
class WeldTrialTest {

    private static final long OTHER_SEED = 7_100_003;
    private static final int CONES = 2;

    @Test
    void whereverTheRoomIsMeasuredOrNotTheCutOutOpensSoonAndASwitchIsNamed() {
        for (boolean measured : new boolean[] {true, false}) {
            int met = 0;
            for (long seed = OTHER_SEED; met < 2; seed++) {
                Pair pair = Pair.draw(seed, Pair.Standing.APART);
                if (pair.settings().site().roomProbe().isPresent() != measured) {
                    continue;
                }
                Optional<WeldRun.Notice> n = new WeldRun(pair, true).run();
                if (n.isPresent()) {
                    met++;
                    assertThat(n.get().measured()).isEqualTo(measured);
                    assertThat(n.get().first()).isEqualTo("welded");
                    assertThat(n.get().heatedS()).isBetween(0.0, 300.0);
                    assertThat(n.get().toldS()).isBetween(n.get().heatedS(), 1_200.0);
                    assertThat(n.get().share()).isLessThan(1.5);
                }
            }
        }
    }

    /**
     * Cones beside another that went wrong in an earlier trial: what the switch did was learned as a warm
     * room (4 h of heat, 3 and 4.5 K), its own heater was in question at the other cone (2.3 K), heat on its
     * way was taken for an answer (0.8 K), or a neighbour of a tenth or 24 times its watts for the cause (1
     * K).
     */
    @ParameterizedTest
    @ValueSource(longs = {80_000_041, 82_000_076, 82_000_002, 84_000_081, 84_000_077})
    void besideAnotherConeTheHeatEndsToo(long seed) {
        WeldRun.Notice n = new WeldRun(Pair.draw(seed, Pair.Standing.APART), false).run().orElseThrow();
        assertThat(n.toldS()).isFinite();
        assertThat(n.share()).isLessThan(1.5);
    }

    @Test
    void theSameSeedsComeOutTheSameOnOneThreadAndOnTwo() throws InterruptedException {
        List<Double> heard = new ArrayList<>();
        WeldTrial one = WeldTrial.run(OTHER_SEED, new WeldTrial.Plan(CONES, 1), heard::add);
        WeldTrial two = WeldTrial.run(OTHER_SEED, new WeldTrial.Plan(CONES, 2), _ -> { });
        assertThat(two.lines()).isEqualTo(one.lines());
        assertThat(two.targets()).isEqualTo(one.targets());
        assertThat(heard).isSorted().endsWith(1.0);
        assertThat(one.lines()).hasSize(5).anyMatch(l -> l.contains("alone, room measured"))
                .anyMatch(l -> l.contains("beside another, room not"));
    }

    @Test
    void aConeThatSeepsOnARelayIsToldBeforeHalfIsGone() {
        for (int i = 0; i < 3; i++) {
            TrialCone cone = TrialCone.draw(OTHER_SEED + i);
            FallRun.Told told = new FallRun(cone, new Laws.Ours(cone, Switches.RELAY_150.kind())).run();
            assertThat(told.early()).isFalse();
            assertThat(told.gone()).isBetween(0.05, 0.5);
            assertThat(told.hours()).isPositive();
        }
    }
}
