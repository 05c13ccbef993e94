package org.conetender.core.alarm;

import java.util.List;

/**
 * What a person is told at once: one incident, or many of them in one sentence.
 *
 * @param alarms the first causes, most urgent first; what follows from each is named in it
 * @param second whether the second person is called as well
 */
public record Message(List<Alarm> alarms, boolean second) {

    static Message of(List<Alarm> alarms) {
        return new Message(alarms, alarms.stream().anyMatch(Again::forSecond));
    }

    /** Whether it is for many incidents. */
    public boolean many() {
        return alarms.size() > 1;
    }
}
