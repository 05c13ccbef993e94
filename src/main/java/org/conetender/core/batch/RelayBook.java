package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * What is durable of the relay that switches a cone's heater. It counts on through batches and set-points;
 * an orderly end writes what was counted, a kill loses it: fewer than {@link #STEP} closings where the
 * record takes facts, for which the next life adds half of a step.
 *
 * @param closings of all relays that this cone ever had
 * @param exchanged what they were at each exchange, oldest first
 * @param marks what they were when they were last written down, oldest first
 */
public record RelayBook(long closings, List<Long> exchanged, List<Mark> marks) {

    /** Written after so many closings: three facts a day, and 0.05 % of a usual life (guess). */
    public static final int STEP = 50;

    /** So many marks are kept: the pace is that of ten days at 150 a day (guess). */
    static final int MARKS = 32;

    /** A pace is not told from less than a day, since days have their nights. */
    private static final long LEAST_MS = 24 * Units.HOUR_MS;

    static final RelayBook NEW = new RelayBook(0, List.of(), List.of());

    /** @param at when  @param closings what they were then */
    public record Mark(Moment at, long closings) {}

    public RelayBook {
        exchanged = List.copyOf(exchanged);
        marks = List.copyOf(marks.subList(Math.max(0, marks.size() - MARKS), marks.size()));
    }

    /** Closings of the present relay. @param ever those of all relays, as far as they are counted */
    public long used(long ever) {
        return ever - (exchanged.isEmpty() ? 0 : exchanged.getLast());
    }

    /** Whether so many are worth a fact. @param ever as for {@link #used} */
    public boolean due(long ever) {
        return ever - closings >= STEP;
    }

    /**
     * Closings a day at the pace of the last marks; empty where they are too few, too near or too uncertain
     * in time.
     *
     * @param ever as for {@link #used}
     */
    public OptionalDouble perDay(long ever, Boots boots, Moment now) {
        for (Mark m : marks) {
            var since = boots.between(m.at(), now);
            // A time that is hardly known, the next mark may know better.
            if (since.bounded() && since.leastMs() >= LEAST_MS && since.mostMs() <= 2 * since.leastMs()) {
                return OptionalDouble.of((ever - m.closings()) * (24.0 * Units.HOUR_MS) / since.leastMs());
            }
        }
        return OptionalDouble.empty();
    }

    RelayBook worn(long ever, Moment at) {
        List<Mark> next = new ArrayList<>(marks);
        next.add(new Mark(at, ever));
        return new RelayBook(ever, exchanged, next);
    }

    RelayBook another() {
        List<Long> next = new ArrayList<>(exchanged);
        next.add(closings);
        return new RelayBook(closings, next, marks);
    }

    /** The last exchange was reported by mistake. */
    RelayBook sameAsBefore() {
        return exchanged.isEmpty() ? this
                : new RelayBook(closings, exchanged.subList(0, exchanged.size() - 1), marks);
    }
}
