package org.conetender.sim.swarm;

import java.util.List;
import java.util.SplittableRandom;
import org.conetender.core.image.Step;

/** Everything that can go wrong in a story. A story has some of it and omits the rest. */
enum Trouble {
    PROBE_DEAD((d, t) -> d.lasting(t, Deed.PROBE, d.one("0", "0", "1"), "absent")),
    PROBE_FROZEN((d, t) -> d.lasting(t, Deed.PROBE, d.one("0", "0", "1"), "frozen")),
    PROBE_DRIFTING((d, t) -> d.lasting(t, Deed.PROBE, d.one("0", "0", "1"), "drifting")),
    PROBE_IN_AIR((d, t) -> d.lasting(t, Deed.PROBE, d.one("0", "0", "1"), "in-air")),
    PROBE_NOISY((d, t) -> d.lasting(t, Deed.PROBE, d.one("0", "0", "1"), "noisy")),
    PROBE_AT_85((d, t) -> d.lasting(t, Deed.PROBE, d.one("0", "0", "1"), "power-on")),
    PROBE_CHECKSUM((d, t) -> d.lasting(t, Deed.PROBE, d.one("0", "0", "1"), "checksum")),
    /** One probe of it, or all of them at once. */
    BUS_SLOW((d, t) -> d.one(false, true) ? d.house(t, Deed.BUS, d.one("slow", "slow", "absent"))
            : d.lasting(t, Deed.PROBE, d.one("0", "0", "1"), "slow")),
    ROOM_PROBE_WRONG((d, t) -> d.house(t, Deed.ROOM_PROBE, d.one("absent", "frozen", "drifting", "power-on",
            "noisy", "slow"))),
    PROBES_SWAPPED((d, t) -> d.two(t, Deed.SWAP_PROBES)),
    WIRES_CROSSED((d, t) -> d.two(t, Deed.CROSS, d.one("plugs", "switches", "shorted"))),
    HEATER_WELDED((d, t) -> d.lasting(t, Deed.SWITCH, "heat", "welded")),
    CUT_OUT_WRONG((d, t) -> d.lasting(t, Deed.SWITCH, "cut-out", d.one("welded", "welded", "open", "inverted",
            "chattering"))),
    HEATER_OPEN((d, t) -> d.lasting(t, Deed.SWITCH, "heat", "open")),
    HEATER_CHATTERS((d, t) -> d.lasting(t, Deed.SWITCH, "heat", "chattering")),
    HEATER_INVERTED((d, t) -> d.lasting(t, Deed.SWITCH, "heat", "inverted")),
    OUTPUT_DEAF((d, t) -> d.lasting(t, Deed.SWITCH, d.one("heat", "cut-out", "air-pause", "lamp"), "deaf")),
    OUTPUT_REFUSED((d, t) -> d.lasting(t, Deed.SWITCH, d.one("heat", "cut-out", "air-pause"), "refusing")),
    PAUSE_STUCK((d, t) -> d.lasting(t, Deed.SWITCH, "air-pause", d.one("welded", "open"))),
    LEVEL_CHATTERS((d, t) -> d.lasting(t, Deed.CONTACT, "level", "chattering")),
    CONTACT_WRONG((d, t) -> d.lasting(t, Deed.CONTACT, d.one("level", "air-proof", "button"),
            d.one("stuck-closed", "stuck-open", "unreadable"))),
    PROOF_CHATTERS((d, t) -> d.lasting(t, Deed.CONTACT, "air-proof", "chattering")),
    DIAPHRAGM_TORN((d, t) -> d.lasting(t, Deed.AIR, "torn-diaphragm")),
    HOSE_OFF((d, t) -> d.lasting(t, Deed.AIR, "hose-off")),
    PUMP_STOPPED((d, t) -> d.lasting(t, Deed.AIR, "pump-stopped")),
    ALL_PUMPS_STOP((d, t) -> d.house(t, Deed.SITE, "pumps-stop")),
    VALVE_FORGOTTEN((d, t) -> d.cone(t, Deed.VALVE, "shut")),
    LID_OFF((d, t) -> d.lasting(t, Deed.WATER, "lid-off")),
    POURED((d, t) -> d.lasting(t, Deed.WATER, d.one("cold-poured", "hot-poured"))),
    LEAK((d, t) -> d.lasting(t, Deed.WATER, d.one("leak", "seep"))),
    HEAT_WAVE((d, t) -> d.house(t, Deed.SITE, "room-hot")),
    WINDOW((d, t) -> d.house(t, Deed.SITE, "room-cold")),
    CUT_SHORT((d, t) -> List.of(Event.at(t, Deed.SITE, "power-cut", Event.lasting(d.between(1, 600))))),
    CUT_LONG((d, t) -> List.of(Event.at(t, Deed.SITE, "power-cut",
            Event.lasting(d.between(3_600, 200_000))))),
    BROWN_OUTS(Draw::brownOuts),
    /** The machine has no battery for its clock, and no network. */
    NO_NETWORK_TIME((d, t) -> List.of(Event.at(t, Deed.SITE, "clock-untrusted",
            Event.lasting(d.between(600, 100_000))))),
    NO_BATTERY(Draw::noBattery),
    CLOCK_STEPS((d, t) -> List.of(Event.at(t, Deed.CLOCK, d.one("+3600s", "-3600s", "+86400s", "-600s")))),
    CLOCK_YEARS((d, t) -> d.yearsOff(t)),
    LINK_GONE((d, t) -> d.house(t, Deed.SITE, "link-down")),
    LINK_SLOW((d, t) -> d.house(t, Deed.SITE, "link-slow")),
    NOBODY_COMES((d, t) -> List.of(Event.at(t, Deed.SITE, "nobody-comes",
            Event.lasting(d.between(3_600, 400_000))))),
    STEPS_AT_RANDOM((d, t) -> d.cone(t, Deed.SAY, d.one(Step.values()).word())),
    HOSTILE((d, t) -> d.hostile(t)),
    STALE((d, t) -> d.cone(t, Deed.STALE, d.one(Step.values()).word(), d.one("retained", "expired"))),
    DISK_FULL((d, t) -> d.house(t, Deed.DISK, "full")),
    DISK_READ_ONLY((d, t) -> d.house(t, Deed.DISK, "failing")),
    DISK_SLOW((d, t) -> d.house(t, Deed.DISK, "slow")),
    DISK_HANGS((d, t) -> List.of(Event.at(t, Deed.SITE, "disk-hangs", Event.lasting(d.between(5, 900))))),
    KILLED((d, t) -> List.of(Event.at(t, Deed.KILL, d.one("now", "control", "record", "before-commit",
            "after-commit")))),
    RECORD_DAMAGED((d, t) -> List.of(Event.at(t, Deed.DAMAGE, d.one("100", "98", "90", "50", "0")))),
    PAUSED((d, t) -> List.of(Event.at(t, Deed.HANG, Event.lasting(d.between(2, 40))))),
    OVERLOADED(Draw::overloaded),
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
