package org.conetender.core;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Stage;
import org.conetender.core.guard.Suffocation;
import org.conetender.core.guard.View;
import org.conetender.core.judge.AirTrack;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Site;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;

/** When a ripe batch should be harvested: so long before a feed that it can be drawn and rinsed. */
public final class Offering {

    private Offering() {}

    /** The next feed at or after that moment, on the wall clock; empty where no feeds are configured. */
    public static Optional<ZonedDateTime> nextFeed(Site.Feeding feeding, Moment now) {
        ZonedDateTime t = Instant.ofEpochMilli(now.wallMs()).atZone(feeding.zone());
        for (int day = 0; day < 2; day++) {
            for (LocalTime h : feeding.hours()) {
                ZonedDateTime feed = t.toLocalDate().plusDays(day).atTime(h).atZone(feeding.zone());
                if (!feed.isBefore(t)) {
                    return Optional.of(feed);
                }
            }
        }
        return Optional.empty();
    }

    /** Whether it is time to start separating for the next feed. */
    static boolean time(Site.Feeding feeding, Moment now) {
        return nextFeed(feeding, now)
                .map(f -> f.toInstant().toEpochMilli() - now.wallMs() <= feeding.leadMinutes() * 60_000L)
                .orElse(false);
    }

    /** The automatic start of a separation, where it is allowed and provably safe (design.md). */
    static Optional<Change.Moved> automatic(Work work, Cone c) {
        Batch b = work.batch(c.id());
        boolean due = c.timing().automaticSettling()
                && b.stage() instanceof Stage.Ready r && work.live(c.id()).ripe(b)
                && work.image.now().wallTrusted()
                && time(work.settings.site().feeding(), work.image.now())
                && !returnedLately(work.since(r.since()));
        if (!due) {
            return Optional.empty();
        }
        View.Caps caps = work.caps(c);
        boolean safe = !c.fittings().air().geometry().canSiphon()
                && airIsFit(work, c) && !caps.tooHurried() && work.ledger.book().away().isEmpty()
                && work.ledger.book().lives().locks().isEmpty()
                && work.image.pipes().store().isEmpty() && !work.ledger.busy(c.id()) && !work.handled(c.id());
        return safe ? Optional.of(new Change.Moved("settling", "it is time for the next feed"))
                : Optional.empty();
    }

    /**
     * Whether all that is known of its air and water is known to be well. Nobody stands by who could see
     * more: what a person may still decide to do, the daemon by itself does not.
     */
    private static boolean airIsFit(Work work, Cone c) {
        ConeJudgement j = work.judged.get(c.id());
        boolean proven = !c.fittings().air().proof() || j.air().proof() == AirTrack.Proof.PROVEN;
        return proven && !work.batch(c.id()).marks().valveShut() && j.belief() instanceof Belief.Trusted
                && Suffocation.notYet(work.view(c)).isEmpty();
    }

    /** After a separation nobody came to, the next attempt waits for the next feed. */
    private static boolean returnedLately(Span since) {
        return since.leastMs() < 60 * 60_000L;
    }
}
