package org.conetender.core.judge;

import java.util.Optional;

/**
 * What a cone and its neighbours have to do with each other. Wants nothing.
 *
 * @param crossing whether another's heater warms this cone
 * @param askedFor the cone that this one's heater may warm, or does
 * @param paused whether its heater is to be off, to find out
 */
public record Beside(Crossing crossing, Optional<String> askedFor, boolean paused) {

    /** Nothing is known. */
    public static final Beside NONE = new Beside(Crossing.NONE, Optional.empty(), false);

    /** Whether another's heater may warm it: nothing else is named for that meanwhile. */
    public boolean warmed() {
        return crossing.open() || crossing.warmedBy().isPresent();
    }

    /** Whether another's heater may warm it, or its own another: no other cause may be named meanwhile. */
    public boolean concerned() {
        return warmed() || askedFor.isPresent();
    }
}
