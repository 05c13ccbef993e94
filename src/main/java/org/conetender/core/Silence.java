package org.conetender.core;

import java.util.List;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Sentences;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;

/**
 * What acknowledging does to alarms. It counts when it is durable; while the record fails it still
 * silences, for this life of the process, but nothing is written and no latch is released.
 */
final class Silence {

    private Silence() {}

    /** Whether that is an acknowledgement which no record can keep. */
    static boolean unrecorded(Work work, Ask ask) {
        return ask instanceof Ask.Acknowledge && work.image.pipes().store().isPresent();
    }

    /** Takes it all the same, and says what it is worth. */
    static void keep(Work work, Request r) {
        work.quieted.add(r);
        String why = work.image.pipes().store().orElseThrow();
        work.reply(r, false, Sentences.place(work.settings, r.cone())
                + Sentences.quieted(((Ask.Acknowledge) r.ask()).alarm(), why));
    }

    /** The alarms after the acknowledgements of this tick: those that became durable, and those kept. */
    static Alarms after(Work work, List<Pending> done) {
        long now = work.image.now().monoMs();
        Alarms next = work.before.live().alarms();
        for (Pending p : done) {
            for (Fact f : p.facts()) {
                next = f.change() instanceof Change.Told(Ask ask) ? seen(next, f.cone(), ask, now) : next;
            }
        }
        for (Request r : work.quieted) {
            next = seen(next, r.cone(), r.ask(), now);
        }
        return next;
    }

    /** The site's alarm of that name is silenced with the cone's. */
    private static Alarms seen(Alarms alarms, String cone, Ask ask, long nowMs) {
        if (!(ask instanceof Ask.Acknowledge(String id))) {
            return alarms;
        }
        boolean site = alarms.raised().stream().anyMatch(a -> a.key().equals("/" + id));
        Alarms next = alarms.acknowledged(cone, id, nowMs);
        return site ? next.acknowledged("", id, nowMs) : next;
    }
}
