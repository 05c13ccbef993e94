package org.conetender.sim;

import java.util.Map;

/** By which alarm people are told of each latch: that one alone, acknowledged, releases it (safety.md). */
public final class Latched {

    /** Where its guard has another name. */
    private static final Map<String, String> TOLD_BY = Map.of("too-hot", "overheat",
            "probe", "probe-unsteady", "frozen", "probe-frozen", "switch", "switch-stuck");

    private Latched() {}

    /** The id of that alarm. @param guard that latched */
    public static String alarm(String guard) {
        return TOLD_BY.getOrDefault(guard, guard);
    }
}
