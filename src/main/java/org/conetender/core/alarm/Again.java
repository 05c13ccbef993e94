package org.conetender.core.alarm;

import org.conetender.core.unit.Units;

/**
 * When an alarm is told again: after 15 min, then an hour, then every four, while nobody acknowledges
 * (control.md §7). Want of air is told every three minutes, five times.
 */
public final class Again {

    /** Want of air is told so often, every three minutes, before anybody else is called. */
    private static final int SUFFOCATES_TIMES = 5;

    /** Then the second person is called. */
    private static final long UNANSWERED_MS = 15 * Units.MINUTE_MS;

    private Again() {}

    /** Told again this long after the {@code times}-th telling, while nobody acknowledges, ms. */
    static long afterMs(AlarmKind kind, int times) {
        if (suffocates(kind) && times <= SUFFOCATES_TIMES) {
            return 3 * Units.MINUTE_MS;
        }
        return switch (suffocates(kind) ? times - SUFFOCATES_TIMES : times) {
            case 0, 1 -> 15 * Units.MINUTE_MS;
            case 2 -> Units.HOUR_MS;
            default -> 4 * Units.HOUR_MS;
        };
    }

    /**
     * Whether the second person is called too: people or animals are in danger, and when it was told last
     * nobody had answered for a quarter of an hour, which for want of air is five tellings.
     */
    public static boolean forSecond(Alarm a) {
        return a.kind().dangerous() && a.told().firstMs().isPresent()
                && a.told().atMs() - a.told().firstMs().getAsLong() >= UNANSWERED_MS;
    }

    /** How long an acknowledgement keeps it quiet while its cause lasts, ms. */
    static long quietMs(AlarmKind kind) {
        return suffocates(kind) ? 10 * Units.MINUTE_MS : Long.MAX_VALUE;
    }

    /** Whether an acknowledgement keeps it quiet for ten minutes only. */
    public static boolean minutesOnly(AlarmKind kind) {
        return quietMs(kind) != Long.MAX_VALUE;
    }

    private static boolean suffocates(AlarmKind kind) {
        return kind == AlarmKind.AIR_FAILED_ANIMALS || kind == AlarmKind.AIR_SHUT_IN;
    }
}
