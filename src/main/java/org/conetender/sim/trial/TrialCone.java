package org.conetender.sim.trial;

import java.util.SplittableRandom;
import org.conetender.core.judge.Losses;
import org.conetender.core.judge.Traits;
import org.conetender.core.settings.Cone.HeatKind;
import org.conetender.core.unit.Units;
import org.conetender.sim.Plant;
import org.conetender.sim.Room;
import org.conetender.sim.Seeds;

/**
 * One cone of a trial as it was drawn: 0.5 to 20 L and 3 to 25 W/L, both log-uniform, with lid or open, in
 * a room of 12 to 26 °C with a daily swing, losses up to 30 % off what the configuration says. The truth
 * is {@link Plant}; the laws see what a daemon would.
 *
 * @param seed that drew it
 * @param build of the plant
 * @param climate of the room
 * @param probeS lag of the probe in stirred water, 5 to 20 s
 * @param lid whether it has one
 * @param known what a daemon knows of it
 */
record TrialCone(long seed, Plant.Build build, Room.Climate climate, double probeS, boolean lid,
                 Known known) {

    /** Share of its power that a heater may need in the coldest hour; the rest is for catching up. */
    private static final double USED = 0.9;
    /** Air that bubbles, L/min for each litre (guess: enough to keep cysts afloat). */
    static final double AIR_PER_L = 0.4;
    static final double PPT = 25;
    /** Ten hours are several time constants of the largest cone (science.md §9). */
    private static final int STEADY_S = 36_000;
    private static final int STEADY_STEP_S = 10;
    /** Where a batch is held, °C (design.md). */
    static final double USUAL_SETPOINT_C = 27;
    /** A probe is read every so many seconds unless configured, s. */
    private static final int USUAL_PERIOD_S = 2;
    /** One a second is the most; ten probes of 0.8 s each, one after the other, take eight (guess), s. */
    private static final int[] PERIODS_S = {1, 3, 4, 5, 8};
    /** What the configuration of watts and litres may be off, one standard deviation (guess). */
    private static final double RATING_SD = 0.03;

    /**
     * @param nominal traits out of the configuration
     * @param roomProbe whether the room is measured; else it is taken for 20 °C
     * @param roomOffC what its probe is off, °C
     * @param setpointC 27 °C, or what the heater can hold in the coldest hour where that is less
     */
    record Known(Traits nominal, boolean roomProbe, double roomOffC, double setpointC) {}

    static TrialCone draw(long seed) {
        SplittableRandom random = Seeds.of(seed, "trial cone");
        double litres = logUniform(random, 0.5, 20);
        double watts = litres * logUniform(random, 3, 25);
        boolean lid = random.nextBoolean();
        Plant.Build build = new Plant.Build(HeatKind.IMMERSED, watts, litres,
                new Plant.Quirks(random.nextDouble(20, 90), random.nextDouble(0.7, 1.3),
                        random.nextDouble(0.45, 0.9)));
        Room.Climate climate = new Room.Climate(random.nextDouble(12, 26), random.nextDouble(0.5, 2.5),
                random.nextDouble(0.1, 0.5), random.nextDouble(0.35, 0.65));
        double joules = litres * Units.BRINE_J_PER_L_K;
        double loss = Losses.wattsPerK(litres, lid);
        Traits nominal = Traits.nominal(watts * (1 + RATING_SD * random.nextGaussian()), loss,
                joules * (1 + RATING_SD * random.nextGaussian()));
        double setpointC = Math.min(USUAL_SETPOINT_C, reachC(build, climate, lid));
        return new TrialCone(seed, build, climate, random.nextDouble(5, 20), lid,
                new Known(nominal, random.nextBoolean(), 0.3 * random.nextGaussian(), setpointC));
    }

    /** What it holds with most of its power in the coldest hour, °C: found by running it. */
    private static double reachC(Plant.Build build, Room.Climate climate, boolean lid) {
        double coldC = climate.meanC() - climate.swingC() - climate.wanderC();
        Room cold = new Room(new Room.Climate(coldC, 0, 0, climate.humidity()), new SplittableRandom(0));
        cold.step(0, STEADY_STEP_S);
        Plant plant = new Plant(build, cold);
        plant.lid(lid);
        plant.pour(build.litres(), USUAL_SETPOINT_C, PPT);
        for (int t = 0; t < STEADY_S && plant.waterC() > coldC; t += STEADY_STEP_S) {
            plant.step(USED * build.watts(), 0, AIR_PER_L * build.litres(), STEADY_STEP_S);
        }
        return plant.waterC();
    }

    private static double logUniform(SplittableRandom random, double from, double to) {
        return Math.exp(random.nextDouble(Math.log(from), Math.log(to)));
    }

    /** Seconds between readings of its probe: as usual for half of them, else faster or as a long bus. */
    int periodS() {
        SplittableRandom random = Seeds.of(seed, "trial period");
        return random.nextBoolean() ? USUAL_PERIOD_S : PERIODS_S[random.nextInt(PERIODS_S.length)];
    }

    /** Whether the usual set-point is beyond its heater in the coldest hour. */
    boolean weak() {
        return known.setpointC() < USUAL_SETPOINT_C;
    }

    /** True rise at full power without losses, K/s. */
    double riseKPerS() {
        return build.watts() / (build.litres() * Units.BRINE_J_PER_L_K);
    }
}
