package org.conetender.sim.swarm;

import static org.conetender.sim.swarm.Event.lasting;

import java.util.List;
import java.util.SplittableRandom;
import org.conetender.core.image.Step;

/** Everything that can go wrong in a story. A story has some of it and omits the rest. */
enum Trouble {
    PROBE_DEAD((d, t) -> d.probe(t, "absent")),
    PROBE_FROZEN((d, t) -> d.probe(t, "frozen")),
    PROBE_DRIFTING((d, t) -> d.probe(t, "drifting")),
    PROBE_IN_AIR((d, t) -> d.probe(t, "in-air")),
    PROBE_NOISY((d, t) -> d.probe(t, "noisy")),
    PROBE_AT_85((d, t) -> d.probe(t, "power-on")),
    PROBE_CHECKSUM((d, t) -> d.probe(t, "checksum")),
    BUS_SLOW((d, t) -> d.probe(t, "slow")),
    PROBES_SWAPPED((d, t) -> d.two(t, Deed.SWAP_PROBES)),
    HEATER_WELDED((d, t) -> d.output(t, "heat", "welded")),
    CUT_OUT_WELDED((d, t) -> d.output(t, "cut-out", "welded")),
    HEATER_OPEN((d, t) -> d.output(t, "heat", "open")),
    HEATER_CHATTERS((d, t) -> d.output(t, "heat", "chattering")),
    HEATER_INVERTED((d, t) -> d.output(t, "heat", "inverted")),
    OUTPUT_DEAF((d, t) -> d.output(t, d.one("heat", "cut-out", "air-pause", "lamp"), "deaf")),
    OUTPUT_REFUSED((d, t) -> d.output(t, d.one("heat", "cut-out", "air-pause"), "refusing")),
    PAUSE_STUCK((d, t) -> d.output(t, "air-pause", d.one("welded", "open"))),
    CONTACT_WRONG((d, t) -> d.contact(t, d.one("level", "air-proof", "button"),
            d.one("stuck-closed", "stuck-open", "unreadable"))),
    PROOF_CHATTERS((d, t) -> d.contact(t, "air-proof", "chattering")),
    DIAPHRAGM_TORN((d, t) -> d.air(t, "torn-diaphragm")),
    HOSE_OFF((d, t) -> d.air(t, "hose-off")),
    PUMP_STOPPED((d, t) -> d.air(t, "pump-stopped")),
    VALVE_FORGOTTEN((d, t) -> d.cone(t, Deed.VALVE, "shut")),
    LID_OFF((d, t) -> d.water(t, "lid-off")),
    COLD_POURED((d, t) -> d.water(t, "cold-poured")),
    LEAK((d, t) -> d.water(t, d.one("leak", "seep"))),
    HEAT_WAVE((d, t) -> d.site(t, "room-hot")),
    WINDOW((d, t) -> d.site(t, "room-cold")),
    CUT_SHORT((d, t) -> List.of(Event.at(t, Deed.SITE, "power-cut", lasting(d.between(1, 600))))),
    CUT_LONG((d, t) -> List.of(Event.at(t, Deed.SITE, "power-cut", lasting(d.between(3_600, 200_000))))),
    BROWN_OUTS(Draw::brownOuts),
    NO_NETWORK_TIME(Draw::noClock),
    CLOCK_STEPS((d, t) -> List.of(Event.at(t, Deed.CLOCK, d.one("+3600s", "-3600s", "+86400s", "-600s")))),
    CLOCK_YEARS((d, t) -> d.yearsOff(t)),
    LINK_GONE((d, t) -> d.site(t, "link-down")),
    STEPS_AT_RANDOM((d, t) -> d.cone(t, Deed.SAY, d.one(Step.values()).word())),
    HOSTILE((d, t) -> d.hostile(t)),
    STALE((d, t) -> d.cone(t, Deed.STALE, d.one(Step.values()).word(), d.one("retained", "expired"))),
    DISK_FULL((d, t) -> d.disk(t, "full")),
    DISK_READ_ONLY((d, t) -> d.disk(t, "failing")),
    DISK_SLOW((d, t) -> d.disk(t, "slow")),
    DISK_HANGS((d, t) -> List.of(Event.at(t, Deed.SITE, "disk-hangs", lasting(d.between(5, 900))))),
    KILLED((d, t) -> List.of(Event.at(t, Deed.KILL, d.one("now", "control", "record", "before-commit",
            "after-commit")))),
    PAUSED((d, t) -> List.of(Event.at(t, Deed.HANG, lasting(d.between(2, 40))))),
    CRASH_LOOP(Draw::crashLoop);

    /** What it makes happen at a second. */
    private interface Maker {
        List<Event> make(Draw draw, long atS);
    }

    private final Maker maker;

    Trouble(Maker maker) {
        this.maker = maker;
    }

    List<Event> at(long atS, SplittableRandom random, Fitting room) {
        return maker.make(new Draw(random, room), atS);
    }
}
