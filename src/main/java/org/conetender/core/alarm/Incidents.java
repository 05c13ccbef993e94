package org.conetender.core.alarm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.unit.Units;

/**
 * Which alarms belong to one incident, and of which a person is to be told. An incident is the alarm that was
 * there first with all that it explains ({@link Follow}): it is told once, with the others named. One that is
 * dangerous is never left unsaid: unless a message named it that nobody has answered, it has its own.
 */
final class Incidents {

    /** Most urgent first, then first-out. */
    static final Comparator<Alarm> ORDER = Comparator.comparing((Alarm a) -> a.kind().priority())
            .thenComparing(a -> !a.kind().dangerous()).thenComparing(Follow.FIRST_OUT);

    /** What comes so soon after its cause was acknowledged belongs to what a person went to see (guess). */
    static final long SOON_MS = 2 * Units.MINUTE_MS;

    private final Map<String, Alarm> all;
    private final long nowMs;

    /** @param all by key; worked on */
    Incidents(Map<String, Alarm> all, long nowMs) {
        this.all = all;
        this.nowMs = nowMs;
    }

    /** Notes of each what it follows from. One whose first cause is over stands for itself, and is new. */
    void fold() {
        List<Alarm> causes = new ArrayList<>(all.values());
        causes.removeIf(a -> !explains(a));
        causes.sort(Follow.FIRST_OUT);
        Map<String, Optional<String>> firsts = new HashMap<>();
        all.values().forEach(a -> first(a, causes, firsts));
        all.replaceAll((key, a) -> {
            Optional<String> first = firsts.get(key);
            if (first.isEmpty() && !a.follows()) {
                return a;
            }
            Alarm next = a.with(new Alarm.Aside(first, a.aside().shelvedUntilMs()));
            boolean freed = a.follows() && first.isEmpty() && !a.acknowledged() && !called(a);
            return freed ? next.with(a.told().anew()) : next;
        });
    }

    /**
     * Whether it goes on as it was told: an answer has just named it, or it was called though what it
     * followed from stands. A lock whose own cause comes and goes follows again each time.
     */
    private boolean called(Alarm a) {
        Alarm from = all.get(a.aside().follows().orElseThrow());
        boolean stands = from != null && explains(from) && from.acknowledged();
        return a.told().times() > 0 && (a.told().atMs() == nowMs
                || stands && a.held() == Alarm.Held.ONLY_BY_LATCH);
    }

    /** What is there first of all that leads to it, by key. @param known of each, found out on the way */
    private Optional<String> first(Alarm a, List<Alarm> causes, Map<String, Optional<String>> known) {
        Optional<String> found = known.get(a.key());
        if (found != null) {
            return found;
        }
        // No kind leads back to itself, and of one kind only the earlier leads to the later.
        for (int i = 0; i < causes.size() && found == null; i++) {
            Alarm c = causes.get(i);
            if (Follow.explains(c, a)) {
                Alarm first = first(c, causes, known).map(all::get).orElse(c);
                found = outlives(first, a) ? null : Optional.of(first.key());
            }
        }
        known.put(a.key(), found == null ? Optional.empty() : found);
        return known.get(a.key());
    }

    /** What is over, or put aside, explains nothing that is there now. */
    private boolean explains(Alarm a) {
        return a.raised() && !a.shelved() && a.goneMs(nowMs) < Alarms.OFF_DELAY_MS;
    }

    /**
     * Whether it is to be told by itself though that one explains it, which is acknowledged and so is told no
     * more and never names it: it locks heat until it is acknowledged itself, or it came to another cone
     * since. In its own cone nothing else is to be done about it meanwhile.
     */
    private static boolean outlives(Alarm first, Alarm a) {
        if (!first.acknowledged()) {
            return false;
        }
        boolean late = a.course().since().monoMs() - first.told().acknowledgedAtMs().getAsLong() > SOON_MS;
        boolean here = !a.cone().isEmpty() && a.cone().equals(first.cone());
        return a.held() == Alarm.Held.ONLY_BY_LATCH
                || late && !here && !first.told().with().contains(a.key());
    }

    /** Of which a person is to be told, each in a message that names what follows from it; in order. */
    List<Alarm> due() {
        List<Alarm> out = new ArrayList<>(all.values());
        out.removeIf(a -> a.follows() || !waits(a));
        Set<String> named = new HashSet<>();
        out.forEach(a -> named.addAll(with(a)));
        all.forEach((key, a) -> {
            if (a.follows() && a.kind().dangerous() && waits(a) && !named.contains(key) && !covered(a)) {
                out.add(a);
            }
        });
        out.sort(ORDER);
        return out;
    }

    /**
     * Whether a message about its first cause named it, and is repeated until somebody answers. Who has
     * answered it alone has silenced it for minutes, and not until that comes again.
     */
    private boolean covered(Alarm a) {
        Alarm first = all.get(a.aside().follows().orElseThrow());
        return a.told().times() > 0 && !a.acknowledged() && !first.acknowledged();
    }

    /** What follows from that one and is there now, by key. */
    private List<String> with(Alarm first) {
        return all.values().stream().filter(a -> a.aside().follows().filter(first.key()::equals).isPresent())
                .filter(a -> a.course().goneAtMs().isEmpty() && !a.shelved()).map(Alarm::key).toList();
    }

    /** Whether it is time to tell of it, were it not for others. */
    private boolean waits(Alarm a) {
        Alarm.Told t = a.told();
        boolean there = a.course().goneAtMs().isEmpty();
        if (!a.raised() || a.shelved()) {
            return false;
        }
        if (a.acknowledged()) {
            return there && nowMs - t.acknowledgedAtMs().getAsLong() >= Again.quietMs(a.kind());
        }
        // What is over need not be told, save what stays true.
        return t.times() == 0 ? there || a.kind().standsUntilSeen()
                : there && nowMs - t.atMs() >= Again.afterMs(a.kind(), t.times());
    }

    /** Notes that a person is told of it now. @return it as it is told */
    Alarm tell(Alarm due, Alarm.Way way) {
        List<String> named = with(due);
        for (String key : named) {
            Alarm f = all.get(key);
            if (!f.acknowledged() || waits(f)) {
                all.put(key, f.with(f.told().again(nowMs, List.of(), Alarm.Way.NAMED, false)));
            }
        }
        boolean mended = due.held() == Alarm.Held.ONLY_BY_LATCH;
        Alarm.Told again = due.told().again(nowMs, named, way, mended);
        Alarm told = due.asItIs().with(mended ? again : again.onceMore(false));
        all.put(told.key(), told);
        return told;
    }
}
