package org.conetender.core;

import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Obvious;
import org.conetender.core.batch.Reports;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Request;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/**
 * The hand button: when it is let go, the time it was held says what is meant. A short press is the
 * obvious next step, a dangerous one must be held two seconds, five seconds within a minute of the
 * last report take it back (design.md; the five seconds are a guess). One that was stuck says nothing.
 */
final class Buttons {

    private static final long DANGEROUS_MS = 2 * Units.SECOND_MS;
    private static final long UNDO_MS = 5 * Units.SECOND_MS;
    private static final long UNDO_WITHIN_MS = Units.MINUTE_MS;
    /** No hand holds it for longer: it is wet or jammed (guess). */
    private static final long STUCK_MS = 20 * Units.SECOND_MS;

    private Buttons() {}

    /** How long the button has been held after this tick; 0 while it is up. */
    static long heldMs(Work work, Cone c) {
        boolean down = c.fittings().button() && level(work, c) == Level.CLOSED;
        long before = work.live(c.id()).pressedForMs();
        // From the tick that first saw it down, so that a press is never taken for longer than it was.
        return !down ? 0 : before == 0 ? 1 : before + work.dtMs;
    }

    private static Level level(Work work, Cone c) {
        return work.image.contact(c.id(), ".button");
    }

    /** Whether its lamp burns: while a press that is long enough would be taken. */
    static boolean lit(Work work, Cone c, Desk desk) {
        boolean records = work.image.pipes().store().isEmpty();
        return c.fittings().button() && obvious(work, c).map(n -> new Ask.Did(n.step()))
                .filter(ask -> records || Reports.takesAway(new Change.Told(ask)))
                .filter(ask -> desk.refusal(new Request("button-lamp", Request.Origin.fresh("button", c.id()),
                        c.id(), ask), c).isEmpty()).isPresent();
    }

    private static Optional<Obvious.Next> obvious(Work work, Cone c) {
        return Obvious.after(work.batch(c.id()), c.fittings().air().geometry().canSiphon());
    }

    /** The request that a button just let go makes. */
    static Optional<Request> pressed(Work work, Cone c) {
        long held = work.live(c.id()).pressedForMs();
        // A contact that cannot be read any more was not let go: the press does not count.
        if (held == 0 || level(work, c) != Level.OPEN || held > STUCK_MS) {
            return Optional.empty();
        }
        String id = "button-" + c.id() + "-" + work.image.now().boot() + "-" + work.image.now().monoMs();
        return meaning(work, c, held)
                .map(ask -> new Request(id, Request.Origin.fresh("button", c.id()), c.id(), ask));
    }

    private static Optional<Ask> meaning(Work work, Cone c, long held) {
        Optional<Fact> last = work.ledger.book().cone(c.id()).lastReport();
        boolean fresh = last.isPresent() && work.since(last.get().at()).mostMs() < UNDO_WITHIN_MS;
        if (held >= UNDO_MS && fresh) {
            return Optional.of(new Ask.Withdraw("last"));
        }
        return obvious(work, c)
                .filter(n -> !n.dangerous() || held >= DANGEROUS_MS)
                .map(n -> new Ask.Did(n.step()));
    }
}
