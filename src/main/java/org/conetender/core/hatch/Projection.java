package org.conetender.core.hatch;

import java.util.List;
import org.conetender.core.judge.Estimate;
import org.conetender.core.judge.Losses;
import org.conetender.core.judge.Traits;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * The water temperature that the control will really give from now on: heated at no more than the
 * heater's power, cooled by no more than the losses, held at the set-point where both allow it.
 *
 * @param waterC the water now, °C
 * @param plant the cone and its room
 * @param plan what the control will aim at
 * @param behind how long the batch took to come where it is
 */
public record Projection(double waterC, Plant plant, Plan plan, Behind behind) {

    /** Step of the projection in hours: 5 min, far below any cone's time constant (science.md §9). */
    public static final double STEP_H = 1.0 / 12;

    /**
     * @param litres water, L
     * @param watts what the heater may give, W; 0 without one, or while it is locked off
     * @param wattsPerK losses to the room, W/K, above 0 ({@link Losses} until learnt)
     * @param room the room
     * @param doubtK by which it may be colder or warmer, one standard deviation, K; counts where no heater
     *     holds the water
     */
    public record Plant(double litres, double watts, double wattsPerK, Room room, double doubtK) {

        /** In a room that is as it is said to be. */
        public Plant(double litres, double watts, double wattsPerK, Room room) {
            this(litres, watts, wattsPerK, room, 0);
        }

        /** Whether every figure is one that a cone can have is checked here, once. */
        public Plant {
            if (!(litres > 0 && watts >= 0 && wattsPerK > 0)) {
                throw new IllegalArgumentException(Text.of("no cone holds %s L with %s W and loses %s W/K",
                        litres, watts, wattsPerK));
            }
        }

        /** What nothing explains counts for no more than so much of a warmer or colder room, K (*guess*). */
        private static final double MOST_DRIFT_K = 8;

        /**
         * As the cone has shown itself: only ratios are learned, so its heat capacity is that of its water;
         * what warms or cools it unexplained counts as a warmer or colder room.
         *
         * @param room as it is measured, or taken for
         */
        public static Plant learned(double litres, Estimate known, Room room) {
            double joules = litres * Units.BRINE_J_PER_L_K;
            Traits t = known.traits();
            double drift = Math.clamp(known.driftKPerS() / t.lossPerS(), -MOST_DRIFT_K, MOST_DRIFT_K);
            return new Plant(litres, t.riseKPerS() * joules, t.lossPerS() * joules,
                    room.plus(drift));
        }

        /** The same with so much of its heater's power, a share: none while it is locked off. */
        public Plant powered(double share) {
            return new Plant(litres, watts * share, wattsPerK, room, doubtK);
        }

        /** Share of its distance to the room that unheated water keeps over one step. */
        double keptPerStep() {
            return Math.exp(-STEP_H * 3600 * wattsPerK / (litres * Units.BRINE_J_PER_L_K));
        }

        /** Mean power that holds water at that temperature in the room as it is now, W. */
        public double holdingW(double waterC) {
            return Math.clamp(wattsPerK * (waterC - room.aheadC(0)), 0, watts);
        }

        /** The hottest the heater can ever bring the water in that room: T_room + P/UA (control.md §2.1). */
        public double reachC() {
            return room.aheadC(0) + watts / wattsPerK;
        }
    }

    /**
     * @param setpointC what the water is held at until the harvest point
     * @param floorC what a ready batch is kept from falling below
     * @param floorFromDegreeHours degree-hours done from which the floor holds; infinite for never
     * @param idleH hours from now in which nothing heats: its switches are still tried
     */
    public record Plan(double setpointC, double floorC, double floorFromDegreeHours, double idleH) {

        /** One set-point for good. */
        public static Plan hold(double setpointC) {
            return new Plan(setpointC, setpointC, Double.POSITIVE_INFINITY, 0);
        }

        /** The same, but held at another temperature, and at no higher a floor. @param setC °C */
        Plan at(double setC) {
            return new Plan(setC, Math.min(setC, floorC), floorFromDegreeHours, idleH);
        }

        double aimC(double degreeHours) {
            return degreeHours >= floorFromDegreeHours ? floorC : setpointC;
        }
    }

    /** Of a batch whose past nobody knows. */
    public Projection(double waterC, Plant plant, Plan plan) {
        this(waterC, plant, plan, Behind.UNKNOWN);
    }

    public Projection {
        if (!Double.isFinite(waterC) || !Double.isFinite(plan.setpointC())) {
            throw new IllegalArgumentException("not a temperature: water " + waterC + " °C, set-point "
                    + plan.setpointC() + " °C");
        }
    }

    /** Losses are known to this share, one standard deviation: lids, draughts, foam (*guess*). */
    private static final double LOSS_DOUBT = 0.15;

    /** The same in a cone that loses more than it is taken to, in a room that is colder. */
    Projection lossier() {
        return new Projection(waterC, new Plant(plant.litres, plant.watts,
                plant.wattsPerK * (1 + LOSS_DOUBT), plant.room.plus(-plant.doubtK)), plan, behind);
    }

    /** The same, held at another temperature. @param setC °C */
    Projection at(double setC) {
        return new Projection(waterC, plant, plan.at(setC), behind);
    }

    /** The same after that past. */
    Projection after(Behind past) {
        return new Projection(waterC, plant, plan, past);
    }

    /** Water that stays as it is, for a log whose cone is not known. */
    public static Projection steady(double waterC) {
        return new Projection(waterC, new Plant(1, 0, 1, Room.constant(waterC)), Plan.hold(waterC));
    }

    /** So much exchange that water follows its room at once, W/K. */
    private static final double AT_ONCE_W_PER_K = 1e6;

    /**
     * Water that does the same every day.
     *
     * @param waterC now  @param dayC of each step of the day that begins now, °C  @param meanC of it
     */
    static Projection following(double waterC, List<Double> dayC, double meanC) {
        // A step asks for the room at its middle, and gives the water at its end.
        return new Projection(waterC, new Plant(1, 0, AT_ONCE_W_PER_K, new Room(dayC, STEP_H / 2)),
                Plan.hold(meanC));
    }

    /** The water at the end of each step from now; index 0 is now. Ignores the floor. */
    public double[] courseC(int steps) {
        double[] course = new double[steps + 1];
        double kept = plant.keptPerStep();
        course[0] = waterC;
        for (int i = 0; i < steps; i++) {
            course[i + 1] = nextC(course[i], i, plan.setpointC(), kept);
        }
        return course;
    }

    /**
     * The water one step later: the exact answer of one well-mixed node between "heater off" and
     * "heater full on", as near the aim as those allow.
     *
     * @param atC water at the step's start
     * @param step its index from now
     * @param aimC the set-point
     * @param kept {@link Plant#keptPerStep}, worked out once for all steps
     */
    double nextC(double atC, int step, double aimC, double kept) {
        double room = plant.room.aheadC((step + 0.5) * STEP_H);
        double off = room + (atC - room) * kept;
        // Asked thousands of times for one hour: a comparison is far quicker than Math.clamp.
        double begun = step + 1 - plan.idleH / STEP_H;
        double heated = begun < 0 ? 0 : begun > 1 ? 1 : begun;
        double full = off + plant.watts / plant.wattsPerK * (1 - kept) * heated;
        return aimC < off ? off : aimC > full ? full : aimC;
    }
}
