package org.conetender.core.alarm;

import org.conetender.core.unit.Units;

/**
 * When an alarm is told again: after 15 min, then an hour, then every four, while nobody acknowledges
 * (control.md §7). Want of air is told every three minutes, five times.
 */
public final class Again {

    /** Want of air is told so often, every three minutes, before anybody else is called. */
    private static final int SUFFOCATES_TIMES = 5;

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
     * Whether the second person is called too when it is told for the {@code times}-th time: where people or
     * animals are in danger and nobody has acknowledged for a quarter of an hour, be that after five tellings
     * or after one.
     */
    public static boolean forSecond(AlarmKind kind, int times) {
        return kind.dangerous() && times > (suffocates(kind) ? SUFFOCATES_TIMES : 1);
    }

    /** How long an acknowledgement keeps it quiet while its cause lasts, ms. */
    static long quietMs(AlarmKind kind) {
        return suffocates(kind) ? 10 * Units.MINUTE_MS : Long.MAX_VALUE;
    }

    private static boolean suffocates(AlarmKind kind) {
        return kind == AlarmKind.AIR_FAILED_ANIMALS || kind == AlarmKind.AIR_SHUT_IN;
    }
}
