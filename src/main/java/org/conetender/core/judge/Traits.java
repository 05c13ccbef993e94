package org.conetender.core.judge;

/**
 * What one cone is like to heat. Temperature alone shows ratios only: watts and joules per kelvin come
 * from the configuration (control.md §2.4).
 *
 * @param riseKPerS rise at full power without losses, K/s: watts over heat capacity; above 0
 * @param lossPerS losses over heat capacity, 1/s; above 0
 * @param lagS time constant of the heater, s; what the probe lags beyond {@link Underway#PROBE_S} goes
 *     into it too
 */
public record Traits(double riseKPerS, double lossPerS, double lagS) {

    /** The middle of a heater's lag, 20 to 90 s (control.md, head note). */
    public static final double USUAL_LAG_S = 50;

    /** The lag stays within, s: the range of a heater's, and what a slow probe adds. */
    private static final double LEAST_LAG_S = 5;
    private static final double MOST_LAG_S = 150;
    /** What the others may become, times the nominal (guess). */
    private static final double LEAST = 0.3;
    private static final double MOST = 3;

    /** As the configuration has it. @param watts of the heater  @param wattsPerK losses  @param joulesPerK */
    public static Traits nominal(double watts, double wattsPerK, double joulesPerK) {
        return new Traits(watts / joulesPerK, wattsPerK / joulesPerK, USUAL_LAG_S);
    }

    /** The same, as far as it can be true. @param nominal as the configuration has it */
    Traits within(Traits nominal) {
        return new Traits(Math.clamp(riseKPerS, LEAST * nominal.riseKPerS, MOST * nominal.riseKPerS),
                Math.clamp(lossPerS, LEAST * nominal.lossPerS, MOST * nominal.lossPerS),
                Math.clamp(lagS, LEAST_LAG_S, MOST_LAG_S));
    }

    /** Rise still to come in the reading when the heater, held at this duty, is switched off, K. */
    public double coastK(double duty) {
        return riseKPerS * (lagS + Underway.PROBE_S) * duty;
    }
}
