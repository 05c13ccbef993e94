package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.heat.Estimate.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.SwitchKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Who decides: the model where it knows the cone and may, else the plainer law. */
class HoldTest {

    private static final Hold.Plant PLANT = new Hold.Plant(0.003, 0.3, 240_000);

    private static Heating kept(Basin basin, int seconds, SwitchKind kind) {
        Heating h = Heating.from(basin.build.configured(1), basin.waterC);
        Heating.Wish wish = new Heating.Wish(27, Hold.switching(kind));
        for (int t = 0; t < seconds; t++) {
            boolean on = h.law().on();
            h = h.after(new Step(1, on ? 1 : 0, 20, basin.second(on), true), wish);
        }
        return h;
    }

    /** A heater of ten times its rating that lags a quarter of an hour: not what the model describes. */
    private static Heating unfit() {
        Basin hidden = new Basin(new Basin.Build(200, 2, 1.34, 900, 15), 20, 20);
        Heating h = Heating.from(new Basin.Build(20, 2, 1.34, 900, 15).configured(1), 20);
        for (int t = 0; h.fits() && t < 21_600; t++) {
            boolean on = t / 1_200 % 2 == 0;
            h = h.after(new Step(1, on ? 1 : 0, 20, hidden.second(on), true),
                    new Heating.Wish(27, Hold.switching(SwitchKind.RELAY)));
        }
        assertThat(h.fits()).isFalse();
        return h;
    }

    @Test
    void theModelDecidesWhereItFitsAndMay() {
        Heating cold = kept(new Basin(Basin.Build.USUAL, 20, 1), 60, SwitchKind.RELAY);
        Hold h = Hold.IDLE.after(0.5, 27, 1_000, PLANT).with(cold, true);
        assertThat(h.rules()).isTrue();
        assertThat(h.on()).isTrue();
        assertThat(h.duty()).isEqualTo(1);
        Heating warm = kept(new Basin(Basin.Build.USUAL, 28, 1), 60, SwitchKind.RELAY);
        assertThat(Hold.IDLE.after(0.5, 27, 1_000, PLANT).with(warm, true).on()).isFalse();
    }

    @Test
    void whereItMayNotThePlainLawDecidesAndTheModelIsKept() {
        Heating cold = kept(new Basin(Basin.Build.USUAL, 20, 2), 60, SwitchKind.RELAY);
        Hold plain = Hold.IDLE.after(0.1, 27, 1_000, PLANT);
        Hold h = plain.with(cold, false);
        assertThat(h.rules()).isFalse();
        assertThat(h.on()).isFalse();
        assertThat(h.duty()).isEqualTo(plain.duty());
        assertThat(h.model()).containsSame(cold);
        Hold low = Hold.IDLE.after(5, 27, 1_000, PLANT).with(cold, true).lowPower();
        assertThat(low.duty()).isEqualTo(Hold.LOW_POWER);
        assertThat(low.on()).as("low power is given by duty").isFalse();
    }

    @Test
    void whereItDoesNotFitThePlainLawDecides() {
        Hold plain = Hold.IDLE.after(0.1, 27, 1_000, PLANT);
        Hold h = plain.with(unfit(), true);
        assertThat(h.rules()).isFalse();
        assertThat(h.duty()).isEqualTo(plain.duty());
    }

    @Test
    void withoutHeatWantedWhatIsKnownIsKeptAndNothingIsOn() {
        Heating cold = kept(new Basin(Basin.Build.USUAL, 20, 3), 600, SwitchKind.SOLID_STATE);
        Hold idle = Hold.IDLE.after(5, 27, 1_000, PLANT).with(cold, true).idle();
        assertThat(idle.on()).isFalse();
        assertThat(idle.duty()).isZero();
        assertThat(idle.integral()).isZero();
        assertThat(idle.aimC()).isNaN();
        assertThat(idle.model()).containsSame(cold);
        assertThat(Hold.IDLE.on()).as("and where nothing is known").isFalse();
    }

    @Test
    void thePlainLawGoesOnWithTheModelBesideItAndForgetsNothingOfIt() {
        Heating cold = kept(new Basin(Basin.Build.USUAL, 20, 4), 60, SwitchKind.RELAY);
        Hold h = Hold.IDLE.after(0.2, 27, 1_000, PLANT);
        Hold beside = h.with(cold, true);
        for (int i = 0; i < 600; i++) {
            h = h.after(0.2, 27, 1_000, PLANT);
            beside = beside.after(0.2, 27, 1_000, PLANT).with(cold, true);
        }
        assertThat(beside.integral()).as("ready to take over without a jump").isEqualTo(h.integral())
                .isPositive();
        assertThat(beside.after(0.2, 27, 1_000, PLANT).model()).containsSame(cold);
    }

    @ParameterizedTest
    @EnumSource(Cone.SwitchKind.class)
    void aRelayIsSparedAndASolidStateSwitchIsNot(SwitchKind kind) {
        Predict.Switching s = Hold.switching(kind);
        assertThat(s.spared()).isEqualTo(kind == SwitchKind.RELAY);
        if (kind == SwitchKind.RELAY) {
            assertThat(s.cyclesPerDay()).as("the issue's default").isEqualTo(150);
            assertThat(s.leastS()).as("control.md §1.5").isEqualTo(10);
        }
        assertThat(s.leastS() * 1_000).isLessThanOrEqualTo(Hold.switchingMs(kind));
    }
}
