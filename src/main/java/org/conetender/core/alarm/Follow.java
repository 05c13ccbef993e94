package org.conetender.core.alarm;

import static org.conetender.core.alarm.AlarmKind.AIR_BACK;
import static org.conetender.core.alarm.AlarmKind.AIR_FAILED;
import static org.conetender.core.alarm.AlarmKind.AIR_FAILED_ANIMALS;
import static org.conetender.core.alarm.AlarmKind.AIR_SHUT_IN;
import static org.conetender.core.alarm.AlarmKind.AIR_STUCK;
import static org.conetender.core.alarm.AlarmKind.ARREST;
import static org.conetender.core.alarm.AlarmKind.CRASH_LOOP;
import static org.conetender.core.alarm.AlarmKind.CUT_OUT_STUCK;
import static org.conetender.core.alarm.AlarmKind.DOUBTFUL;
import static org.conetender.core.alarm.AlarmKind.DRY;
import static org.conetender.core.alarm.AlarmKind.HEATER_STUCK;
import static org.conetender.core.alarm.AlarmKind.HISTORY;
import static org.conetender.core.alarm.AlarmKind.LATE;
import static org.conetender.core.alarm.AlarmKind.NO_EFFECT;
import static org.conetender.core.alarm.AlarmKind.ONE_PROBE;
import static org.conetender.core.alarm.AlarmKind.OUTPUT_STUCK;
import static org.conetender.core.alarm.AlarmKind.OVERHEAT;
import static org.conetender.core.alarm.AlarmKind.PROBE;
import static org.conetender.core.alarm.AlarmKind.PROBE_FROZEN;
import static org.conetender.core.alarm.AlarmKind.PROBE_UNSTEADY;
import static org.conetender.core.alarm.AlarmKind.RECORD;
import static org.conetender.core.alarm.AlarmKind.RECORD_DAMAGED;
import static org.conetender.core.alarm.AlarmKind.ROOM_TOO_WARM;
import static org.conetender.core.alarm.AlarmKind.SWITCH_STUCK;
import static org.conetender.core.alarm.AlarmKind.WELDED;
import static org.conetender.core.alarm.AlarmKind.WRONG_CONE;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.conetender.core.unit.Units;

/**
 * Which alarm explains which others, so that one incident is one message: the declared table. A cause in one
 * cone explains the same alarm in another where they share what failed (pump, bus, board, mains, room).
 *
 * @param cause what explains them
 * @param where in its own cone, or in every cone; a cause of the site is everywhere in any case
 * @param withinMs they begin within so long of the cause; {@link #WHILE_IT_STANDS} where that is no matter
 * @param followers what it explains
 */
public record Follow(AlarmKind cause, Where where, long withinMs, Set<AlarmKind> followers) {

    /** Where the followers are. */
    public enum Where { HERE, ANYWHERE }

    /** However late they come, while the cause is there. */
    static final long WHILE_IT_STANDS = Long.MAX_VALUE;

    /** What fails at once is seen within this time in all cones (guess: contacts at once, probes in turn). */
    static final long AT_ONCE_MS = 2 * Units.MINUTE_MS;

    /** A heater without mains is missed when its water should have warmed, sooner or later (guess). */
    static final long HEATERS_MS = 30 * Units.MINUTE_MS;

    /** Which was there first; of those that came in the same tick, the one declared first. */
    static final Comparator<Alarm> FIRST_OUT = Comparator
            .comparingLong((Alarm a) -> a.course().since().monoMs()).thenComparing(Alarm::kind)
            .thenComparing(Alarm::cone);

    /** The first that fits counts. */
    public static final List<Follow> TABLE = List.of(
            // The board, or its chip: nothing can be set any more.
            anywhere(HEATER_STUCK, AT_ONCE_MS, HEATER_STUCK, CUT_OUT_STUCK, AIR_STUCK, OUTPUT_STUCK),
            anywhere(CUT_OUT_STUCK, AT_ONCE_MS, CUT_OUT_STUCK, AIR_STUCK, OUTPUT_STUCK),
            anywhere(AIR_STUCK, AT_ONCE_MS, AIR_STUCK, OUTPUT_STUCK),
            anywhere(OUTPUT_STUCK, AT_ONCE_MS, OUTPUT_STUCK),
            // A heater that stays on warms the water further than it should be.
            here(HEATER_STUCK, OVERHEAT, ARREST),
            here(WELDED, OVERHEAT, ARREST),
            // Crossed wires: both cones do what they should not.
            anywhere(WRONG_CONE, WHILE_IT_STANDS, WELDED, NO_EFFECT),
            here(WRONG_CONE, OVERHEAT, ARREST),
            here(SWITCH_STUCK, OVERHEAT, ARREST),
            here(OVERHEAT, ARREST),
            // The computer: what is late cannot hear its probes or its disk.
            anywhere(LATE, WHILE_IT_STANDS, PROBE, ONE_PROBE, RECORD),
            anywhere(RECORD, WHILE_IT_STANDS, HISTORY),
            anywhere(CRASH_LOOP, WHILE_IT_STANDS, AIR_BACK),
            anywhere(RECORD_DAMAGED, WHILE_IT_STANDS, AIR_BACK),
            // Water that is gone leaves the probe in the air.
            here(DRY, PROBE, PROBE_UNSTEADY, PROBE_FROZEN, NO_EFFECT),
            // The bus, with all probes on it; and whoever cannot hear a probe cannot see heat arrive.
            anywhere(PROBE, AT_ONCE_MS, PROBE, ONE_PROBE),
            anywhere(ONE_PROBE, AT_ONCE_MS, ONE_PROBE),
            here(PROBE, PROBE_UNSTEADY, PROBE_FROZEN, NO_EFFECT),
            // A shared pump, or the mains of all pumps.
            anywhere(AIR_FAILED_ANIMALS, AT_ONCE_MS, AIR_FAILED_ANIMALS, AIR_FAILED),
            anywhere(AIR_FAILED, AT_ONCE_MS, AIR_FAILED),
            here(AIR_FAILED_ANIMALS, DOUBTFUL),
            here(AIR_SHUT_IN, DOUBTFUL),
            // The mains of all heaters.
            anywhere(NO_EFFECT, HEATERS_MS, NO_EFFECT),
            // The room is one for all cones.
            anywhere(ROOM_TOO_WARM, WHILE_IT_STANDS, ROOM_TOO_WARM),
            // A power cut, or a restart, came over all cones at once.
            anywhere(DOUBTFUL, AT_ONCE_MS, DOUBTFUL),
            anywhere(AIR_BACK, AT_ONCE_MS, AIR_BACK));

    private static final Map<AlarmKind, List<Follow>> BY_FOLLOWER = byFollower();

    private static Map<AlarmKind, List<Follow>> byFollower() {
        Map<AlarmKind, List<Follow>> out = new EnumMap<>(AlarmKind.class);
        for (AlarmKind k : AlarmKind.values()) {
            out.put(k, TABLE.stream().filter(f -> f.followers().contains(k)).toList());
        }
        return out;
    }

    private static Follow here(AlarmKind cause, AlarmKind... followers) {
        return new Follow(cause, Where.HERE, WHILE_IT_STANDS, Set.of(followers));
    }

    private static Follow anywhere(AlarmKind cause, long withinMs, AlarmKind... followers) {
        return new Follow(cause, Where.ANYWHERE, withinMs, Set.of(followers));
    }

    /** How long after it they may begin, in words. */
    public String span() {
        return withinMs == WHILE_IT_STANDS ? "while it stands"
                : "within " + withinMs / Units.MINUTE_MS + " min";
    }

    /** Whether that alarm explains this one. */
    static boolean explains(Alarm first, Alarm other) {
        for (Follow f : BY_FOLLOWER.get(other.kind())) {
            if (f.cause == first.kind() && f.fits(first, other)) {
                // Of two of the same kind only the first can explain the other.
                return first.kind() != other.kind() || FIRST_OUT.compare(first, other) < 0;
            }
        }
        return false;
    }

    private boolean fits(Alarm first, Alarm other) {
        boolean near = where == Where.ANYWHERE || first.cone().equals(other.cone()) || first.cone().isEmpty();
        long apartMs = Math.abs(first.course().since().monoMs() - other.course().since().monoMs());
        // What began at the same time did so for one reason; else the cause itself has to be there.
        return near && apartMs <= withinMs
                && (withinMs != WHILE_IT_STANDS || first.held() != Alarm.Held.ONLY_BY_LATCH);
    }
}
