package org.conetender.sim.trial;

import java.util.List;
import java.util.Set;
import org.conetender.core.alarm.Alarm;
import org.conetender.sim.Rig;
import org.conetender.sim.SimCone;

/** What a keeper does in the trials of a whole daemon, and is told. */
final class Keeping {

    /** The cones are filled so long after the daemon's start, s. */
    static final long FILLED_S = 20;
    static final long FOR_EVER_MS = 1_000L * 1_000 * 3_600;
    private static final double COOL_C = 21;
    /** Names of why water and heater do not do what they should. */
    private static final Set<String> NAMING = Set.of("wrong-cone", "welded", "no-effect", "switch-stuck",
            "probe-frozen", "probe-unsteady", "overheat", "room-too-warm");

    private Keeping() {}

    /** Fills that cone with cool water and reports it. */
    static void fill(Rig rig, SimCone c) {
        c.fill(c.settings().usual().litres(), COOL_C, c.settings().usual().ppt());
        c.air().valve(true);
        c.water().lid(c.settings().fittings().vessel().lid());
        rig.say(c.settings().id(), "started");
    }

    /** Alarms that stand and name a cause; none while the daemon does not live. */
    static List<Alarm> named(Rig rig) {
        return !rig.alive() ? List.of() : rig.state().live().alarms().raised().stream()
                .filter(a -> NAMING.contains(a.kind().id())).toList();
    }
}
