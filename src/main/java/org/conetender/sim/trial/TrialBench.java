package org.conetender.sim.trial;

import java.util.SplittableRandom;
import org.conetender.sim.Plant;
import org.conetender.sim.Room;
import org.conetender.sim.Seeds;
import org.conetender.sim.SimProbe;

/**
 * One cone of a trial, second by second: its plant, its room, its probe, read at the cone's own period. The
 * truth is {@link #waterC}.
 */
final class TrialBench {

    /** Probe noise, °C rms (control.md, head note). */
    private static final double NOISE_C = 0.02;
    private static final double USUAL_ROOM_C = 20;

    /** What a hand or a fault does to the probe. */
    enum Probe { IN_WATER, IN_AIR, FROZEN }

    private final TrialCone cone;
    private final Room room;
    private final Plant plant;
    private final SplittableRandom noise;
    private final double inAirS;
    private Probe probe = Probe.IN_WATER;
    private double tipC;
    private double shownC;
    private boolean anew;
    private long second;

    TrialBench(TrialCone cone) {
        this.cone = cone;
        this.room = new Room(cone.climate(), Seeds.of(cone.seed(), "trial room"));
        this.plant = new Plant(cone.build(), room);
        this.noise = Seeds.of(cone.seed(), "trial probe");
        this.inAirS = Seeds.of(cone.seed(), "trial air").nextDouble(60, 180);
        plant.lid(cone.lid());
        plant.pour(cone.build().litres(), cone.climate().meanC(), TrialCone.PPT);
        this.tipC = plant.waterC();
    }

    /** One second. @param power whether the heater really gets power */
    void step(boolean power) {
        room.step(second * 1_000, 1);
        plant.step(power ? cone.build().watts() : 0, 0, TrialCone.AIR_PER_L * cone.build().litres(), 1);
        boolean air = probe == Probe.IN_AIR;
        double lagS = air ? inAirS : cone.probeS();
        tipC += ((air ? room.airC() : plant.waterC()) - tipC) / (lagS + 0.5);
        double now = SimProbe.inSteps(tipC + NOISE_C * noise.nextGaussian());
        anew = second % cone.periodS() == 0;
        shownC = probe == Probe.FROZEN || !anew ? shownC : now;
        second++;
    }

    /** The room alone, before its first second. @param second of its day  @param seconds that pass */
    void waits(long second, double seconds) {
        room.step(second * 1_000, seconds);
    }

    /** What a daemon sees of this second. @param commanded whether it had the heater on */
    Law.Seen seen(boolean commanded) {
        double roomC = cone.known().roomProbe() ? SimProbe.inSteps(room.airC() + cone.known().roomOffC())
                : USUAL_ROOM_C;
        return new Law.Seen(shownC, anew, roomC, commanded);
    }

    /** How far the reading would move in its first seconds in air, K. */
    double leavesK(double seconds) {
        return Math.abs(room.airC() - tipC) * (1 - Math.exp(-seconds / inAirS));
    }

    double waterC() {
        return plant.waterC();
    }

    void probe(Probe where) {
        probe = where;
    }

    Plant plant() {
        return plant;
    }

    Room room() {
        return room;
    }
}
