package org.conetender.core.alarm;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.conetender.core.alarm.Alarms.Cause;
import org.conetender.core.unit.Moment;

/** Alarms by hand, second by second, and what was said. */
final class Bell {

    Alarms alarms = Alarms.NONE;
    final List<Message> messages = new ArrayList<>();
    /** When each message came, s. */
    final List<Long> at = new ArrayList<>();
    final Map<String, Long> shelves = new HashMap<>();
    long seconds;

    static Cause cause(String cone, AlarmKind k) {
        return new Cause(k.siteWide() ? "" : cone, k, "something is wrong", Alarm.Held.BY_CAUSE);
    }

    Bell pass(long s, List<Cause> causes) {
        for (long i = 0; i < s; i++) {
            shelves.values().removeIf(until -> until <= nowMs());
            Alarms.Turn t = alarms.shelving(shelves).after(causes, new Moment("boot-1", nowMs(), 0, true));
            alarms = t.next();
            t.messages().forEach(m -> {
                messages.add(m);
                at.add(seconds);
            });
            seconds++;
        }
        return this;
    }

    Bell pass(long s, Cause... causes) {
        return pass(s, List.of(causes));
    }

    long nowMs() {
        return seconds * 1_000;
    }

    void acknowledge(String cone, AlarmKind k) {
        alarms = alarms.acknowledged(cone, k.id(), nowMs());
    }

    void shelve(String cone, AlarmKind k, long forS) {
        shelves.put(Alarm.key(cone, k), nowMs() + forS * 1_000);
    }

    Alarm alarm(String key) {
        return alarms.standing().get(key);
    }

    /** The keys of each message: its alarms, and in brackets what it named with them. */
    List<String> said() {
        return messages.stream().map(m -> String.join(" ", m.alarms().stream()
                .map(a -> a.key() + (a.told().with().isEmpty() ? "" : a.told().with())).toList())).toList();
    }
}
