package org.conetender.core.face;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.conetender.core.ConeLive;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Stage;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Harvest;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/** What will be ready for the next feed: one sentence for all cones (design.md, alarms must not cry wolf). */
final class Digest {

    /** Where the harvest point is not in sight it is put four days ahead, h. */
    private static final double OUT_OF_SIGHT_H = 96;

    private Digest() {}

    /** @param feedMs the feed's wall time, ms */
    static String of(Settings settings, State s, long feedMs, Moment now) {
        ZoneId zone = settings.site().feeding().zone();
        List<String> parts = new ArrayList<>();
        for (Cone c : settings.cones()) {
            ConeLive live = s.live().cones().get(c.id());
            Batch b = s.book().cone(c.id()).batch();
            Stage stage = b.stage();
            Optional<NextStep.Unripe> unripe = NextStep.Unripe.of(live, b, now);
            if (stage instanceof Stage.Ready && Sentences.spoiled(b)) {
                parts.add("cone " + c.id() + " is not to be fed");
            } else if (unripe.isPresent()) {
                parts.add("cone " + c.id() + " is not ripe yet" + unripe.get().words(settings, c, now));
            } else if (stage instanceof Stage.Ready) {
                boolean stale = keepsMs(live, b, now).stream().anyMatch(k -> k < feedMs
                        - settings.site().feeding().leadMinutes() * Units.MINUTE_MS);
                parts.add("cone " + c.id() + " is ready" + (stale ? ", but past its best by then" : "")
                        + (Sentences.doubts(b).isEmpty() ? "" : (stale ? "; " : ", but ")
                        + "look before feeding"));
            } else if (stage.airOff() != null) {
                parts.add("cone " + c.id() + " is being harvested");
            } else {
                live.outlook().foretold(now).filter(Forecast::reachable)
                        .map(f -> readyAtMs(live, live.readyH(f.ready().announced(), b, now,
                                s.book().boots()), now))
                        .filter(t -> t <= feedMs).ifPresent(t -> parts.add("cone " + c.id() + " at "
                                + Sentences.clock(t, zone, now.wallMs())));
            }
        }
        String feed = Sentences.clock(feedMs, zone, now.wallMs());
        return parts.isEmpty() ? "For the feed at " + feed + " no cone is sure to be ready."
                : "For the feed at " + feed + ": " + String.join(", ", parts) + ".";
    }

    /** The wall time until which most of its food is there, ms; of a ripe batch that is measured. */
    static OptionalLong keepsMs(ConeLive live, Batch b, Moment now) {
        return !(b.stage() instanceof Stage.Ready) || live.unripe(b) || live.outlook().lapsed(now)
                ? OptionalLong.empty() : live.outlook().harvest().map(Harvest::untilHours)
                .filter(Double::isFinite).map(h -> OptionalLong.of(readyAtMs(live, h, now)))
                .orElse(OptionalLong.empty());
    }

    /** The wall time so many hours after the forecast was made, ms. */
    static long readyAtMs(ConeLive live, double hours, Moment now) {
        long madeWallMs = now.wallMs() - (now.monoMs() - live.outlook().atMs());
        return madeWallMs + Units.msOfHours(Double.isFinite(hours) ? hours : OUT_OF_SIGHT_H);
    }
}
