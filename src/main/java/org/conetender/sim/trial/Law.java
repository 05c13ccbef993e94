package org.conetender.sim.trial;

/** One way to heat a cone; keeps its own memory, one instance for one run. */
interface Law {

    /** What a daemon sees in one second. @param wasOn whether the heater was on in it */
    record Seen(double probeC, double roomC, boolean wasOn) {}

    /** Whether the heater is to be on in the next second. */
    boolean on(Seen seen);
}
