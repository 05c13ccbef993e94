package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Life;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.judge.Breath;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/**
 * A power cut that animals lived through, with what they still lacked when it came: by a separation, or by
 * a cut before, since air makes good in minutes only what was missing (science.md §7.3).
 *
 * @param cut when, and how long the power was off
 * @param owed as if there had been no air for so long just before it; none where it is less than a minute
 */
record Lack(Boots.Cut cut, Span owed) {

    private static final Span NONE = Span.exactly(0);

    /** When a boot was last heard of is known to a minute, and a clock to some seconds; ms (guess). */
    private static final long SHORT_MS = 2 * Units.MINUTE_MS;

    /** More than the whole of what water holds cannot be missing. */
    private static final long WHOLE_MS = Units.msOfMinutes(Breath.LONGEST_WHOLE_MINUTES);

    /** In their order. @param boots in which these cuts lie  @param book of the animals' cone */
    static List<Lack> of(List<Boots.Cut> cuts, Boots boots, ConeBook book) {
        if (cuts.isEmpty()) {
            return List.of();
        }
        Map<String, List<Span>> pauses = pauses(book);
        List<Lack> out = new ArrayList<>();
        Span owed = NONE;
        for (Boots.Cut c : cuts) {
            Boots.Boot boot = boots.known().get(c.from());
            owed = through(owed, boot.lastMs(), pauses.getOrDefault(boot.id(), List.of()));
            out.add(new Lack(c, owed));
            // Of one that may have lasted no time only what is sure: many of them would add up to much.
            owed = plus(owed, c.off().mostMs() < SHORT_MS ? Span.exactly(c.off().leastMs()) : c.off());
        }
        return out;
    }

    /** What is missing after a boot of so many ms, whose air was off in these. */
    private static Span through(Span before, long ms, List<Span> pauses) {
        Span owed = before;
        long at = 0;
        for (Span p : pauses) {
            long back = Math.min(ms, p.mostMs());
            owed = plus(aired(owed, p.leastMs() - at), Span.exactly(Math.max(0, back - p.leastMs())));
            at = back;
        }
        owed = aired(owed, ms - at);
        return owed.mostMs() < Units.MINUTE_MS ? NONE : owed;
    }

    private static Span plus(Span owed, Span off) {
        return new Span(Math.min(WHOLE_MS, owed.leastMs() + Math.min(WHOLE_MS, off.leastMs())),
                Math.min(WHOLE_MS, owed.mostMs() + Math.min(WHOLE_MS, off.mostMs())));
    }

    private static Span aired(Span owed, long ms) {
        double minutes = Units.minutes(Math.max(0, ms));
        return new Span((long) Oxygen.missingAfterAir(owed.leastMs(), minutes),
                (long) Oxygen.missingAfterAir(owed.mostMs(), minutes));
    }

    /** When separations stopped the air, by boot, monotonic ms; one that a boot ended in goes on for ever. */
    private static Map<String, List<Span>> pauses(ConeBook book) {
        Map<String, List<Span>> out = new HashMap<>();
        Batch b = book.before().batch();
        for (Fact f : book.facts()) {
            Moment was = b.stage().airOff();
            b = Life.after(b, f);
            Moment off = b.stage().airOff();
            if (was == null && off != null) {
                out.computeIfAbsent(off.boot(), _ -> new ArrayList<>())
                        .add(new Span(off.monoMs(), Long.MAX_VALUE));
            } else if (was != null && off == null && f.at().sameBoot(was) && out.containsKey(was.boot())) {
                List<Span> its = out.get(was.boot());
                its.set(its.size() - 1, new Span(its.getLast().leastMs(), f.at().monoMs()));
            }
        }
        return out;
    }
}
