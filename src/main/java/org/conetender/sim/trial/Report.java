package org.conetender.sim.trial;

/**
 * What a person reports of a batch.
 *
 * @param hour of the report, h after the wetting
 * @param what was seen
 * @param nauplii of a count; 0 otherwise
 * @param unhatched full cysts of a count; 0 otherwise
 */
public record Report(double hour, What what, int nauplii, int unhatched) {

    /** What can be seen. */
    public enum What { NONE, FIRST, COUNT, TOO_EARLY, RIGHT, LATE }
}
