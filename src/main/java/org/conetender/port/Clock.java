package org.conetender.port;

import org.conetender.core.unit.Moment;

/** The only source of time. Read once at the top of a tick and handed down. Any thread. */
public interface Clock {

    /** Now, on both clocks. Never throws; the monotonic part never goes back within a boot. */
    Moment now();
}
