package org.conetender.sim.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.Ledger;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.guard.AirFailed;
import org.conetender.core.guard.AirWhileDrawing;
import org.conetender.core.guard.BackSiphon;
import org.conetender.core.guard.CrashLoop;
import org.conetender.core.guard.DryHeater;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.Handled;
import org.conetender.core.guard.Power;
import org.conetender.core.guard.ShutValve;
import org.conetender.core.guard.StillWater;
import org.conetender.core.guard.StuckHeater;
import org.conetender.core.guard.Suffocation;
import org.conetender.core.guard.SwitchesTried;
import org.conetender.core.guard.Unwritten;
import org.conetender.core.guard.View;
import org.conetender.core.image.Image;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The search finds nothing in the daemon, and whatever is planted in it. */
class SearchTest {

    /** So many states are enough to meet each planted bug; the longest way to one is a few moves off a batch. */
    private static final int ENOUGH = 6_000;

    private static Search.Outcome searched(Fitted fitted, Daemon daemon, Bounds bounds) {
        return new Search(fitted.settings(), daemon, bounds, _ -> { }).run(1);
    }

    @Test
    @Timeout(600)
    void nothingIsFoundInTheDaemonOnAnyShortCourse() {
        long states = 0;
        for (Plan p : Plan.reduced()) {
            Settings s = p.fitted().settings();
            Search.Outcome o = searched(p.fitted(), Daemon.real(s, Guards.ALL), p.bounds());
            assertThat(o.findings()).as(p.fitted() + ", " + p.bounds().words()).isEmpty();
            assertThat(o.states()).as(p.fitted() + ", " + p.bounds().words())
                    .isGreaterThanOrEqualTo(p.bounds().states());
            states += o.states();
        }
        assertThat(states).isGreaterThan(70_000);
    }

    @Test
    void theSameBoundsGiveTheSameStates() {
        Bounds b = new Bounds(500, Set.of(Move.Trouble.RECORD_REFUSES), 1, false);
        Daemon d = Daemon.real(Fitted.BARE.settings(), Guards.ALL);
        assertThat(searched(Fitted.BARE, d, b)).isEqualTo(searched(Fitted.BARE, d, b));
    }

    /** What is wrong with a daemon, where it must show, and by which rule it is found. */
    private enum Planted {
        NO_SIPHON_GUARD(Fitted.SIPHONING, without(BackSiphon.class), "siphon"),
        NO_CAP(Fitted.SIPHONING, without(Suffocation.class), "air-cap", "air-restart"),
        NOBODY_KEEPS_DRY_HEATERS_OFF(Fitted.SIPHONING, Move.Trouble.LEVEL_LIES, without(DryHeater.class),
                "heat-dry", "untold"),
        HEAT_WITH_HANDS_IN(Fitted.BARE, without(Handled.class), "heat-hands", "lamps-hands", "air-hands"),
        POWER_BEFORE_IT_IS_RECORDED(Fitted.BARE, Move.Trouble.RECORD_SILENT, without(Unwritten.class),
                "air-unwritten", "heat-unwritten"),
        HEAT_IN_STILL_WATER(Fitted.SIPHONING, Move.Trouble.NO_AIR, without(StillWater.class), "heat-still"),
        NOBODY_IS_TOLD_OF_AIR(Fitted.SIPHONING, Move.Trouble.NO_AIR, without(AirFailed.class), "untold"),
        NOBODY_IS_TOLD_OF_A_SHUT_VALVE(Fitted.SIPHONING, without(ShutValve.class), "untold"),
        A_STUCK_HEATER_IS_NOT_SEEN(Fitted.BARE, Move.Trouble.HEAT_UNSET, without(StuckHeater.class),
                "heat-stuck", "untold"),
        SWITCHES_ARE_NOT_TRIED(Fitted.SIPHONING, without(SwitchesTried.class), "heat-untried"),
        A_CAP_OF_TWICE_THE_TIME(Fitted.SIPHONING, twiceTheCap(), "air-cap");

        private final Fitted fitted;
        private final Set<Move.Trouble> troubles;
        private final List<Guard> guards;
        private final Set<String> rules;

        Planted(Fitted fitted, List<Guard> guards, String... rules) {
            this(fitted, null, guards, rules);
        }

        Planted(Fitted fitted, Move.Trouble trouble, List<Guard> guards, String... rules) {
            this.fitted = fitted;
            this.troubles = trouble == null ? Set.of() : Set.of(trouble);
            this.guards = guards;
            this.rules = Set.of(rules);
        }
    }

    private static List<Guard> without(Class<? extends Guard> guard) {
        return Guards.ALL.stream().filter(g -> !guard.isInstance(g)).toList();
    }

    /** The same guards, but that of suffocation looks at half the time that has passed. */
    private static List<Guard> twiceTheCap() {
        List<Guard> out = new ArrayList<>(without(Suffocation.class));
        Suffocation real = new Suffocation();
        out.add(new Guard() {
            @Override
            public String id() {
                return real.id();
            }

            @Override
            public List<Finding> look(View v) {
                View.Caps c = v.scene().caps();
                View.Scene s = v.scene();
                return real.look(new View(v.settings(), v.cone(), v.book(), v.judged(), new View.Scene(s.image(),
                        s.begun(), s.wants(), s.site(), new View.Caps(2 * c.settledMs(), 2 * c.drawingMs(),
                        c.waitMs()), s.unwritten())));
            }
        });
        return out;
    }

    @ParameterizedTest
    @EnumSource(Planted.class)
    void eachMissingOrBentGuardIsFound(Planted bug) {
        Search.Outcome o = searched(bug.fitted, Daemon.real(bug.fitted.settings(), bug.guards),
                new Bounds(ENOUGH, bug.troubles, 1, false));
        assertThat(o.findings()).as("within %d states", o.states()).hasSize(1);
        assertThat(bug.rules).containsAll(o.findings().keySet());
        assertThat(o.findings().values().iterator().next().course()).isNotEmpty();
    }
}
