package org.conetender.core.heat;

import org.conetender.core.judge.Thermal;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/**
 * The heating law of one cone: what we want, never what is allowed. Where the cone is known, by
 * {@link Predict}, which wants on or off itself; else proportional-integral with the losses fed forward,
 * tuned by the SIMC rules for an integrating plant with dead time (control.md §2.1), its duty turned into
 * on and off by {@link Share}.
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

    /**
     * @param slopeKPerS rise at full power without losses, K/s
     * @param feedForward duty that balances the losses at the set-point, 0 or more
     * @param windowMs the switching window for which it is tuned: a longer one, which spares a relay, is
     *     begun and ended by the duty of each second and so waits less than half of itself
     */
    public record Plant(double slopeKPerS, double feedForward, long windowMs) {

        /** @param lossWPerK losses to the room, W/K  @param overRoomK set-point above the room, K */
        public static Plant of(Cone.Heat heat, double litres, double lossWPerK, double overRoomK) {
            return new Plant(heat.watts() / (litres * Units.BRINE_J_PER_L_K),
                    Math.max(0, lossWPerK * overRoomK / heat.watts()), shortWindowMs(heat));
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
        return Predict.bandK(heat.watts() / (litres * Units.BRINE_J_PER_L_K), 0.5,
                heat.contacts().cyclesPerDay()) / 2;
    }

    /**
     * The law after a tick.
     *
     * @param errorK set-point less water, K
     * @param aimC the set-point, °C
     * @param dtMs since the last tick
     * @param plant the cone
     */
    public Hold after(double errorK, double aimC, long dtMs, Plant plant) {
        double dead = LAGS_S + plant.windowMs() / 2000.0;
        double gain = 1 / (plant.slopeKPerS() * 2 * dead);
        double integralS = 8 * dead;
        // Bumpless: a new set-point starts from the feed-forward alone.
        double i = aimC == this.aimC ? integral : 0;
        double wanted = plant.feedForward() + gain * errorK + i;
        // Conditional integration: never wound up while the duty is at its end.
        boolean free = wanted > 0 && wanted < 1 || wanted >= 1 && errorK < 0 || wanted <= 0 && errorK > 0;
        double next = free ? Math.clamp(i + gain * errorK * dtMs / 1000.0 / integralS, -1, 1) : i;
        return new Hold(next, Math.clamp(wanted, 0, 1), aimC, law, false);
    }

    /**
     * Whether no more than low power is given: an immersed heater may be dry until the water answers.
     *
     * @param responded whether it has
     */
    public static boolean gently(Cone cone, boolean responded) {
        return cone.fittings().heat().kind() == Cone.HeatKind.IMMERSED && !cone.fittings().probes().level()
                && !responded;
    }

    /** The same law at no more than low power. */
    public Hold lowPower() {
        return new Hold(0, Math.min(duty, LOW_POWER), aimC, law.off(), false);
    }

    /** No heat is wanted. */
    public Hold idle() {
        return new Hold(0, 0, Double.NaN, law.off(), false);
    }

    /**
     * The same where the cone is known: the law that knows the coast decides, if its model fits the water.
     * Beside it the plain law goes on, ready to take over.
     */
    public Hold steered(Thermal known, Predict.Around around, Predict.Switching kind) {
        if (!known.fits()) {
            return new Hold(integral, duty, aimC, law.off(), false);
        }
        Predict next = law.steered(known, aimC, around, kind);
        return new Hold(integral, next.duty(), aimC, next, true);
    }

    /** Whether the heater is wanted on, where the law that knows the coast decides. */
    public boolean on() {
        return rules && law.on();
    }
}
