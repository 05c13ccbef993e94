package org.conetender.sim;

import java.util.SplittableRandom;

/**
 * The air of the room: a daily swing, a slow wander, and whatever a heat wave or an open window adds.
 * Temperatures in °C, wall time in milliseconds since 1970-01-01 UTC.
 */
public final class Room {

    /**
     * @param meanC over the day, °C
     * @param swingC half of the difference between afternoon and dawn, °C
     * @param wanderC standard deviation of the slow wander, °C
     * @param humidity of the air, 0 to 1
     */
    public record Climate(double meanC, double swingC, double wanderC, double humidity) {
        /** An ordinary heated room; the spread is a guess. */
        static Climate draw(SplittableRandom random) {
            return new Climate(random.nextDouble(18, 23), random.nextDouble(0.8, 2.5),
                    random.nextDouble(0.3, 0.9), random.nextDouble(0.35, 0.65));
        }

        /** The same all day: for examples and checks against worked figures. */
        public static Climate steady(double meanC) {
            return new Climate(meanC, 0, 0, 0.5);
        }
    }

    private static final double DAY_MS = 86_400_000;
    /** Warmest at about 16:00 UTC (guess). */
    private static final double WARMEST = 16.0 / 24;
    /** Guess: weather and doors are forgotten after half a day. */
    private static final double WANDER_S = 6 * 3_600;
    /** The air follows in tens of minutes when a window opens (guess). */
    private static final double FOLLOW_S = 1_200;
    private static final double RENEW_S = 60;

    private final Climate climate;
    private final SplittableRandom random;
    private double airC;
    private double wanderC;
    private double addedC;
    private double followedC;
    private double sinceS = RENEW_S;
    private double vapour;

    public Room(Climate climate, SplittableRandom random) {
        this.climate = climate;
        this.random = random;
        this.airC = climate.meanC;
    }

    /** Moves on; what is slow is renewed once a minute only. */
    public void step(long wallMs, double seconds) {
        sinceS += seconds;
        if (sinceS < RENEW_S) {
            return;
        }
        double keep = Math.exp(-sinceS / WANDER_S);
        if (climate.wanderC > 0) {
            wanderC = wanderC * keep + climate.wanderC * Math.sqrt(1 - keep * keep) * random.nextGaussian();
        }
        followedC += (addedC - followedC) * (1 - Math.exp(-sinceS / FOLLOW_S));
        double phase = Math.floorMod(wallMs, (long) DAY_MS) / DAY_MS - WARMEST;
        airC = climate.meanC + climate.swingC * Math.cos(2 * Math.PI * phase) + wanderC + followedC;
        vapour = climate.humidity * Brine.vapourKgPerM3(airC, 0);
        sinceS = 0;
    }

    /** Air temperature, °C. */
    public double airC() {
        return airC;
    }

    /** A heat wave or an open window adds this much, °C; 0 ends it. */
    public void add(double degrees) {
        addedC = degrees;
    }

    /** Vapour in the room's air, kg/m³. */
    double vapourKgPerM3() {
        return vapour;
    }
}
