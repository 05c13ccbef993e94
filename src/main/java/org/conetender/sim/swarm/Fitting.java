package org.conetender.sim.swarm;

import java.time.Instant;
import org.conetender.core.settings.Settings;
import org.conetender.sim.Bench;
import org.conetender.sim.Larkmoor;

/** How the room of a story is fitted, and when it begins. */
public enum Fitting {
    LARKMOOR_PLAIN(Larkmoor.settings(), false, Fitting.MORNING),
    /** One pump for all cones, on a supply of its own. */
    LARKMOOR_SHARED_PUMP(Larkmoor.settings(), true, Fitting.MORNING),
    /** In the night the clocks are put forward. */
    LARKMOOR_SPRING(Larkmoor.settings(), false, "2026-03-28T18:00:00Z"),
    LARKMOOR_MIXED(Larkmoor.mixed(), false, Fitting.MORNING),
    /** In the night the clocks are put back. */
    LARKMOOR_MIXED_AUTUMN(Larkmoor.mixed(), false, "2026-10-24T18:00:00Z");

    private static final String MORNING = "2026-03-02T07:00:00Z";

    private final Settings settings;
    private final Bench bench;

    Fitting(Settings settings, boolean sharedPump, String from) {
        this.settings = settings;
        this.bench = Bench.larkmoor().withAirOwnSupply(sharedPump).withSharedPump(sharedPump)
                .withStart(Instant.parse(from));
    }

    public Settings settings() {
        return settings;
    }

    Bench bench() {
        return bench;
    }

    /** @throws IllegalArgumentException when the event is about a cone that is not there */
    void check(Event e) {
        int cones = switch (e.deed()) {
            case SWAP_PROBES, CROSS -> 2;
            case PROBE, SWITCH, CONTACT, AIR, WATER, VALVE, BEGIN, SAY, SET, STALE -> 1;
            case ROOM_PROBE, BUS, SITE, KILL, HANG, DAMAGE, DISK, CLOCK -> 0;
        };
        for (String id : e.words().subList(0, cones)) {
            if (settings.cone(id).isEmpty()) {
                throw new IllegalArgumentException("there is no cone '" + id + "' in that room");
            }
        }
    }
}
