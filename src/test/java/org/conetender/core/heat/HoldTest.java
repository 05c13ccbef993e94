package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.judge.Thermal;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.SwitchKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Who decides: the model where it knows the cone and may, else the plainer law. */
class HoldTest {

    private static final Hold.Plant PLANT = new Hold.Plant(0.003, 0.3, 240_000);

    private static final Predict.Around AROUND = new Predict.Around(20, 1);
    private static final Predict.Switching RELAY = Hold.switching(heat(SwitchKind.RELAY));

    private static Cone.Heat heat(SwitchKind kind) {
        return new Cone.Heat(Cone.HeatKind.IMMERSED, 25, kind, true);
    }


    /** A cone that was held for so long, beginning with this water. */
    private static Thermal kept(double startC, int seconds) {
        Basin basin = new Basin(Basin.Build.USUAL, startC, 1);
        Thermal t = Thermal.from(basin.build.configured(1), startC);
        Predict law = Predict.IDLE;
        for (int i = 0; i < seconds; i++) {
            boolean on = law.on();
            t = t.after(new Step(1, on ? 1 : 0, 20, basin.second(on), true), 27);
            law = law.steered(t, 27, AROUND, RELAY);
        }
        return t;
    }

    /** A heater of ten times its rating that lags a quarter of an hour: not what the model describes. */
    private static Thermal unfit() {
        Basin hidden = new Basin(new Basin.Build(200, 2, 1.34, 900, 15), 20, 20);
        Thermal h = Thermal.from(new Basin.Build(20, 2, 1.34, 900, 15).configured(1), 20);
        for (int t = 0; h.fits() && t < 21_600; t++) {
            boolean on = t / 1_200 % 2 == 0;
            h = h.after(new Step(1, on ? 1 : 0, 20, hidden.second(on), true), 27);
        }
        assertThat(h.fits()).isFalse();
        return h;
    }

    @Test
    void theLawThatKnowsTheCoastDecidesWhereItsModelFits() {
        Hold h = Hold.IDLE.after(0.5, 27, 1_000, PLANT).steered(kept(20, 600), AROUND, RELAY);
        assertThat(h.rules()).isTrue();
        assertThat(h.on()).isTrue();
        assertThat(h.duty()).isEqualTo(1);
        assertThat(Hold.IDLE.after(0.5, 27, 1_000, PLANT).steered(kept(28, 1_800), AROUND, RELAY).on())
                .as("whatever the plain law thinks").isFalse();
    }

    @Test
    void whereItDoesNotFitThePlainLawDecides() {
        Hold plain = Hold.IDLE.after(0.1, 27, 1_000, PLANT);
        Hold h = plain.steered(unfit(), AROUND, RELAY);
        assertThat(h.rules()).isFalse();
        assertThat(h.on()).isFalse();
        assertThat(h.duty()).isEqualTo(plain.duty());
    }

    @Test
    void lowPowerIsGivenByDuty() {
        Hold low = Hold.IDLE.after(5, 27, 1_000, PLANT).steered(kept(20, 600), AROUND, RELAY)
                .atMost(Hold.LOW_POWER);
        assertThat(low.duty()).isEqualTo(Hold.LOW_POWER);
        assertThat(low.on()).isFalse();
    }

    @Test
    void withoutHeatWantedNothingIsOn() {
        Hold idle = Hold.IDLE.after(5, 27, 1_000, PLANT).steered(kept(20, 600), AROUND, RELAY).idle();
        assertThat(idle.on()).isFalse();
        assertThat(idle.duty()).isZero();
        assertThat(idle.aimC()).isNaN();
        assertThat(Hold.IDLE.on()).as("and where nothing is known").isFalse();
    }

    /** @param losses what is configured of them, times the truth  @param kind of the switch */
    private static double dutyBeside(double losses, Predict.Switching kind, long windowMs) {
        Basin.Build build = Basin.Build.USUAL;
        Basin basin = new Basin(build, 20, 11);
        Hold.Plant plant = new Hold.Plant(build.riseKPerS(), losses * build.lossWPerK() * 7 / build.watts(),
                windowMs);
        Thermal t = Thermal.from(build.configured(losses), 20);
        Hold h = Hold.IDLE;
        for (int i = 0; i < 43_200; i++) {
            boolean on = h.rules() ? h.on() : h.duty() > 0.5;
            double probeC = basin.second(on);
            t = t.after(new Step(1, on ? 1 : 0, 20, probeC, true), 27);
            h = h.after(27 - probeC, 27, 1_000, plant).steered(t, AROUND, kind)
                    .beside(h, new Hold.Real(on, 27 - probeC, 1_000, plant));
        }
        assertThat(h.rules()).isTrue();
        return plant.feedForward() + h.integral();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.6, 1, 1.4})
    void thePlainLawFollowsBesideItReadyToTakeOver(double losses) {
        double truth = Basin.Build.USUAL.lossWPerK() * 7 / Basin.Build.USUAL.watts();
        assertThat(dutyBeside(losses, RELAY, 240_000)).as("held by a relay").isCloseTo(truth, within(0.06));
        assertThat(dutyBeside(losses, Hold.switching(heat(SwitchKind.SOLID_STATE)), 10_000)).as("solid-state")
                .isCloseTo(truth, within(0.03));
    }

    @Test
    void whatTheLossesWereFoundToBeStaysAtAnotherSetPointAndWhileNoHeatIsWanted() {
        Hold h = Hold.IDLE;
        for (int i = 0; i < 1_800; i++) {
            h = h.after(0.3, 27, 1_000, PLANT);
        }
        double found = h.integral();
        assertThat(found).isGreaterThan(0.2);
        Hold next = h.idle().after(0, 29, 1_000, PLANT);
        assertThat(next.duty()).as("bumpless").isCloseTo(PLANT.feedForward() + found, within(1e-9));
        assertThat(next.integral()).isEqualTo(found);
    }

    @Test
    void nothingIsLearnedWhileHeatIsWithheld() {
        Hold h = Hold.IDLE.after(0.1, 27, 1_000, PLANT);
        double before = h.integral();
        for (int i = 0; i < 900; i++) {
            Hold was = h;
            h = h.after(0.1, 27, 1_000, PLANT).withheld(was);
        }
        assertThat(h.integral()).isEqualTo(before);
        assertThat(h.duty()).as("still wanted").isPositive();
        assertThat(Hold.IDLE.withheld(h)).as("other water begins anew").isEqualTo(Hold.IDLE);
    }

    @Test
    void whileTheConeIsNotKnownThePlainLawHoldsIt() {
        Hold plain = Hold.IDLE.after(0.1, 27, 1_000, PLANT);
        assertThat(Known.of(kept(20, 5))).isEqualTo(Known.NOT_YET);
        assertThat(plain.steered(kept(20, 5), AROUND, RELAY).rules()).isFalse();
        Thermal later = kept(20, 600);
        assertThat(Known.of(later)).isEqualTo(Known.ROUGHLY);
        assertThat(plain.steered(later, AROUND, RELAY).rules()).isTrue();
        assertThat(Known.of(kept(20, 43_200))).isEqualTo(Known.WELL);
        assertThat(Known.of(unfit())).as("whatever its doubts").isEqualTo(Known.NOT_YET);
        // A reading that stands, of a cone that never was heated: only the other law asks it to move.
        Thermal still = Thermal.from(Basin.Build.USUAL.configured(1), 28);
        for (int i = 0; i < 1_600; i++) {
            still = still.after(new Step(1, 0, 28, 28, true), 27);
        }
        assertThat(Known.of(still)).isEqualTo(Known.NOT_YET);
        assertThat(still.askK()).isNotZero();
        assertThat(plain.steered(still, AROUND, RELAY).rules()).isTrue();
    }

    @ParameterizedTest
    @EnumSource(Cone.SwitchKind.class)
    void aRelayIsSparedAndASolidStateSwitchIsNot(SwitchKind kind) {
        Predict.Switching s = Hold.switching(heat(kind));
        assertThat(s.spared()).isEqualTo(kind == SwitchKind.RELAY);
        if (kind == SwitchKind.RELAY) {
            assertThat(s.cyclesPerDay()).as("the issue's default").isEqualTo(150);
            assertThat(s.leastS()).as("control.md §1.5").isEqualTo(10);
        }
        assertThat(s.leastS() * 1_000).isLessThanOrEqualTo(Hold.shortWindowMs(heat(kind)));
    }

    @ParameterizedTest
    @CsvSource({"50, 1728000", "150, 576000", "300, 288000", "360, 240000", "1000, 240000"})
    void aRelaysWindowsAndTurnsAreAsLongAsItsBudgetDemands(double cycles, long windowMs) {
        Cone.Heat heat = new Cone.Heat(Cone.HeatKind.MAT, 25, SwitchKind.RELAY, true,
                new Cone.Contacts(cycles, 100_000));
        assertThat(Hold.dutyWindowMs(heat, Wear.begun(0))).isEqualTo(windowMs);
        assertThat(Hold.turnMs(heat)).isEqualTo(Math.max(Share.TURN_MS, (long) (86_400_000 / cycles)));
        assertThat(Hold.shortWindowMs(heat)).as("where it may be dry").isEqualTo(240_000);
        Cone.Heat solid = heat(SwitchKind.SOLID_STATE);
        assertThat(Hold.dutyWindowMs(solid, Wear.begun(0))).isEqualTo(10_000);
        assertThat(Hold.turnMs(solid)).isEqualTo(Share.TURN_MS);
    }

    @Test
    void theStrongestHeaterThatIsAllowedSwingsHalfADegreeAtMostWithTheUsualBudget() {
        assertThat(Hold.swingK(heat(SwitchKind.RELAY), 1)).as("25 W/L").isBetween(0.4, 0.5);
        assertThat(Hold.swingK(new Cone.Heat(Cone.HeatKind.IMMERSED, 25, SwitchKind.RELAY, true,
                new Cone.Contacts(75, 100_000)), 1)).as("half of the cycles").isBetween(0.8, 1.0);
        assertThat(Hold.swingK(heat(SwitchKind.SOLID_STATE), 1)).isLessThan(0.05);
    }
}
