package org.conetender.port;

import org.conetender.core.image.ProbeSample;

/**
 * One temperature probe. {@link #latest} is called from the control thread each tick and must answer
 * at once with what is already known; whoever waits for the bus does so on a thread of its own.
 */
public interface Probe {

    /** The probe's id as configured. */
    String id();

    /** The latest answer and its age at {@code nowMonoMs} (milliseconds, monotonic). Never throws. */
    ProbeSample latest(long nowMonoMs);
}
