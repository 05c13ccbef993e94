package org.conetender.core.face;

import java.util.Optional;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** How long nobody minded the cones, in words: the power was off, the board or the daemon stood still. */
public final class Outage {

    /** The record is kept by the minute: a shorter one is a restart that nobody need hear of. */
    private static final long LEAST_MS = 2 * Units.MINUTE_MS;
    /** Bounds that lie so near are told as one. */
    private static final long SAME_MS = 2 * Units.MINUTE_MS;

    private Outage() {}

    /** @param away from the last minute on record to the start  @return empty where that was but a restart */
    public static Optional<String> words(Span away) {
        if (away.bounded() && away.mostMs() < LEAST_MS) {
            return Optional.empty();
        }
        return Optional.of("nobody minded the cones for " + (!away.bounded()
                ? time(away.leastMs()) + " or longer: no clock tells how long"
                : away.mostMs() - away.leastMs() <= SAME_MS ? "about " + time(away.mostMs())
                : "between " + time(away.leastMs()) + " and " + time(away.mostMs())));
    }

    private static String time(long ms) {
        long minutes = Math.round(Units.minutes(ms));
        return minutes < 120 ? minutes + " min" : minutes < 2 * 24 * 60
                ? Text.of("%d h %02d min", minutes / 60, minutes % 60)
                : Text.of("%d days %d h", minutes / 1_440, minutes % 1_440 / 60);
    }
}
