package org.conetender.core.judge;

/**
 * What happened since the last reading, tick by tick, so that a reading is held against all of it. Immutable.
 *
 * @param seconds how long ago it was, s
 * @param heatS seconds at full power in that time, as switched, s
 * @param feltS as the reading should feel them, s
 * @param lostK by losses, K
 * @param movedK by which the reading should have moved, K
 * @param periodS the usual time between readings, s; 0 before the second
 */
public record Since(double seconds, double heatS, double feltS, double lostK, double movedK,
                    double periodS) {

    /** The usual time between readings is that of so many (guess). */
    private static final double PERIODS = 8;

    static final Since NONE = new Since(0, 0, 0, 0, 0, 0);

    Since and(Tick m) {
        return new Since(seconds + m.dtS(), heatS + m.heat() * m.dtS(), feltS + m.felt() * m.dtS(),
                lostK + m.lostKPerS() * m.dtS(), movedK + m.kPerS() * m.dtS(), periodS);
    }

    /** With a reading it begins anew. */
    Since read() {
        double period = periodS == 0 ? seconds : periodS + (seconds - periodS) / PERIODS;
        return new Since(0, 0, 0, 0, 0, period);
    }

    /** Nothing was carried; how often it is read is known. */
    Since forgotten() {
        return new Since(0, 0, 0, 0, 0, periodS);
    }

    /** By how much slower readings blur what is followed, against one a second; at least 1. */
    double slower() {
        return Math.cbrt(Math.max(1, periodS));
    }

    /**
     * One tick of it.
     *
     * @param dtS its length, s
     * @param heat share of full power in it, 0..1  @param felt as the reading should feel it, 0..1
     * @param lostKPerS by losses, K/s  @param kPerS by which the reading should move, K/s
     */
    record Tick(double dtS, double heat, double felt, double lostKPerS, double kPerS) {}
}
