package org.conetender.core.alarm;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The messages that go out, and the last one that was for many incidents.
 *
 * @param gate that keeps them apart
 * @param many what the last one for many said; empty once none of it stands any more
 */
public record Calls(Gate gate, Optional<Message> many) {

    static final Calls NONE = new Calls(Gate.FRESH, Optional.empty());

    /** What is said now. @param all the alarms by key; those told are noted there */
    List<Message> messages(Incidents incidents, Map<String, Alarm> all, long nowMs) {
        List<Alarm> due = incidents.due();
        if (due.isEmpty()) {
            return List.of();
        }
        int count = gate.messages(due, nowMs);
        if (count == 0) {
            return List.of();
        }
        if (count == due.size()) {
            return due.stream().map(a -> Message.of(List.of(incidents.tell(a, Alarm.Way.ALONE)))).toList();
        }
        List<Alarm> told = new ArrayList<>();
        due.forEach(a -> told.add(incidents.tell(a, Alarm.Way.AMONG)));
        // What was told like this before and still waits for an answer is said once more, so that nothing
        // is lost with the older sentence.
        all.values().stream().filter(a -> a.told().way() == Alarm.Way.AMONG)
                .filter(a -> !a.acknowledged() && !a.shelved() && !a.follows())
                .filter(a -> told.stream().noneMatch(t -> t.key().equals(a.key()))).forEach(told::add);
        told.sort(Incidents.ORDER);
        return List.of(Message.of(List.copyOf(told)));
    }

    /** @param all the alarms that stand, by key */
    Calls after(List<Message> said, Map<String, Alarm> all, long nowMs) {
        if (said.isEmpty() && many.isEmpty()) {
            return this;
        }
        Optional<Message> last = said.stream().filter(Message::many).findFirst().or(() -> many);
        return new Calls(gate.after(said.size(), nowMs), last.filter(m -> m.alarms().stream()
                .map(a -> all.get(a.key())).anyMatch(a -> a != null && a.told().way() == Alarm.Way.AMONG)));
    }
}
