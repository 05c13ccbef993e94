package org.conetender.sim.trial;

import org.conetender.core.judge.Estimate;

/** One way to heat a cone; keeps its own memory, one instance for one run. */
interface Law {

    /**
     * What a daemon sees in one second.
     *
     * @param probeC the last reading, °C
     * @param anew whether it was read in this second
     * @param wasOn whether the heater was on in it
     */
    record Seen(double probeC, boolean anew, double roomC, boolean wasOn) {

        /** What learns and watches sees of it: an old reading is none. */
        Estimate.Step step() {
            return new Estimate.Step(1, wasOn ? 1 : 0, roomC, anew ? probeC : Double.NaN, true);
        }
    }

    /** Whether the heater is to be on in the next second. */
    boolean on(Seen seen);
}
