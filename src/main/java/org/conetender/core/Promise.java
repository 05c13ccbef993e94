package org.conetender.core;

import java.util.Optional;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.settings.Site;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * The feed for which a batch was forecast to be ready, so that a moved forecast is told where it matters and
 * nowhere else: in the last hours before that feed, and only if it is missed (design.md, alarms must not cry
 * wolf). A batch that was never to be ready for it misses nothing. Forgotten with the process.
 *
 * @param feedWallMs that feed, wall ms; 0 for none
 * @param missed whether it will not be ready for it
 */
public record Promise(long feedWallMs, boolean missed) {

    static final Promise NONE = new Promise(0, false);

    /** Told only within this time before the feed (design.md). */
    private static final long TOLD_WITHIN_MS = 6 * Units.HOUR_MS;
    /** A forecast sways by minutes; less than this is no miss (guess). */
    private static final long SWAY_MS = 10 * Units.MINUTE_MS;

    /** After a new forecast, made now. */
    Promise after(Forecast f, Site.Feeding feeding, Moment now) {
        Optional<Long> feed = Offering.nextFeed(feeding, now).map(z -> z.toInstant().toEpochMilli())
                .filter(ms -> now.wallTrusted() && ms - now.wallMs() <= TOLD_WITHIN_MS);
        if (feed.isEmpty()) {
            return NONE;
        }
        double hours = f.reachable() ? f.ready().announced() : Double.POSITIVE_INFINITY;
        double lateMs = now.wallMs() + hours * Units.HOUR_MS - feed.get();
        boolean made = feedWallMs == feed.get();
        return lateMs <= 0 ? new Promise(feed.get(), false)
                : !made ? NONE : new Promise(feedWallMs, missed || lateMs > SWAY_MS);
    }
}
