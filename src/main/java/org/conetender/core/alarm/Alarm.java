package org.conetender.core.alarm;

import java.util.Optional;
import org.conetender.core.unit.Moment;

/**
 * One alarm that is active, or was so a moment ago.
 *
 * @param cone its cone; empty for the site
 * @param kind which
 * @param what the cause in words, as first seen, or as it was when a person had to be told anew
 * @param held by what it is kept up
 * @param course since when, and how it was told
 */
public record Alarm(String cone, AlarmKind kind, String what, Held held, Course course) {

    /** What keeps an alarm up. */
    public enum Held {
        /** Its cause alone: it ends soon after that. */
        BY_CAUSE,
        /** A latch too, which a person releases. */
        BY_LATCH,
        /** Only its latch is left: an acknowledgement would release it now. */
        ONLY_BY_LATCH
    }


    /**
     * @param since when its cause began
     * @param goneAtMs monotonic ms since which the cause has been absent; −1 while it is present
     * @param told how often a person was told
     * @param toldAtMs when last, monotonic ms
     * @param acknowledgedAtMs when a person acknowledged, monotonic ms; empty while nobody has
     */
    public record Course(Moment since, long goneAtMs, int told, long toldAtMs,
            Optional<Long> acknowledgedAtMs) {}

    /** Whether a person has been told, which is when it counts. */
    public boolean raised() {
        return course.told() > 0;
    }

    public boolean acknowledged() {
        return course.acknowledgedAtMs().isPresent();
    }

    /** Whether its cause is gone and only a latch is left of it. */
    boolean mended() {
        return held == Held.ONLY_BY_LATCH;
    }

    /** Identifies it within the site. */
    public String key() {
        return key(cone, kind);
    }

    static String key(String cone, AlarmKind kind) {
        return cone + "/" + kind.id();
    }

    Alarm present(long goneAtMs) {
        return new Alarm(cone, kind, what, held,
                new Course(course.since(), goneAtMs, course.told(), course.toldAtMs(),
                course.acknowledgedAtMs()));
    }

    /** How long its cause has been absent, ms; 0 while it is there. */
    long gone(long nowMs) {
        return course.goneAtMs() < 0 ? 0 : nowMs - course.goneAtMs();
    }

    /** The same incident, to be told once more: its cause is gone, its latch is not. @param words now */
    Alarm anew(String words) {
        return new Alarm(cone, kind, words
                + "; that is over now, but it stays locked off until this alarm is acknowledged once more",
                Held.ONLY_BY_LATCH,
                new Course(course.since(), -1, 0, 0, Optional.empty()));
    }

    Alarm told(long nowMs) {
        return new Alarm(cone, kind, what, held,
                new Course(course.since(), course.goneAtMs(), course.told() + 1, nowMs,
                Optional.empty()));
    }

    Alarm acknowledged(long nowMs) {
        return new Alarm(cone, kind, what, held, new Course(course.since(), course.goneAtMs(),
                Math.max(1, course.told()), course.toldAtMs(), Optional.of(nowMs)));
    }
}
