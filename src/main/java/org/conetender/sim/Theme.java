package org.conetender.sim;

import java.util.List;
import java.util.Map;
import org.conetender.core.image.Step;
import org.conetender.port.Transport.Incoming;
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
    DEAF_OUTPUTS(3, HeatScripts::deafOutputs),
    DEAD_HEATER(4, HeatScripts::deadHeater),
    WELDED_WHEN_KNOWN(6, HeatScripts::weldedWhenKnown),
    DEAD_WHEN_KNOWN(7, HeatScripts::deadWhenKnown),
    CUT_OUT_STUCK(3, HeatScripts::cutOutStuck),
    OWN_SWITCH_STUCK(3, HeatScripts::ownSwitchStuck),
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
        if (s == 8_500) {
            r.say("a", "part-drawn");
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
    NO_BATTERY(4, (r, s) -> {
        nursed(r, s);
        if (s == 3_600) {
            r.say("a", "first-seen");
        }
        if (s == 4_200) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.POWER_CUT, lasting(r, 4)));
            r.world().clock().trust(false);
            r.world().clock().stepWall(-9L * 365 * 24 * 3_600_000);
        }
        // The network is found long after the hour in which the daemon waits for it.
        if (s == 10_000) {
            r.world().clock().stepWall(9L * 365 * 24 * 3_600_000);
            r.world().clock().trust(true);
        }
    }),
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
    COLD_START(3, (r, s) -> {
        nursed(r, s);
        if (s == 1) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.ROOM_COLD, lasting(r, 170)));
        }
    }),
    STALE(2, (r, s) -> {
        nursed(r, s);
        if (s == 1_800) {
            inject(r, "drained", true, Map.of("request-id", SiteRules.STALE + "retained"));
            inject(r, "abandoned", false,
                    Map.of("request-id", SiteRules.STALE + "expired", "expires-in-s", "0"));
        }
        if (s == 1_800 || s == 1_900) {
            inject(r, "topped-up", false, Map.of("request-id", SiteRules.TWICE + "topped-up"));
        }
    }),
    DISK(3, (r, s) -> {
        nursed(r, s);
        if (s == 1_800) {
            r.store(SimStore.Mood.FULL);
        }
        if (s > 1_800 && s < 5_400 && s % 600 == 0) {
            r.say("a", s % 1_200 == 0 ? "first-seen" : "valve-open");
        }
        if (s == 5_400) {
            r.store(SimStore.Mood.HEALTHY);
        }
    }),
    DISK_FILLS_WHILE_DRAWING(4, (r, s) -> {
        nursed(r, s);
        if (s == 3_500) {
            r.world().cone("b").air().valve(false);
            r.say("b", "valve-shut");
        }
        hatchedAndSettled(r, s, "a");
        hatchedAndSettled(r, s, "b");
        if (s == 4_050) {
            r.say("a", "drawing");
        }
        if (s == 4_060) {
            r.store(SimStore.Mood.FULL);
        }
        if (s == 4_070) {
            r.say("a", "part-drawn");
            r.world().cone("b").air().valve(true);
            r.say("b", "valve-open");
            r.say("c", "topped-up");
        }
        if (s == 7_800) {
            r.store(SimStore.Mood.HEALTHY);
        }
    }),
    DISK_HANGS(4, (r, s) -> {
        nursed(r, s);
        hatchedAndSettled(r, s, "a");
        if (s == 4_000) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.DISK_HANGS, lasting(r, 100)));
        }
        if (s == 4_030) {
            r.say("a", "drawing");
            r.say("c", "drained");
        }
        if (s == 4_040) {
            r.say("b", "first-seen");
        }
        if (s == 4_100) {
            r.say("b", "settle");
            r.set("a", "hand/acknowledge", "air-back");
        }
    }),
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
    CLUMSY(6, (r, s) -> {
        if (s == 2) {
            r.set("c", "hand/withdraw", "last"); // Before there is any report: surely, not by the dice.
        }
        if (s % 37 == 5) {
            var dice = Seeds.of(r.world().seed() + s, "clumsy");
            String cone = List.of("a", "b", "c").get(dice.nextInt(3));
            if (dice.nextInt(3) > 0) {
                r.say(cone, Step.values()[dice.nextInt(Step.values().length)].word());
            } else {
                String[] said = Nonsense.SAID.get(dice.nextInt(Nonsense.SAID.size()));
                r.set(cone, said[0], said[1]);
            }
        }
    }),
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

    /** Every cone is filled and started early on, by the book. */
    static void nursed(Rig r, long s) {
        if (s == 20) {
            for (SimCone c : r.world().cones()) {
                c.fill(c.settings().usual().litres(), 22, c.settings().usual().ppt());
                c.air().valve(true);
                c.stock("L-0417", c.settings().usual().cystsG());
                r.say(c.settings().id(), "started");
            }
        }
    }

    /** Somebody says that nauplii swim, starts a separation, and goes away. */
    private static void hatchedAndSettled(Rig r, long s, String cone) {
        if (s == 3_600) {
            r.say(cone, "first-seen");
        }
        if (s == 3_660) {
            r.say(cone, "settle");
        }
    }

    private static void inject(Rig r, String step, boolean retained, Map<String, String> properties) {
        String topic = "homie/5/" + r.settings().site().id() + "-a/hand/step/set";
        r.world().broker().inject(new Incoming(topic, step, retained, properties));
    }

    private static long now(Rig r) {
        return r.world().clock().elapsedMs();
    }

    static When lasting(Rig r, long minutes) {
        return new When(now(r), minutes * 60_000);
    }
}
