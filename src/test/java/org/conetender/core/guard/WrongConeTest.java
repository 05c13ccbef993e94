package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Function;
import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Danger: the heater of one cone warms another. */
@Tag("slow")
class WrongConeTest {

    /** How the wires run between cones a and b. */
    private enum Wires {
        RIGHT((s, cone) -> both(s, cone)),
        PLUGS_EXCHANGED((s, cone) -> both(s, other(cone))),
        SWITCHES_EXCHANGED((s, cone) -> s.on(other(cone) + ".heat") && s.on(cone + ".cut-out")),
        A_REACHES_B((s, cone) -> both(s, cone)
                || cone.equals("b") && s.on("a.heat") && s.on("b.cut-out")),
        /** Both heaters hang in b. */
        BOTH_IN_B((s, cone) -> cone.equals("b") && (both(s, "a") || both(s, "b")));

        private final BiPredicate<Story, String> heats;

        Wires(BiPredicate<Story, String> heats) {
            this.heats = heats;
        }

        private static boolean both(Story s, String cone) {
            return s.on(cone + ".heat") && s.on(cone + ".cut-out");
        }

        private static String other(String cone) {
            return cone.equals("a") ? "b" : "a";
        }
    }

    private final Map<String, Basin> basins = Map.of("a", new Basin(Basin.Build.USUAL, 24, 1),
            "b", new Basin(Basin.Build.USUAL, 24, 2));
    private Wires wires = Wires.RIGHT;
    private double sideways;
    /** Whether the switch of b is welded, and by how much the heater of a warms b, K/s. */
    private boolean welded;
    private double leakKPerS;
    /** How often the heater of a was switched on. */
    private int closings;
    private boolean heated;

    private Story over(Story s) {
        s.trying().senses.room(20);
        return s.each(x -> basins.forEach((id, basin) -> {
            closings += id.equals("a") && s.on("a.heat") && !heated ? 1 : 0;
            heated = id.equals("a") ? s.on("a.heat") : heated;
            boolean on = wires.heats.test(s, id) || welded && id.equals("b") && s.on("b.cut-out");
            basin.waterC += id.equals("b") && Wires.both(s, "a") ? leakKPerS : 0;
            basin.power = on ? Basin.Power.WELDED : Basin.Power.DEAD;
            Basin beside = basins.get(Wires.other(id));
            basin.waterC += sideways * (beside.waterC - basin.waterC) / (2 * Basin.J_PER_L_K);
            s.senses.water(id, basin.second(false));
            s.senses.frozen(id + "-water");
        }));
    }

    /** Both are started and held for hours; then a is emptied and filled with cool water. */
    private Story renewed(Story story, Wires from) {
        Story s = over(story);
        s.did("a", Step.STARTED);
        s.did("b", Step.STARTED);
        for (int i = 0; i < 4; i++) {
            s.minutes(55);
        }
        assertThat(s.told()).as("nothing was wrong yet").isEmpty();
        s.does(Step.DRAINED, Step.CLEANED, Step.STARTED);
        basins.get("a").waterC = 22;
        wires = from;
        return s;
    }

    private static int called(Story s, int most) {
        int n = 0;
        for (; n < most && s.told().isEmpty(); n++) {
            s.minutes(1);
        }
        return n;
    }

    private static List<String> standing(Story s) {
        return List.of("a", "b").stream().flatMap(c -> s.standing(c).stream()).toList();
    }

    @ParameterizedTest
    @EnumSource(value = Wires.class, names = "RIGHT", mode = EnumSource.Mode.EXCLUDE)
    void whoseHeaterItIsIsTheFirstThatIsToldAndAllThatIs(Wires how) {
        Story s = renewed(Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL), how);
        assertThat(called(s, 60)).as("minutes").isLessThan(30);
        assertThat(standing(s)).containsExactly("wrong-cone");
        assertThat(s.told().getLast().what()).containsPattern("the heater of cone "
                + "(a warms cone b|b warms cone a)");
        s.minutes(30);
        assertThat(standing(s)).containsExactly("wrong-cone");
        assertThat(s.told("welded") + s.told("no-effect") + s.told("switch-stuck")).isZero();
        for (String output : List.of("a.heat", "a.cut-out", "b.heat", "b.cut-out")) {
            assertThat(s.on(output)).as(output).isFalse();
        }
        assertThat(basins.get("b").waterC).isLessThan(28);
    }

    @Test
    void nothingIsNamedAndLittleIsAskedWhereTheWiresAreRight() {
        Story s = renewed(Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL), Wires.RIGHT);
        int open = 0;
        for (int i = 0; i < 240; i++) {
            s.minutes(1);
            open += s.state().live().cones().values().stream()
                    .anyMatch(c -> c.beside().crossing().open()) ? 1 : 0;
        }
        assertThat(s.told()).isEmpty();
        assertThat(open).as("minutes of four hours in which it was asked").isLessThan(10);
        assertThat(basins.get("a").waterC).isBetween(26.5, 27.5);
    }

    /** Too weak to be named, as where probes of cones of unlike size are exchanged. */
    @Test
    void noOtherHeatsWhileWaterWarmsOnBehindTheLockOfAWeld() {
        Story s = renewed(Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL), Wires.RIGHT);
        s.minutes(8);
        welded = true;
        for (int i = 0; i < 30 && s.standing("b").isEmpty(); i++) {
            s.minutes(1);
        }
        assertThat(s.standing("b")).containsExactly("welded");
        basins.get("a").waterC = 15;
        leakKPerS = 0.0018;
        double lowestC = basins.get("b").waterC;
        double riseK = 0;
        closings = 0;
        int waited = 0;
        for (int i = 0; i < 80; i++) {
            s.minutes(1);
            lowestC = Math.min(lowestC, basins.get("b").waterC);
            riseK = Math.max(riseK, basins.get("b").waterC - lowestC);
            waited += s.found(WrongCone.ID).stream()
                    .anyMatch(w -> w.startsWith("its heater waits, for it may be why cone b warms")) ? 1 : 0;
        }
        assertThat(waited).as("minutes").isPositive();
        assertThat(riseK).isBetween(0.7, 1.1);
        assertThat(closings).as("its relay is spared").isLessThan(40);
        leakKPerS = 0;
        s.minutes(55).minutes(55);
        assertThat(basins.get("a").waterC).as("and heats again once b has cooled").isGreaterThan(25);
    }

    @Test
    void whoPutItRightAcknowledgesAndBothAreHeatedAgain() {
        Story s = renewed(Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL), Wires.A_REACHES_B);
        called(s, 60);
        s.ask("b", new Ask.Acknowledge("wrong-cone"));
        assertThat(s.minutes(1).standing("b")).as("it may warm on yet").containsExactly("wrong-cone");
        wires = Wires.RIGHT;
        s.minutes(20).ask("b", new Ask.Acknowledge("wrong-cone"));
        s.minutes(55).minutes(55);
        assertThat(standing(s)).isEmpty();
        assertThat(s.state().book().cone("b").latches()).isEmpty();
        assertThat(basins.get("a").waterC).isBetween(26.5, 27.5);
        assertThat(basins.get("b").waterC).isBetween(26.5, 27.5);
    }

    @Test
    void whoAcknowledgesWithoutMendingItIsToldAgain() {
        Story s = renewed(Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL), Wires.A_REACHES_B);
        called(s, 60);
        s.minutes(20).ask("b", new Ask.Acknowledge("wrong-cone"));
        for (int i = 0; i < 90 && s.told("wrong-cone") < 2; i++) {
            s.minutes(1);
        }
        assertThat(s.told("wrong-cone")).isEqualTo(2);
        assertThat(basins.get("b").waterC).isLessThan(28);
    }

    @Test
    void itOutlivesARestartInBothCones() {
        Story s = renewed(Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL), Wires.A_REACHES_B);
        called(s, 60);
        s.restart("boot-1", 5_000).minutes(20);
        assertThat(s.standing("b")).containsExactly("wrong-cone");
        assertThat(s.on("a.heat") || s.on("a.cut-out") || s.on("b.heat") || s.on("b.cut-out")).isFalse();
    }

    /** The switch of b welds while a heats too, then is off and heats on. @param welded whether it is yet */
    private Story welding(boolean[] welded) {
        Story s = renewed(Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL), Wires.RIGHT);
        s.minutes(14);
        s.each(x -> basins.forEach((id, basin) -> {
            boolean on = Wires.both(s, id) || welded[0] && id.equals("b") && s.on("b.cut-out");
            basin.power = on ? Basin.Power.WELDED : Basin.Power.DEAD;
            s.senses.water(id, basin.second(false));
            s.senses.frozen(id + "-water");
        }));
        for (int i = 0; i < 1_200 && !s.on("b.heat"); i++) {
            s.tick();
        }
        welded[0] = true;
        for (int i = 0; i < 1_200 && s.on("b.heat"); i++) {
            s.tick();
        }
        assertThat(s.on("a.heat")).as("its neighbour heats").isTrue();
        return s;
    }

    /** Drained while its cut-out is open because it is too warm to ask, and filled anew with cool water. */
    @Test
    void theNextBatchIsHeatedThoughThisOneWasTooWarmToAsk() {
        boolean[] welded = {false};
        Story s = welding(welded);
        for (int i = 0; i < 1_200 && !tooWarm(s); i++) {
            s.tick();
        }
        assertThat(tooWarm(s)).isTrue();
        welded[0] = false;
        basins.get("b").waterC = 22;
        for (Step step : List.of(Step.DRAINED, Step.CLEANED, Step.STARTED)) {
            assertThat(s.did("b", step).accepted()).isTrue();
        }
        assertThat(s.comesOn("b.heat", 3_600)).isTrue();
        s.minutes(55);
        assertThat(basins.get("b").waterC).isGreaterThan(24);
    }

    private static boolean tooWarm(Story s) {
        return s.state().live().cones().get("b").beside().crossing().risk().tooWarm();
    }

    @Test
    void aSwitchThatWeldsWhileItsNeighbourHeatsIsStillCalledWelded() {
        Story s = welding(new boolean[1]);
        assertThat(called(s, 60)).as("minutes").isLessThan(12);
        assertThat(standing(s)).containsExactly("welded");
        assertThat(basins.get("b").waterC).isLessThan(27.4);
    }

    /** Heat that passes slowly through two walls is nobody's switching. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5})
    void conesThatTouchAreNotTakenForCrossed(double wPerK) {
        sideways = wPerK;
        Story s = renewed(new Story(touching(Larkmoor.with(Fitting.ROOM_PROBE, Fitting.LEVEL))), Wires.RIGHT);
        s.minutes(55).minutes(55);
        assertThat(s.told()).isEmpty();
    }

    /** Kept cooler than its neighbour it is warmed by it with its own heater off, as by a warm room. */
    @Test
    void aWarmerConeThatTouchesItIsNotTakenForAWeldedSwitch() {
        Story s = renewed(new Story(touching(Larkmoor.with(Fitting.ROOM_PROBE, Fitting.LEVEL))), Wires.RIGHT);
        s.ask("a", new Ask.SetSetpoint(22));
        sideways = 1;
        double before = basins.get("a").waterC;
        s.minutes(55).minutes(55);
        assertThat(basins.get("a").waterC).as("it warmed").isGreaterThan(before + 0.5);
        assertThat(s.told("welded")).isZero();
    }

    private static Settings touching(Settings s) {
        Function<Cone, Cone> touch = c -> {
            Cone.Fittings f = c.fittings();
            return new Cone(c.id(), new Cone.Fittings(f.probes(), f.heat(), f.air(), f.lights(), f.button(),
                    new Cone.Vessel(false, false, 0, Set.of("b"))), c.limits(), c.timing(), c.usual());
        };
        return new Settings(s.site(), s.cones().stream().map(c -> c.id().equals("a") ? touch.apply(c) : c)
                .toList());
    }

    @Test
    void ofConesThatTouchItIsNotAsked() {
        Story s = renewed(new Story(touching(Larkmoor.with(Fitting.ROOM_PROBE, Fitting.LEVEL))),
                Wires.A_REACHES_B);
        called(s, 60);
        assertThat(standing(s)).as("what it is elsewhere taken for").containsExactly("welded");
    }

    @Test
    void withoutThisGuardNobodyWouldBeToldWhoseHeaterItIs() {
        Story s = renewed(Story.without(WrongCone.class, Fitting.ROOM_PROBE, Fitting.LEVEL),
                Wires.PLUGS_EXCHANGED);
        s.minutes(55);
        assertThat(standing(s)).as("nothing, or what it is not").doesNotContain("wrong-cone");
    }
}
