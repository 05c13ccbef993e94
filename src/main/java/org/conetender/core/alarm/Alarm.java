package org.conetender.core.alarm;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.conetender.core.unit.Moment;

/**
 * One alarm that is active, or was so and is not done with. Its states are independent of each other, after
 * the open alarm model (OPC UA Part 9, ISA-18.2): active or not, raised, acknowledged, latched, shelved,
 * following from another. An alarm that is cleared is no longer here.
 *
 * @param cone its cone; empty for the site
 * @param kind which
 * @param what the cause in words, as first seen, or as it was when a person had to be told anew
 * @param latest the cause in words, as it is now
 * @param held by what it is kept up
 * @param course since when, and whether its cause is there
 * @param told how a person was told of it
 * @param aside why nobody is told of it by itself, if so
 */
public record Alarm(String cone, AlarmKind kind, String what, String latest, Held held, Course course,
                    Told told, Aside aside) {

    /** Their hours and odds move: each telling has those of its own moment. */
    private static final Set<AlarmKind> MOVES = Set.of(AlarmKind.HOUR_MISSED);

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
     * @param goneAtMs monotonic ms since which the cause has been absent; empty while it is present
     * @param raised whether the cause has lasted its delay, which is when it counts
     */
    public record Course(Moment since, OptionalLong goneAtMs, boolean raised) {}

    /**
     * @param times how often a person was told, by a message of its own or by name in another's
     * @param firstMs when for the first time since anybody answered, monotonic ms; empty before that
     * @param atMs when last, monotonic ms
     * @param acknowledgedAtMs when a person acknowledged, monotonic ms; empty while nobody has
     * @param with the followers that its last message named, by key
     * @param way of the last message
     * @param mended whether only its latch was left by then: so its words say until it is told next, whatever
     *     becomes of the cause, since new words would call a person
     * @param onceMore whether somebody who acknowledged before its cause was gone has to do so once more; its
     *     words say so until it is told of a cause that is there
     */
    public record Told(int times, OptionalLong firstMs, long atMs, OptionalLong acknowledgedAtMs,
                       List<String> with, Way way, boolean mended, boolean onceMore) {
        static final Told NEVER = new Told(0, OptionalLong.empty(), 0, OptionalLong.empty(), List.of(),
                Way.ALONE, false, false);

        Told seen(long nowMs) {
            return new Told(1, OptionalLong.empty(), atMs, OptionalLong.of(nowMs), with, way, mended,
                    onceMore);
        }

        Told again(long nowMs, List<String> named, Way by, boolean onlyByLatch) {
            return new Told(times + 1, firstMs.isPresent() ? firstMs : OptionalLong.of(nowMs), nowMs,
                    OptionalLong.empty(), named, by, onlyByLatch, onceMore);
        }

        /** The answer to whoever acknowledged another names it: told again as after a first message. */
        Told besides(long nowMs) {
            return new Told(1, OptionalLong.of(nowMs), nowMs, OptionalLong.empty(), List.of(), Way.NAMED,
                    mended, onceMore);
        }

        /** It is to be said at once, as if it were new; since when nobody has answered is not forgotten. */
        Told anew() {
            return new Told(0, firstMs, atMs, OptionalLong.empty(), List.of(), Way.ALONE, false, onceMore);
        }

        Told onceMore(boolean yes) {
            return yes == onceMore ? this
                    : new Told(times, firstMs, atMs, acknowledgedAtMs, with, way, mended, yes);
        }
    }

    /** By what message a person was told last. */
    public enum Way {
        /** One of its own. */
        ALONE,
        /** By name in the message of what it follows from. */
        NAMED,
        /** One for many incidents. */
        AMONG
    }

    /**
     * @param follows key of the alarm that explains it and was there first; empty when it stands for itself
     * @param shelvedUntilMs a person wants to hear nothing of it until then, monotonic ms
     */
    public record Aside(Optional<String> follows, OptionalLong shelvedUntilMs) {
        static final Aside NOT = new Aside(Optional.empty(), OptionalLong.empty());
    }

    /** One whose cause has just begun. */
    static Alarm begun(Alarms.Cause c, Moment now) {
        return new Alarm(c.cone(), c.kind(), c.what(), c.what(), c.held(),
                new Course(now, OptionalLong.empty(), false), Told.NEVER, Aside.NOT);
    }

    /** Whether its cause is there now. */
    public boolean active() {
        return course.goneAtMs().isEmpty() && held != Held.ONLY_BY_LATCH;
    }

    /** Whether the cause has lasted its delay, so that it stands in the list. */
    public boolean raised() {
        return course.raised();
    }

    public boolean acknowledged() {
        return told.acknowledgedAtMs().isPresent();
    }

    /** In the words of this moment, where they move. */
    public Alarm asItIs() {
        return !MOVES.contains(kind) ? this
                : new Alarm(cone, kind, latest, latest, held, course, told, aside);
    }

    /** Whether it outlasts its cause until a person has acknowledged it. */
    public boolean latched() {
        return held != Held.BY_CAUSE || kind.standsUntilSeen();
    }

    public boolean shelved() {
        return aside.shelvedUntilMs().isPresent();
    }

    /** Whether another alarm that was there first explains it. */
    public boolean follows() {
        return aside.follows().isPresent();
    }

    /** Whether a message of its own stands, for whoever looks later. */
    public boolean shown() {
        return told.times() > 0 && told.way() == Way.ALONE && !shelved() && (!follows() || kind.dangerous());
    }

    /** Identifies it within the site. */
    public String key() {
        return key(cone, kind);
    }

    /** By which an alarm is known. @param cone empty for the site */
    public static String key(String cone, AlarmKind kind) {
        return cone + "/" + kind.id();
    }

    /** How long its cause has been absent, ms; 0 while it is there. */
    public long goneMs(long nowMs) {
        return course.goneAtMs().isEmpty() ? 0 : nowMs - course.goneAtMs().getAsLong();
    }

    Alarm with(Course next) {
        return new Alarm(cone, kind, what, latest, held, next, told, aside);
    }

    Alarm with(Told next) {
        return new Alarm(cone, kind, what, latest, held, course, next, aside);
    }

    Alarm with(Aside next) {
        return new Alarm(cone, kind, what, latest, held, course, told, next);
    }
}
