package org.conetender.agent;

/**
 * One duty of the daemon. Run by hand in simulation, on a thread of its own in production; never by
 * two threads at once.
 */
public interface Agent {

    /** Does what there is to do and returns how much it was; never waits for anything outside. */
    int doWork();

    /** A word for threads and logs. */
    String name();
}
