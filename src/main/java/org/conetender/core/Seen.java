package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.conetender.core.alarm.Again;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook.Latch;
import org.conetender.core.face.ShelfWords;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Text;

/** What follows from an acknowledgement: whether heat comes back, whether it is told again, and the shelf. */
final class Seen {

    private Seen() {}

    /** A clause with its sentences. @param releases what the acknowledgement sets free */
    static String of(Work work, Cone c, String alarm, List<Change> releases) {
        Alarms alarms = work.before.live().alarms();
        Optional<Alarm> a = alarms.raised(c.id(), alarm);
        List<Latch> left = new ArrayList<>(work.ledger.book().cone(c.id()).latches());
        left.removeIf(l -> releases.contains(new Change.Released(l.guard(), Desk.RELEASED)));
        boolean locks = a.filter(x -> !x.cone().isEmpty() && x.held() != Alarm.Held.BY_CAUSE).isPresent();
        String heat = !locks ? a.map(Seen::quiet).orElse("")
                : left.isEmpty() ? "; heat is allowed again and comes back where it is wanted"
                : "; heat stays locked off until that is acknowledged with its cause gone: "
                        + left.stream().map(Latch::why).collect(Collectors.joining("; "));
        return heat + shelf(work, a, alarms.shelves()) + "." + a.map(x -> others(alarms, x))
                .orElse("");
    }

    /** What was named with it and locks heat as well: it waits for its own answer, and is told again. */
    private static String others(Alarms alarms, Alarm a) {
        return alarms.named(a).stream().filter(f -> f.held() != Alarm.Held.BY_CAUSE && !f.acknowledged())
                .map(f -> Text.of(" '%s' of cone %s locks its heat off by itself, until that is acknowledged "
                        + "with its cause gone: conetender tell %s acknowledge %s.", f.kind().id(), f.cone(),
                        f.cone(), f.kind().id())).collect(Collectors.joining());
    }

    private static String quiet(Alarm a) {
        boolean locked = a.kind() == AlarmKind.CRASH_LOOP || a.kind() == AlarmKind.RECORD_DAMAGED;
        return locked ? "; heat is allowed again"
                : !a.active() ? "; it leaves the list, for its cause is over"
                : "; it is not told again " + (Again.minutesOnly(a.kind()) ? "for ten minutes"
                        : "while its cause lasts");
    }

    /** It outlasts the alarm, so that whoever shelved it is not told of the next one either. */
    private static String shelf(Work work, Optional<Alarm> a, Map<String, Long> shelves) {
        return a.map(x -> shelves.get(x.key())).map(untilMs -> ". It stays shelved until "
                + ShelfWords.until(work.settings, untilMs, work.image.now())
                + ", so nobody is called if it comes again before that; 'shelve " + a.get().kind().id()
                + " 0' ends the shelf").orElse("");
    }
}
