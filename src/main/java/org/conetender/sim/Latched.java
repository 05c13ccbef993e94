package org.conetender.sim;

import java.util.Map;
import org.conetender.core.guard.WrongCone;

/** By which alarm people are told of each latch: that one alone, acknowledged, releases it (safety.md). */
public final class Latched {

    /** Where its guard has another name. */
    private static final Map<String, String> TOLD_BY = Map.of("too-hot", "overheat",
            "probe", "probe-unsteady", "frozen", "probe-frozen", "switch", "switch-stuck");

    private Latched() {}

    /** Whether it is told whose heater warms that cone, or which its own does: at one of both. */
    static boolean crossingTold(Rig rig, Told told, String cone) {
        return told.anywhere("wrong-cone") && WrongCone.known(rig.settings(), rig.state().book(), cone);
    }

    /** The id of that alarm. @param guard that latched */
    public static String alarm(String guard) {
        return TOLD_BY.getOrDefault(guard, guard);
    }
}
