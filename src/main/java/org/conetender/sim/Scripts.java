package org.conetender.sim;

import java.util.List;
import java.util.Map;
import org.conetender.core.image.Step;
import org.conetender.port.Transport.Incoming;
import org.conetender.sim.Fault.When;

/** What happens in the longer themes, second by second, and what several themes have in common. */
final class Scripts {

    private Scripts() {}

    static void deafOutputs(Rig r, long s) {
        nursed(r, s);
        // Each strikes while the heater is on: alone, then with its cut-out, then the pump's relay.
        boolean heating = r.world().cone("a").heaterOn() && r.world().wrong().isEmpty();
        if (s >= 1_200 && s < 3_000 && heating) {
            r.world().apply(new Fault.OfSwitch("a", "heat", SimSwitch.Fault.DEAF, lasting(r, 30)));
        }
        if (s >= 3_600 && s < 5_400 && heating) {
            r.world().apply(new Fault.OfSwitch("a", "heat", SimSwitch.Fault.DEAF, lasting(r, 30)));
            r.world().apply(new Fault.OfSwitch("a", "cut-out", SimSwitch.Fault.DEAF, lasting(r, 30)));
        }
        if (s == 7_900) {
            r.say("b", "first-seen");
        }
        if (s == 8_000) {
            r.world().apply(new Fault.OfSwitch("b", "air-pause", SimSwitch.Fault.DEAF, lasting(r, 20)));
            r.world().apply(new Fault.OfSwitch("c", "lamp", SimSwitch.Fault.DEAF, lasting(r, 20)));
        }
        if (s == 8_300) {
            r.say("b", "settle");
        }
    }

    static void diskFillsWhileDrawing(Rig r, long s) {
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
            r.disk().mood(SimStore.Mood.FULL);
        }
        if (s == 4_070) {
            r.say("a", "part-drawn");
            r.world().cone("b").air().valve(true);
            r.say("b", "valve-open");
            r.say("c", "topped-up");
        }
        if (s == 7_800) {
            r.disk().mood(SimStore.Mood.HEALTHY);
        }
    }

    static void diskHangs(Rig r, long s) {
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
    }

    static void clumsy(Rig r, long s) {
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
    }

    static void noBattery(Rig r, long s) {
        nursed(r, s);
        if (s == 3_600) {
            r.say("a", "first-seen");
        }
        if (s == 4_200) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.POWER_CUT, lasting(r, 4)));
            r.world().clock().trust(false);
            r.world().clock().stepWall(-9L * 365 * 24 * 3_600_000);
        }
        // Whoever takes a report back now cannot be told how old it is.
        if (s == 4_700) {
            r.set("a", "hand/withdraw", "last");
        }
        // The network is found long after the hour in which the daemon waits for it.
        if (s == 10_000) {
            r.world().clock().stepWall(9L * 365 * 24 * 3_600_000);
            r.world().clock().trust(true);
        }
    }

    /** Nauplii of other cones are put in, as dense as is still allowed; nobody comes to draw them. */
    static void dense(Rig r, long s) {
        for (String cone : List.of("a", "c")) {
            if (s == 20) {
                SimCone c = r.world().cone(cone);
                c.fill(2, 27, 25);
                c.air().valve(true);
                c.stock("L-0417", 0.01);
                r.say(cone, "filled");
                r.set(cone, "hand/stocked", "{\"lot\":\"L-0417\",\"cysts-g\":10}");
            }
            if (s == 60) {
                r.world().cone(cone).cysts().orElseThrow().join(10);
                r.say(cone, "first-seen");
            }
            if (s == 3_600 || s == 7_200) {
                r.say(cone, "settle");
            }
        }
        if (s == 3_720) {
            r.say("c", "drawing");
        }
    }

    /** Words that were meant for another cone empty one in the book; at two of them it is noticed. */
    static void wrongCone(Rig r, long s) {
        nursed(r, s);
        if (s == 3_600) {
            r.say("a", "first-seen");
            r.say("c", "first-seen");
        }
        if (s == 4_000) {
            r.say("a", "drained");
            r.say("c", "cleaned");
        }
        if (s == 5_500) {
            r.set("c", "hand/withdraw", "last");
        }
        if (s == 6_000) {
            r.say("a", "relay-exchanged"); // A solid-state switch heats its mat.
        }
    }

    /** A feed comes near while the air of a ripe batch fails: the daemon may begin, but not yet. */
    static void byItself(Rig r, long s) {
        nursed(r, s);
        if (s == 60) {
            r.world().cone("a").cysts().orElseThrow().join(2);
        }
        hatchedAndSettled(r, s, "a");
        hatchedAndSettled(r, s, "b");
        if (s == 17_500) {
            r.world().apply(new Fault.OfAir("a", Air.Fault.TORN_DIAPHRAGM, lasting(r, 12)));
        }
    }

    /** Words that make no sense, at a broker and at the board: each is refused with its own reason. */
    static void pestered(Rig r, long s) {
        nursed(r, s);
        if (s % 10 == 0 && s >= 100 && (s - 100) / 10 < Nonsense.TYPED.size()) {
            r.socket().tell(Nonsense.TYPED.get((int) (s - 100) / 10));
        }
        if (s % 10 == 5 && s >= 100 && (s - 100) / 10 < Nonsense.SENT.size()) {
            String[] said = Nonsense.SENT.get((int) (s - 100) / 10);
            r.set("a", said[0], said[1]);
        }
        if (s == 900 || s == 910) {
            r.set("c", s == 900 ? "hand/step" : "hand/withdraw", s == 900 ? "hands-in" : "last");
        }
        if (s == 1_000) {
            r.say("b", "abandoned");
        }
        if (s == 1_020) {
            r.say("b", "started");
        }
        for (int i = 0; s == 1_200 && i < 70; i++) {
            r.set("c", "water/setpoint", "26");
        }
        for (int i = 0; s == 1_300 && i < 2; i++) {
            inject(r, "topped-up", false, Map.of("request-id", SiteRules.TWICE + "at-once"));
        }
        if (s >= 1_400 && s % 10 == 0 && (s - 1_400) / 10 < Nonsense.REFILLED.size()) {
            r.socket().tell(Nonsense.REFILLED.get((int) (s - 1_400) / 10));
        }
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
    static void hatchedAndSettled(Rig r, long s, String cone) {
        if (s == 3_600) {
            r.say(cone, "first-seen");
        }
        if (s == 3_660) {
            r.say(cone, "settle");
        }
    }

    static void inject(Rig r, String step, boolean retained, Map<String, String> properties) {
        String topic = "homie/5/" + r.settings().site().id() + "-a/hand/step/set";
        r.world().broker().inject(new Incoming(topic, step, retained, properties));
    }

    static long now(Rig r) {
        return r.world().clock().elapsedMs();
    }

    static When lasting(Rig r, long minutes) {
        return new When(now(r), minutes * 60_000);
    }
}
