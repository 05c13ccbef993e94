package org.conetender.core;

import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Moves;
import org.conetender.core.batch.Reconsidered;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Growth;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Boots;

/** What time and degree-hours bring about in one tick. */
final class Ripening {

    private Ripening() {}

    /** Moves every batch that is due, also the automatic ones, and takes back what was assumed wrongly. */
    static void move(Work work) {
        for (Cone c : work.settings.cones()) {
            // A report on its way may change what is due, a tick or two later; one that hangs is not awaited.
            if (work.ledger.busy(c.id())
                    && work.ledger.owedMs(work.image.now().monoMs()) < Owed.HANGS_MS) {
                continue;
            }
            Batch b = work.batch(c.id());
            Boots boots = work.ledger.book().boots();
            Moves.due(b, c.timing(), progress(work, c,
                    work.live(c.id()).growth().dependable(b, work.image.now(), boots)),
                    new Moves.Clock(work.image.now(), boots, work.caps(c).waitMs()))
                    .or(() -> reconsidered(work, c)).ifPresent(m -> work.write(c.id(), m));
            Offering.automatic(work, c).ifPresent(m -> work.write(c.id(), m));
        }
    }

    /**
     * A stage that only assumed hours had reached, once they are known and fall short of it: of what was
     * reckoned with them, which is as wide as they were only while they were not.
     */
    private static Optional<Change.Moved> reconsidered(Work work, Cone c) {
        Growth g = work.live(c.id()).growth();
        return g.crossings().settled() && work.live(c.id()).outlook().water().known()
                && g.lastAt().sameBoot(work.image.now())
                && g.lastAt().monoMs() > work.before.live().begun().monoMs()
                ? Reconsidered.due(work.ledger.book().cone(c.id()), progress(work, c,
                        g.doneOf(work.batch(c.id())))) : Optional.empty();
    }

    private static Moves.Progress progress(Work work, Cone c, Development done) {
        return new Moves.Progress(done, work.speed(c.id()).k10(), work.live(c.id()).needed());
    }
}
