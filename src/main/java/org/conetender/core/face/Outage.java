package org.conetender.core.face;

import java.time.ZoneId;
import java.util.Optional;
import org.conetender.core.unit.Lasted;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/** How long nobody minded the cones, in words: the power was off, the board or the daemon stood still. */
public final class Outage {

    /** The record is kept by the minute: a shorter one is a restart that nobody need hear of. */
    private static final long LEAST_MS = 2 * Units.MINUTE_MS;

    private Outage() {}

    /** @param fromMs when it began, ms since 1970 UTC  @param toMs when it ended  @param zone of people */
    public record Hours(long fromMs, long toMs, ZoneId zone) {}

    /** Whether that was but a restart. */
    public static boolean isRestart(Span away) {
        return away.bounded() && away.mostMs() < LEAST_MS;
    }

    /** While no clock tells its hours. @param off whether the machine was */
    public static String sentence(boolean off, Span away) {
        boolean nothing = away.leastMs() < Units.MINUTE_MS && !away.bounded();
        return who(off) + (nothing ? "" : " for " + Lasted.words(away)) + (away.bounded() ? "."
                : "; no clock tells yet how long. You will be told when one does.");
    }

    /** When a clock does. @param off whether the machine was */
    public static String sentence(boolean off, Hours hours, Span away) {
        return who(off) + " from " + Sentences.clock(hours.fromMs(), hours.zone(), hours.toMs()) + " to "
                + Sentences.clock(hours.toMs(), hours.zone(), hours.toMs()) + ", " + Lasted.words(away) + ".";
    }

    private static String who(boolean off) {
        return off ? "The power was away" : "The daemon stood still";
    }

    /** @param away from the last minute on record to the start  @return empty where that was but a restart */
    public static Optional<String> words(Span away) {
        if (isRestart(away)) {
            return Optional.empty();
        }
        return Optional.of("nobody minded the cones for " + Lasted.words(away) + (away.bounded() ? ""
                : ": no clock tells how long"));
    }
}
