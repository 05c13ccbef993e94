package org.conetender.sim.trial;

import java.util.Optional;
import org.conetender.core.judge.Estimate;

/**
 * Who chooses the set-point of a batch that is wanted at an hour. Told what a daemon measures, never the
 * truth; keeps its own memory, one instance for one run.
 */
public interface Pilot {

    /**
     * What a daemon sees.
     *
     * @param probeC in the water, °C
     * @param roomC around it, °C
     * @param known what the heating law knows of the cone, once it has seen it
     */
    record Look(double probeC, double roomC, Optional<Estimate> known) {}

    /** What is seen now. @param seconds since the last look */
    void seen(double seconds, Look look);

    /** The hour is asked for. @param hoursToGo until it  @return whether it can be kept, as is believed */
    boolean asked(double hoursToGo);

    /** The set-point for the next minute, °C. @param hoursToGo until the hour; below 0 when it is past */
    double aimC(double hoursToGo);

    /** Makes a pilot for one run. */
    interface School {
        Pilot of(TrialHatch hatch);
    }
}
