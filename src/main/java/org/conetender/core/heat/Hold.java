package org.conetender.core.heat;

import java.util.Optional;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.Thermal;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/**
 * The heating law of one cone: what we want, never what is allowed. Where the cone is known, by
 * {@link Predict}, which wants on or off itself; while it is not ({@link Known}), proportional-integral
 * with the losses fed forward, tuned by the SIMC rules for an integrating plant with dead time (control.md
 * §2.1), its duty turned into on and off by {@link Share}.
 *
 * @param integral the integral's share of the duty
 * @param duty wanted in this tick, 0..1
 * @param aimC the set-point, °C; NaN while no heat is wanted
 * @param law the law that knows the coast
 * @param rules whether it decides, rather than the duty
 */
public record Hold(double integral, double duty, double aimC, Predict law, boolean rules) {

    public static final Hold IDLE = new Hold(0, 0, Double.NaN, Predict.IDLE, false);

    /** Element and probe lags as control.md's head has them, s. */
    private static final double LAGS_S = 45 + 15;
    /** Until the water has answered once, no more than this share of the heater's power (guess). */
    public static final double LOW_POWER = 0.25;
    /** The same where it is surely covered (guess: pauses as long as pulses, and more). */
    private static final double COVERED_POWER = 0.4;

    /**
     * @param slopeKPerS rise at full power without losses, K/s
     * @param feedForward duty that balances the losses at the set-point, 0 or more
     * @param windowMs the switching window for which it is tuned: a longer one, which spares a relay, is
     *     begun and ended by the duty of each second and so waits less than half of itself
     */
    public record Plant(double slopeKPerS, double feedForward, long windowMs) {

        /** @param lossWPerK losses to the room, W/K  @param overRoomK set-point above the room, K */
        public static Plant of(Cone.Heat heat, double litres, double lossWPerK, double overRoomK) {
            return new Plant(heat.riseKPerS(litres),
                    Math.max(0, lossWPerK * overRoomK / heat.watts()), shortWindowMs(heat));
        }

        /** Effective dead time: the lags, and half of a window on the mean, s. */
        private double deadS() {
            return LAGS_S + windowMs / 2000.0;
        }

        /** Duty for each kelvin that is lacking (control.md §2.1). */
        private double gainPerK() {
            return 1 / (slopeKPerS * 2 * deadS());
        }

        /** Integral time, s (control.md §2.1); the mean of what is followed is taken over as long. */
        private double integralS() {
            return 8 * deadS();
        }
    }

    /** What a switch bears: a relay its budget of cycles, and no pulse under 10 s (control.md §1.5). */
    public static Predict.Switching switching(Cone.Heat heat) {
        return new Predict.Switching(heat.contacts().cyclesPerDay(),
                heat.switchKind() == Cone.SwitchKind.RELAY ? 10 : 1);
    }

    /**
     * Switching window of the duty: solid-state switches follow closely, relays are spared (control.md
     * §1.5). One window is about one cycle, so a relay's is as long as what is left of its budget demands.
     */
    public static long dutyWindowMs(Cone.Heat heat, Wear wear) {
        return Math.max(shortWindowMs(heat), cycleMs(wear.left(switching(heat))));
    }

    /** The same while a heater may be dry: shorter, so that no pulse heats it long, whatever the budget. */
    public static long shortWindowMs(Cone.Heat heat) {
        return switch (heat.switchKind()) {
            case RELAY -> 4 * Units.MINUTE_MS;
            case SOLID_STATE -> 10 * Units.SECOND_MS;
        };
    }

    /** A running heater keeps its turn so long before it gives way to one that waits for power. */
    public static long turnMs(Cone.Heat heat) {
        return Math.max(Share.TURN_MS, cycleMs(switching(heat)));
    }

    /** How long a cycle takes where the whole budget is used. */
    private static long cycleMs(Predict.Switching may) {
        return (long) (24 * Units.HOUR_MS / may.cyclesPerDay());
    }

    /**
     * How far the water swings to either side of its set-point at worst, half of the time on, K.
     *
     * @param litres that it warms
     */
    public static double swingK(Cone.Heat heat, double litres) {
        return Predict.bandK(heat.riseKPerS(litres), 0.5, heat.contacts().cyclesPerDay()) / 2;
    }

    /**
     * The law after a tick. The integral stays at another set-point: what is wrong with the losses is as
     * wrong there, and the feed-forward covers the change.
     *
     * @param errorK set-point less water, K
     * @param aimC the set-point, °C
     * @param dtMs since the last tick
     * @param plant the cone
     */
    public Hold after(double errorK, double aimC, long dtMs, Plant plant) {
        double wanted = plant.feedForward() + plant.gainPerK() * errorK + integral;
        // Conditional integration: never wound up while the duty is at its end.
        boolean free = wanted > 0 && wanted < 1 || wanted >= 1 && errorK < 0 || wanted <= 0 && errorK > 0;
        double next = free ? Math.clamp(integral
                + plant.gainPerK() * errorK * dtMs / 1000.0 / plant.integralS(), -1, 1) : integral;
        return new Hold(next, Math.clamp(wanted, 0, 1), aimC, law, false);
    }

    /**
     * Share of its power that a heater is given at most: until the water answers, an immersed one may be dry.
     * One that a level contact says is covered may only be dead: it is paused where nothing else tells.
     */
    public static double most(Cone cone, HeatTrack heat) {
        boolean covered = cone.fittings().probes().level();
        return cone.fittings().heat().kind() != Cone.HeatKind.IMMERSED || heat.responded()
                || covered && !heat.undecided() ? 1 : covered ? COVERED_POWER : LOW_POWER;
    }

    /** The same law at no more than so much power. */
    public Hold atMost(double share) {
        return new Hold(0, Math.min(duty, share), aimC, law.off(), false);
    }

    /**
     * The same after a tick in which heat was withheld: the water did not answer for the duty, so nothing was
     * learned of it.
     *
     * @param before the law before that tick
     */
    public Hold withheld(Hold before) {
        return Double.isNaN(aimC) ? this : new Hold(before.integral, duty, aimC, law, rules);
    }

    /** No heat is wanted. What the losses were found to be stays. */
    public Hold idle() {
        return new Hold(integral, 0, Double.NaN, law.off(), false);
    }

    /**
     * The same where the cone is known: the law that knows the coast decides, if its model fits the water;
     * and wherever a reading that stands must be asked to move, which only that law does. For the plain law
     * beside it see {@link #beside}.
     */
    public Hold steered(Thermal known, Predict.Around around, Predict.Switching kind) {
        boolean plain = !known.fits() || Known.of(known) == Known.NOT_YET && known.askK() == 0;
        if (plain) {
            return new Hold(integral, duty, aimC, law.off(), false);
        }
        Predict next = law.steered(known, aimC, around, kind);
        return new Hold(integral, next.duty(), aimC, next, true);
    }

    /**
     * Beside the law that decides the plain law follows, so that it may take over without a jump: its
     * integral is the mean of what was really switched less what the other parts would have given (control.md
     * §2.1), around where the water is led. A duty at its end says nothing of the losses.
     *
     * @param before the law before this tick
     */
    public Hold beside(Hold before, Real real) {
        if (!rules) {
            return this;
        }
        Plant p = real.plant();
        double errorK = real.errorK() + law.ledK();
        double lacks = (real.on() ? 1 : 0) - p.feedForward() - p.gainPerK() * errorK - before.integral;
        double share = Math.min(1, real.dtMs() / 1000.0 / p.integralS());
        return new Hold(duty <= 0 || duty >= 1 ? before.integral
                : Math.clamp(before.integral + lacks * share, -1, 1), duty, aimC, law, true);
    }

    /**
     * What really happened in a tick.
     *
     * @param on whether the heater was on in it  @param errorK set-point less water, K
     * @param dtMs its length  @param plant the cone
     */
    public record Real(boolean on, double errorK, long dtMs, Plant plant) {}

    /** Whether the heater is wanted on, where the law that knows the coast decides. */
    public boolean on() {
        return rules && law.on();
    }

    /**
     * The same as its turn is counted: cold water wants all there is, but for a look and the pause that
     * spares the switch.
     */
    public Share.Want want(Optional<Thermal> known) {
        return on() ? Share.Want.ON : duty >= 1 || known.filter(Predict::looks).isPresent()
                ? Share.Want.LOOKS : Share.Want.OFF;
    }
}
