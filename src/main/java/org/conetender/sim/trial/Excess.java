package org.conetender.sim.trial;

/** How much warmer the water of one cone became after a mishap than it had been in the hour before. */
final class Excess {

    private static final int HOUR_S = 3_600;
    /** The least that counts, K, and of the rise during both lags and two seconds (issue). */
    private static final double LEAST_K = 0.4;
    private static final double COAST = 1.5;
    private static final double READ_S = 2;

    private double usualHighC = -Double.MAX_VALUE;
    private double earlierHighC = -Double.MAX_VALUE;
    private double highC = -Double.MAX_VALUE;

    /** A second before it. @param t seconds since the start */
    void before(long t, double waterC) {
        if (t % HOUR_S == 0) {
            earlierHighC = usualHighC;
            usualHighC = -Double.MAX_VALUE;
        }
        usualHighC = Math.max(usualHighC, waterC);
    }

    /** A second after it. */
    void after(double waterC) {
        highC = Math.max(highC, waterC);
    }

    /** What it came to, K; 0 or more. */
    double overK(double setpointC) {
        return Math.max(0, highC - Math.max(setpointC, Math.max(usualHighC, earlierHighC)));
    }

    /** What it may come to, K. @param riseKPerS at full power, K/s  @param lagsS of heater and probe, s */
    static double boundK(double riseKPerS, double lagsS) {
        return Math.max(LEAST_K, COAST * riseKPerS * (lagsS + READ_S));
    }
}
