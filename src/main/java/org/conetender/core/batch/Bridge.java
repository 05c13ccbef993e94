package org.conetender.core.batch;

import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Moment;

/**
 * A time of unknown length in which nothing was measured, and the water at both its ends. It is kept, so
 * that what the cysts did in it can be reckoned again when the clock has been set.
 *
 * @param from the last measurement before it; the wetting when there was none
 * @param to the first one after it
 * @param ends the water around it
 */
public record Bridge(Moment from, Moment to, Ends ends) {

    /**
     * @param beforeC water at the last measurement, °C
     * @param afterC water at the first one after, °C
     * @param roomC the room then, measured or assumed, °C
     * @param cooling of the cone
     */
    public record Ends(double beforeC, double afterC, double roomC, Cooling cooling) {}
}
