package org.conetender.sim;

import static org.conetender.sim.Scripts.hatchedAndSettled;
import static org.conetender.sim.Scripts.inject;
import static org.conetender.sim.Scripts.lasting;
import static org.conetender.sim.Scripts.now;
import static org.conetender.sim.Scripts.nursed;

import java.util.Map;
import org.conetender.sim.Fault.When;

/**
 * A danger that is brought about on purpose, so that it surely occurs: what goes wrong, and what
 * people do about it. Runs of a theme are short; what people do over days is {@link #DAYS}' part.
 */
public enum Theme {
    DAYS(30, (r, s) -> { }),
    HEAT_WAVE(6, (r, s) -> {
        nursed(r, s);
        if (s == 600) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.ROOM_HOT, lasting(r, 300)));
        }
        if (s == 700) { // However cool the house: a roof in the sun (guess).
            r.world().room().add(36 - r.world().room().airC());
        }
        // A lamp that burns when the water passes the guard must go out.
        if (s >= 3_600 && s % 900 == 0) {
            r.say("a", "settle");
        }
    }),
    WELDED(3, HeatScripts::welded),
    WELDED_PAIR(7, HeatScripts::weldedPair),
    DEAF_OUTPUTS(3, Scripts::deafOutputs),
    DEAD_HEATER(4, HeatScripts::deadHeater),
    WELDED_WHEN_KNOWN(6, HeatScripts::weldedWhenKnown),
    DEAD_WHEN_KNOWN(7, HeatScripts::deadWhenKnown),
    CUT_OUT_STUCK(3, HeatScripts::cutOutStuck),
    OWN_SWITCH_STUCK(3, HeatScripts::ownSwitchStuck),
    PLUGS_EXCHANGED(4, HeatScripts::plugsExchanged),
    OUTPUTS_TOUCH(4, HeatScripts::outputsTouch),
    FROZEN_PROBE(8, HeatScripts::frozenProbe),
    NO_PROBE(3, (r, s) -> {
        nursed(r, s);
        if (s == 2_400) {
            r.world().apply(new Fault.OfProbe("b", 0, SimProbe.Fault.ABSENT, lasting(r, 60)));
            r.world().apply(new Fault.OfProbe("c", 0, SimProbe.Fault.IN_AIR, lasting(r, 60)));
        }
    }),
    UNSTEADY_PROBE(3, (r, s) -> {
        nursed(r, s);
        if (s >= 2_400 && s < 5_400 && s % 900 == 0) {
            r.world().apply(new Fault.OfProbe("c", 0, SimProbe.Fault.IN_AIR, new When(now(r), 200_000)));
        }
    }),
    LEAK(3, (r, s) -> {
        nursed(r, s);
        if (s == 1_200) {
            r.world().apply(new Fault.OfWater("a", Fault.Water.LEAK, lasting(r, 150)));
        }
    }),
    SEEP(15, HeatScripts::seep),
    WET_AFTER_ALL(2, (r, s) -> {
        nursed(r, s);
        if (s == 1_200) {
            r.say("a", "drained");
        }
    }),
    NO_AIR(4, (r, s) -> {
        nursed(r, s);
        if (s == 900 || s == 5_400) {
            r.world().apply(new Fault.OfAir("a", Air.Fault.TORN_DIAPHRAGM, lasting(r, 20)));
        }
        if (s == 3_600) {
            r.say("a", "first-seen");
        }
        if (s == 5_700) {
            r.say("a", "settle");
        }
    }),
    NOBODY_COMES(4, (r, s) -> {
        nursed(r, s);
        hatchedAndSettled(r, s, "a");
        if (s == 3_720) {
            r.say("a", "settle");
        }
        // The loop hangs in the last second of the cap: what was set then holds for a lease.
        if (s == 4_260) {
            r.stall(8_000);
        }
        if (s == 3_780) {
            r.set("c", "hand/withdraw", "last");
        }
    }),
    SETTLES_AT_ONCE_AGAIN(4, (r, s) -> {
        nursed(r, s);
        hatchedAndSettled(r, s, "a");
        if (s > 3_700 && s % 20 == 0) {
            r.say("a", "settle");
        }
        if (s == 9_000) {
            r.say("a", "hands-in");
        }
        if (s == 11_000) {
            r.say("a", "valve-shut");
        }
    }),
    SECOND_PROBE(3, (r, s) -> {
        nursed(r, s);
        if (s == 2_400) {
            r.world().apply(new Fault.OfProbe("a", 1, SimProbe.Fault.ABSENT, lasting(r, 60)));
        }
    }),
    CHATTER(3, (r, s) -> {
        nursed(r, s);
        if (s == 900) {
            r.world().apply(new Fault.OfContact("a", "air-proof", SimContact.Fault.CHATTERING,
                    lasting(r, 90)));
        }
        if (s == 1_200 || s == 4_500) {
            r.world().apply(new Fault.OfAir("a", Air.Fault.PUMP_STOPPED, lasting(r, 20)));
        }
        if (s == 3_600) {
            r.say("a", "first-seen");
        }
    }),
    FLOOD(3, (r, s) -> {
        nursed(r, s);
        hatchedAndSettled(r, s, "b");
    }),
    VALVE_STAYS_SHUT(4, (r, s) -> {
        nursed(r, s);
        if (s == 3_500) {
            r.world().cone("b").air().valve(false);
            r.say("b", "valve-shut");
        }
        hatchedAndSettled(r, s, "b");
    }),
    VALVE_OPENED_EARLY(3, (r, s) -> {
        nursed(r, s);
        if (s == 3_500) {
            r.world().cone("b").air().valve(false);
            r.say("b", "valve-shut");
        }
        hatchedAndSettled(r, s, "b");
        if (s == 3_800) {
            r.say("b", "valve-open");
        }
    }),
    DRAWS_FOR_EVER(3, (r, s) -> {
        nursed(r, s);
        hatchedAndSettled(r, s, "a");
        if (s == 4_050 || s == 4_110) {
            r.say("a", "drawing");
        }
        if (s == 8_000) {
            r.say("a", "settle");
        }
        if (s == 8_400) {
            r.say("a", "drawing");
        }
        if (s == 8_380 || s == 8_500) {
            r.say("a", "part-drawn"); // Before anybody draws it is refused.
        }
    }),
    DARKNESS(4, (r, s) -> {
        nursed(r, s);
        if (s == 3_600) {
            r.say("a", "first-seen");
        }
        if (s == 4_200) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.POWER_CUT, lasting(r, 45)));
        }
    }),
    NO_BATTERY(4, Scripts::noBattery),
    ASKED_HOUR(2, AskedHour::second),
    CRASH_LOOP(3, (r, s) -> {
        nursed(r, s);
        if (s == 3_300 || s == 5_900) {
            r.set("a", "water/setpoint", "26");
        }
        if (s == 3_600 || s == 3_700 || s == 3_800) {
            r.kill();
        }
        if (s == 4_200) {
            r.say("a", "settle");
        }
        if (s == 6_000) {
            r.set("a", "hand/acknowledge", "crash-loop");
        }
    }),
    DAMAGED_RECORD(3, (r, s) -> {
        nursed(r, s);
        if (s == 2_400 || s == 5_400) {
            r.kill();
            r.disk().damage(s == 2_400 ? 100 : 96);
        }
        if (s == 3_000) { // It holds through a restart.
            r.kill();
        }
        if (s == 3_300) {
            r.say("a", "settle");
        }
        if (s == 3_600 || s == 8_400) {
            r.set("a", "hand/acknowledge", "record-damaged");
        }
    }),
    COLD_START(3, (r, s) -> {
        nursed(r, s);
        if (s == 1) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.ROOM_COLD, lasting(r, 170)));
        }
    }),
    STALE(2, (r, s) -> {
        nursed(r, s);
        if (s == 1_800) {
            inject(r, "drained", true, Map.of("request-id", Invariants.STALE + "retained"));
            var late = Map.of("request-id", Invariants.STALE + "expired", "expires-in-s", "0");
            inject(r, "abandoned", false, late);
        }
        if (s == 1_800 || s == 1_900) {
            inject(r, "topped-up", false, Map.of("request-id", SiteRules.TWICE + "topped-up"));
        }
    }),
    DISK(3, (r, s) -> {
        nursed(r, s);
        if (s == 1_800) {
            r.disk().mood(SimStore.Mood.FULL);
        }
        if (s > 1_800 && s < 5_400 && s % 600 == 0) {
            r.say("a", s % 1_200 == 0 ? "first-seen" : "valve-open");
        }
        if (s == 5_400) {
            r.disk().mood(SimStore.Mood.HEALTHY);
        }
    }),
    DISK_FILLS_WHILE_DRAWING(4, Scripts::diskFillsWhileDrawing),
    DISK_HANGS(4, Scripts::diskHangs),
    CLOCK(3, (r, s) -> {
        nursed(r, s);
        if (s == 600) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.CLOCK_UNTRUSTED, lasting(r, 150)));
        }
    }),
    STALLS(2, (r, s) -> {
        nursed(r, s);
        if (s % 900 == 800) {
            r.stall(6_000);
        }
        if (s >= 5_000 && s < 5_060 && s % 4 == 0) {
            r.stall(4_000);
        }
    }),
    HANDS(3, (r, s) -> {
        nursed(r, s);
        hatchedAndSettled(r, s, "a");
        if (s % 1_500 == 700 || s == 3_900) {
            r.say("a", "hands-in");
        }
    }),
    CLUMSY(6, Scripts::clumsy),
    DENSE(3, Scripts::dense),
    WRONG_CONE(2, Scripts::wrongCone),
    BY_ITSELF(6, Scripts::byItself),
    PESTERED(1, Scripts::pestered),
    KILLED(3, (r, s) -> {
        nursed(r, s);
        hatchedAndSettled(r, s, "a");
        if (Seeds.of(r.world().seed() + s, "kill").nextInt(240) == 0) {
            r.kill();
        }
    });

    /** What happens in a theme, second by second. */
    interface Script {
        void second(Rig rig, long second);
    }

    private final int hours;
    private final Script script;

    Theme(int hours, Script script) {
        this.hours = hours;
        this.script = script;
    }

    /** Runs it to its end, or to the first broken invariant. */
    public Rig run(Rig rig) {
        if (this == DAYS) {
            FaultPlan.random(rig.world().seed(), rig.settings(), hours).faults().forEach(rig.world()::apply);
            rig.withPerson(Habit.draw(rig.world().seed()));
        }
        for (long s = 0; s < hours * 3_600L && rig.invariants().broken().isEmpty(); s++) {
            script.second(rig, s);
            rig.second();
        }
        return rig;
    }
}
