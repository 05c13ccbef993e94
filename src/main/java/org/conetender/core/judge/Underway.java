package org.conetender.core.judge;

/**
 * Heat between the switch and the reading. Heater and probe lag in series and may be taken in any order,
 * so what the reading will still rise follows from the switch alone.
 *
 * @param element what leaves the heater now, as a share of full power, 0..1
 * @param felt what the reading shows of it now, 0..1
 * @param elementByLag how {@code element} would change with the heater's lag, 1/s
 * @param feltByLag how {@code felt} would
 * @param feltByProbe how {@code felt} would change with the probe's lag, 1/s
 */
public record Underway(double element, double felt, double elementByLag, double feltByLag,
                       double feltByProbe) {

    /** Probe in stirred water, s: 5 to 20 (science.md §9). */
    public static final double PROBE_S = 10;

    public static final Underway NONE = new Underway(0, 0, 0, 0, 0);
    /** On for long. */
    static final Underway FULL = new Underway(1, 1, 0, 0, 0);

    /**
     * One step, by the implicit midpoint rule.
     *
     * @param heat share of the step during which the heater was on, 0..1
     * @param dtS length of the step, s
     * @param lagS the heater's time constant, s
     */
    public Underway after(double heat, double dtS, double lagS) {
        double out = dtS / (lagS + dtS / 2);
        double in = dtS / (PROBE_S + dtS / 2);
        double e = element + out * (heat - element);
        double byLag = elementByLag - out * ((heat - element) / lagS + elementByLag);
        double byProbe = feltByProbe - in * ((e - felt) / PROBE_S + feltByProbe);
        return new Underway(e, felt + in * (e - felt), byLag, feltByLag + in * (byLag - feltByLag), byProbe);
    }

    /** The same switching, had the heater's time constant been longer by so much, s. */
    Underway lagging(double moreS) {
        return new Underway(Math.clamp(element + moreS * elementByLag, 0, 1),
                Math.clamp(felt + moreS * feltByLag, 0, 1), elementByLag, feltByLag, feltByProbe);
    }

    /** Full-power seconds that have been switched but are not yet in the reading. @param lagS the heater's */
    public double storedS(double lagS) {
        return lagS * element + PROBE_S * felt;
    }
}
