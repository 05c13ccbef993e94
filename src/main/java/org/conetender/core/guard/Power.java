package org.conetender.core.guard;

/** What a guard may withhold. Air itself is never withheld, only the permission to stop it. */
public enum Power {
    /** The heater's own switch. */
    HEAT,
    /** The second switch in series with it. */
    CUT_OUT,
    /** Both lamps of the cone. */
    LAMPS,
    /** Stopping the air. */
    AIR_OFF,
    /** The edges of the site's heartbeat, by which something outside knows that all is well. */
    HEARTBEAT
}
