package org.conetender.core.judge;

/**
 * How fast the water of a cone nears its room while nothing heats it: bounds of its time constant C/UA.
 *
 * @param quickestH at its fastest, h
 * @param slowestH at its slowest, h
 */
public record Cooling(double quickestH, double slowestH) {

    /** Real time constant over the nominal one, of a wrapped cone without bubbles (*guess*). */
    private static final double SLOWEST = 1.6;

    /**
     * Real time constant over the one that was shown, at its fastest (found by trial: of 1180 simulated cuts
     * of half an hour to four, with bubbles or without, the fastest had 0.66). A lid that is lifted in the
     * very cut is beyond it.
     */
    private static final double QUICKER = 0.6;
    /** And at its slowest: 1.46 without bubbles in the same trial; more if it is wrapped too (*guess*). */
    private static final double SLOWER = 1.8;

    /** Of one that has not shown it: bubbling with its lid off, or wrapped. @param timeConstantH nominal */
    public static Cooling nominal(double timeConstantH) {
        return new Cooling(timeConstantH / HeatTrack.MOST_LOSSES, SLOWEST * timeConstantH);
    }

    /** Of one that has. @param timeConstantH as it was shown while it was held warm */
    public static Cooling shown(double timeConstantH) {
        return new Cooling(QUICKER * timeConstantH, SLOWER * timeConstantH);
    }
}
