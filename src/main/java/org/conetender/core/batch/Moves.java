package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.hatch.Development;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/** When a batch moves on by itself, because of time or degree-hours. */
public final class Moves {

    /** After a part was drawn, the rest gets this long before a second harvest is offered (guess). */
    static final long SECOND_HARVEST_MS = 2 * Units.HOUR_MS;

    private Moves() {}

    /**
     * The move that is due, if any.
     *
     * @param b the batch
     * @param timing the cone's times
     * @param done how far its cysts are, and have to come
     * @param clock now, and how long to settle
     */
    public static Optional<Change.Moved> due(Batch b, Cone.Timing timing, Progress done, Clock clock) {
        return Optional.ofNullable(switch (b.stage()) {
            case Stage.Hydrating s when clock.past(s.since(), Units.msOfHours(timing.hydrationHours())) ->
                    new Change.Moved("incubating", "hydration is over");
            case Stage.Incubating _ when done.degreeHours() >= done.k10() ->
                    new Change.Moved("hatching", "one in ten should have hatched");
            case Stage.Hatching _ when done.degreeHours() >= done.needed()
                    && restMs(b, clock.now(), clock.boots()) == 0 ->
                    new Change.Moved("ready", Reconsidered.HARVEST_POINT);
            case Stage.Settling s when clock.past(s.since(), clock.settleMs()) ->
                    new Change.Moved("settled", "the wait is over");
            case Stage.Clean _ -> null;
            case Stage.Filled _ -> null;
            case Stage.Hydrating _ -> null;
            case Stage.Incubating _ -> null;
            case Stage.Hatching _ -> null;
            case Stage.Ready _ -> null;
            case Stage.Settling _ -> null;
            case Stage.Settled _ -> null;
            case Stage.Drawing _ -> null;
            case Stage.Drained _ -> null;
            case Stage.Abandoned _ -> null;
        });
    }

    /** How long what is left behind a part that was drawn is not offered yet, ms; 0 of any other batch. */
    public static long restMs(Batch b, Moment now, Boots boots) {
        return b.marks().harvests() == 0 || !(b.stage() instanceof Stage.Hatching(Moment since)) ? 0
                : Math.max(0, SECOND_HARVEST_MS - boots.between(since, now).leastMs());
    }

    /**
     * @param development of its cysts
     * @param k10 degree-hours at which the first tenth has hatched, °C·h
     * @param needed those of the hour that was announced for it, °C·h; NaN while none is
     */
    public record Progress(Development development, double k10, double needed) {
        double degreeHours() {
            return development.degreeHours();
        }
    }

    /** @param now this tick's  @param boots of this machine  @param settleMs how long settling lasts */
    public record Clock(Moment now, Boots boots, long settleMs) {
        boolean past(Moment since, long ms) {
            return boots.between(since, now).leastMs() >= ms;
        }
    }
}
