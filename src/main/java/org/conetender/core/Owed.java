package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.conetender.core.face.Sentences;
import org.conetender.core.image.Commit;
import org.conetender.core.image.Image;
import org.conetender.core.image.Request;
import org.conetender.core.unit.Units;

/**
 * The answers that the record owes us. A write that hangs does not fail, so nobody else notices it: a
 * record that stays silent for too long counts as one that cannot be written.
 */
final class Owed {

    /** A person who tapped a button begins to wonder (guess); the record needs a tick or two. */
    static final long WONDER_MS = 2 * Units.SECOND_MS;
    /** No disk that works takes so long (guess: a worn card stalls for a few seconds while it erases). */
    static final long HANGS_MS = 30 * Units.SECOND_MS;

    private Owed() {}

    /** The image, in which a record that has owed an answer for too long is in trouble. */
    static Image seen(State before, Ledger settled, Image image) {
        long now = image.now().monoMs();
        OptionalLong minute = minute(before.live().timers(), image, false);
        long owedMs = Math.max(settled.owedMs(now), now - minute.orElse(now));
        Image.Pipes p = image.pipes();
        if (owedMs < HANGS_MS || p.store().isPresent()) {
            return image;
        }
        return new Image(image.now(), image.probes(), image.contacts(), image.inbox(), new Image.Pipes(
                Optional.of("it has not answered for half a minute; the disk may be failing, or another "
                        + "program holds the record"), p.history(), p.broker(), p.lateMs(), p.unset()));
    }

    /** Since when a checkpoint has been owed after this tick. @param another whether one is handed over */
    static OptionalLong minute(State.Timers was, Image image, boolean another) {
        boolean answered = false;
        for (Commit c : image.inbox().commits()) {
            answered |= c.seq() == Commit.MINUTE;
        }
        OptionalLong since = answered ? OptionalLong.empty() : was.minuteOwed();
        return another && since.isEmpty() ? OptionalLong.of(image.now().monoMs()) : since;
    }

    /** What those are told whose answer is late. @param waiting requests that wait behind another */
    static List<Result.Note> notes(Work work, List<Request> waiting) {
        List<Result.Note> notes = new ArrayList<>();
        for (Pending p : work.ledger.pending()) {
            p.request().ifPresent(r -> {
                String at = Sentences.place(work.settings, r.cone());
                String word = r.ask().word();
                if (passed(work, p, WONDER_MS)) {
                    notes.add(new Result.Note(r, at + Sentences.late(word, p.takesAway())));
                } else if (passed(work, p, HANGS_MS)) {
                    notes.add(new Result.Note(r, at + Sentences.hanging(word, p.takesAway())));
                }
            });
        }
        for (Request r : waiting) {
            boolean came = !work.before.live().timers().waiting().contains(r);
            if (work.ledger.pending().stream().filter(p -> p.cone().equals(r.cone())).anyMatch(p ->
                    passed(work, p, WONDER_MS) || came && owedMs(work, p) >= WONDER_MS)) {
                notes.add(new Result.Note(r, Sentences.place(work.settings, r.cone())
                        + Sentences.behind(r.ask().word())));
            }
        }
        return notes;
    }

    /** Whether this is the tick in which it has been owed for that long. */
    private static boolean passed(Work work, Pending p, long ms) {
        return owedMs(work, p) >= ms && owedMs(work, p) - work.dtMs < ms;
    }

    private static long owedMs(Work work, Pending p) {
        return p.owedMs(work.image.now().monoMs());
    }
}
