package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * What the room does in the course of a day, learnt from its own probe: the mean of each hour of the day, in
 * which the last days count most. Hours are those of a wall clock that is trusted, in UTC: people and heating
 * keep them all year but for two nights. Immutable; 24 figures, however long the daemon runs.
 *
 * @param hours of the day, from midnight on
 * @param open the hour that is being measured
 */
public record RoomDay(List<Hour> hours, Open open) {

    public static final int HOURS = 24;

    /** @param meanC °C, NaN while nobody has measured it  @param days that it was made of, 0 to 4 */
    public record Hour(double meanC, int days) {
        public static final Hour UNKNOWN = new Hour(Double.NaN, 0);

        private Hour with(double c) {
            int n = Math.min(days + 1, MOST_DAYS);
            return new Hour(days == 0 ? c : meanC + (c - meanC) / n, n);
        }
    }

    /** @param number hours since 1970, UTC  @param degreeMs temperature times time, sum  @param ms so far */
    record Open(long number, double degreeMs, long ms) {
        static final Open NONE = new Open(Long.MIN_VALUE, 0, 0);
    }

    /** Nobody has measured anything. */
    public static final RoomDay NONE = new RoomDay(Collections.nCopies(HOURS, Hour.UNKNOWN), Open.NONE);

    /** A new day counts a quarter once so many have been seen (*guess*: weather lasts some days). */
    public static final int MOST_DAYS = 4;

    /** An hour that was measured for less than half of it says nothing (*guess*). */
    private static final long LEAST_MS = Units.HOUR_MS / 2;

    /** @throws IllegalArgumentException unless it is a day */
    public RoomDay {
        hours = List.copyOf(hours);
        if (hours.size() != HOURS) {
            throw new IllegalArgumentException("a day has 24 hours, got " + hours.size());
        }
    }

    /** As a checkpoint kept it. @param kept 24 hours, or none */
    public static RoomDay resumed(List<Hour> kept) {
        return kept.isEmpty() ? NONE : new RoomDay(kept, Open.NONE);
    }

    /** What a checkpoint keeps: the hours, or none while none was measured. */
    public List<Hour> kept() {
        for (Hour h : hours) {
            if (!h.equals(Hour.UNKNOWN)) {
                return hours;
            }
        }
        return List.of();
    }

    /** A tick later. @param dtMs since the last  @param roomC the room, °C, where it was measured */
    public RoomDay after(Moment now, long dtMs, Optional<Double> roomC) {
        if (!now.wallTrusted() || roomC.isEmpty()) {
            return this;
        }
        long number = Math.floorDiv(now.wallMs(), Units.HOUR_MS);
        boolean same = number == open.number();
        Open more = new Open(number, (same ? open.degreeMs() : 0) + roomC.get() * dtMs,
                (same ? open.ms() : 0) + dtMs);
        return new RoomDay(same || open.ms() < LEAST_MS ? hours : closed(), more);
    }

    private List<Hour> closed() {
        List<Hour> next = new ArrayList<>(hours);
        int i = (int) Math.floorMod(open.number(), (long) HOURS);
        next.set(i, next.get(i).with(open.degreeMs() / open.ms()));
        return next;
    }

    /** Whether nearly every hour of the day has been measured. */
    public boolean known() {
        int unread = 0;
        for (int i = 0; i < HOURS; i++) {
            unread += Double.isNaN(hours.get(i).meanC()) ? 1 : 0;
        }
        return DayPattern.known(unread, HOURS);
    }

    /**
     * The room from now on. Without its day, or the hour, it stays as it is.
     *
     * @param nowC the room now, °C, where it is measured  @param usualC what it is taken for else, °C
     */
    public Room room(Moment now, Optional<Double> nowC, double usualC) {
        if (!now.wallTrusted() || !known()) {
            return Room.constant(nowC.orElse(usualC));
        }
        // What was measured in an hour stands for its middle.
        double hour = Units.hours(Math.floorMod(now.wallMs(), HOURS * Units.HOUR_MS)) - 0.5;
        Room usual = new Room(whole(), hour);
        return nowC.map(usual::from).orElse(usual);
    }

    /**
     * The course of it alone, from a room that is taken to be so warm now and as much off its mean for good:
     * for a day that a water felt, whose height says nothing. @param nowC °C
     */
    public Room course(Moment now, double nowC) {
        Room usual = room(now, Optional.empty(), nowC);
        return usual.plus(nowC - usual.aheadC(0));
    }

    /** All of them, on straight lines where nobody has measured, also over midnight, °C. */
    private List<Double> whole() {
        int from = 0;
        while (at(from).days() == 0) {
            from++;
        }
        int first = from;
        double[] c = DayPattern.bridged(IntStream.rangeClosed(first, first + HOURS)
                .mapToDouble(h -> at(h).meanC()).toArray());
        return IntStream.range(0, HOURS).mapToObj(h -> c[Math.floorMod(h - first, HOURS)]).toList();
    }

    private Hour at(int hour) {
        return hours.get(Math.floorMod(hour, HOURS));
    }
}
