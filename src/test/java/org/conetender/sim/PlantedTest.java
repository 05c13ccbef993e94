package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.conetender.core.guard.AirFailed;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.Suffocation;
import org.conetender.core.guard.View;
import org.conetender.core.image.Request;
import org.conetender.core.settings.Settings;
import org.junit.jupiter.api.Test;

/** Bugs planted in one part of a guard: the rules about air must see each, and see nothing without it. */
class PlantedTest {

    /** A guard that is shown, or says, something else than the real one. */
    private record Planted(Guard real, Function<View, View> shown, Function<Finding, Finding> says)
            implements Guard {
        @Override
        public String id() {
            return real.id();
        }

        @Override
        public List<Finding> look(View v) {
            return real.look(shown.apply(v)).stream().map(says).toList();
        }

        @Override
        public Optional<String> refuses(Request r, View v) {
            return real.refuses(r, shown.apply(v));
        }
    }

    private static List<String> broken(Theme theme, Settings settings, List<Guard> guards) {
        return theme.run(new Rig(settings, 2, Bench.larkmoor(), guards)).invariants().broken().stream()
                .map(Invariants.Violation::rule).distinct().toList();
    }

    private static List<Guard> with(Planted bug) {
        return Guards.ALL.stream().map(g -> g.id().equals(bug.id()) ? bug : g).toList();
    }

    private static void seen(String rule, Theme theme, Settings settings, Planted bug) {
        assertThat(broken(theme, settings, Guards.ALL)).as("without the bug").isEmpty();
        assertThat(broken(theme, settings, with(bug))).containsExactly(rule);
    }

    @Test
    void aCapThatForgetsHowDenseTheChargeIs() {
        View.Caps sparse = new View.Caps(10 * 60_000, 12 * 60_000, 6 * 60_000);
        seen("oxygen", Theme.DENSE, Larkmoor.settings(), new Planted(new Suffocation(),
                v -> new View(v.settings(), v.cone(), v.book(), v.coneBook(), v.judged(),
                        new View.Scene(v.scene().image(),
                        v.scene().begun(), v.scene().wants(), v.scene().site(),
                        v.scene().beside(), sparse, v.scene().unwritten())), f -> f));
    }

    @Test
    void aLackOfAirThatNobodyRemembers() {
        seen("lack-kept", Theme.NO_AIR, Larkmoor.settings(), new Planted(new AirFailed(), v -> v,
                f -> f.doubt().isPresent() ? Finding.veto(f.guard(), f.what()) : f));
    }

    @Test
    void anEmptyConeWhoseAirIsStoppedThoughItIsFull() {
        seen("air-off-full", Theme.WRONG_CONE, Larkmoor.mixed(), new Planted(new Suffocation(),
                v -> v, f -> f.what().contains("empty") || f.what().contains("contact")
                        ? Finding.veto(f.guard(), f.what()) : f));
    }
}
