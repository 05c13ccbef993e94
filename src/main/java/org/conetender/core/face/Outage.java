package org.conetender.core.face;

import java.util.Optional;
import org.conetender.core.unit.Lasted;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/** How long nobody minded the cones, in words: the power was off, the board or the daemon stood still. */
public final class Outage {

    /** The record is kept by the minute: a shorter one is a restart that nobody need hear of. */
    private static final long LEAST_MS = 2 * Units.MINUTE_MS;

    private Outage() {}

    /** @param away from the last minute on record to the start  @return empty where that was but a restart */
    public static Optional<String> words(Span away) {
        if (away.bounded() && away.mostMs() < LEAST_MS) {
            return Optional.empty();
        }
        return Optional.of("nobody minded the cones for " + Lasted.words(away) + (away.bounded() ? ""
                : ": no clock tells how long"));
    }
}
