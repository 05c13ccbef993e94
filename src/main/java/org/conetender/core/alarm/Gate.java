package org.conetender.core.alarm;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.unit.Units;

/**
 * When the next message may go out. One incident is told at once. Who was called a moment ago hears the rest
 * together: a telephone that rings fifty times is put away.
 *
 * @param sentMs when the last messages went out, monotonic ms, oldest first
 */
record Gate(List<Long> sentMs) {

    static final Gate FRESH = new Gate(List.of());

    /** After so many messages within {@link #WITHIN_MS} the next ones are told together (guess). */
    static final int MOST = 2;

    /** A flood is counted over ten minutes (control.md §7, after EEMUA 191); ours is far stricter. */
    static final long WITHIN_MS = 10 * Units.MINUTE_MS;

    /** Two messages are this far apart at least, so that what belongs together comes together (guess). */
    static final long APART_MS = Units.MINUTE_MS;

    /** Of these, how many messages may go out now: each its own, one for all, or none. */
    int messages(List<Alarm> due, long nowMs) {
        int lately = lately(nowMs).size();
        boolean danger = due.stream().anyMatch(a -> a.kind().dangerous());
        if (lately > 0 && nowMs - sentMs.getLast() < APART_MS || lately >= MOST && !danger) {
            return 0;
        }
        return lately + due.size() <= MOST ? due.size() : Math.min(1, due.size());
    }

    Gate after(int messages, long nowMs) {
        if (messages == 0) {
            return this;
        }
        List<Long> next = new ArrayList<>(lately(nowMs));
        for (int i = 0; i < messages; i++) {
            next.add(nowMs);
        }
        return new Gate(List.copyOf(next));
    }

    private List<Long> lately(long nowMs) {
        return sentMs.stream().filter(t -> nowMs - t < WITHIN_MS).toList();
    }
}
