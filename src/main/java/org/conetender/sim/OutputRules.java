package org.conetender.sim;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.conetender.core.State;

/** The rules about outputs that cannot be set, and about the heartbeat by which others know. */
final class OutputRules {

    /** A refusal shows in the next tick; one tick of that tick's own lateness is forgiven, s (guess). */
    private static final long SEEN_S = 3;
    /** A tick that comes later than this may not count as on time (core.guard.SilentFailure), ms. */
    private static final long LATE_MS = 2_000;
    /** The heart beats within this time unless something is wrong, s (guess: a stall of 6 s and the rest). */
    private static final long PULSE_S = 10;

    private static final Set<String> NOTHING_TO_PRESS = Set.of("hydrating", "incubating", "hatching",
            "settling", "abandoned");
    /** A start, or a stall of 6 s and what follows, s. */
    private static final long DARK_S = 15;

    /** A filling, the trial of its switches, and a question of three parts, each of minutes (guess), s. */
    private static final long CROSSED_FOUND_S = 40 * 60;
    /** Crossed wires hurt nothing while both cones keep what they were told to; beyond it they do, K. */
    private static final double CROSSED_K = 0.5;

    /** Part of a question in which a heater is on, three times as long as it takes 25 W in 2 L, s. */
    private static final long CROSSED_HEAT_S = 12 * 60;

    private final Rig rig;
    private final Invariants rules;
    private final Map<String, Double> heldC = new HashMap<>();
    private boolean lastBeat;
    private long lastTickMs = -1;

    OutputRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
    }

    void died() {
        lastTickMs = -1;
        lastBeat = false;
    }

    void look(State s) {
        boolean anyHeater = false;
        for (SimCone c : rig.world().cones()) {
            boolean heater = refuses(c, Fixtures.HEAT) || refuses(c, Fixtures.CUT_OUT);
            anyHeater |= heater;
            rules.lasting("stuck-told", c, untold(c, Fixtures.HEAT, "heater-stuck")
                    || untold(c, Fixtures.CUT_OUT, "cut-out-stuck"), SEEN_S,
                    "an output of the heater could not be set and nobody was told");
            boolean loose = refuses(c, Fixtures.HEAT) && c.heaterOn();
            rules.lasting("stuck-heat", c, loose && cutOutObeys(c), SEEN_S,
                    "a heater that could not be switched off went on heating although a cut-out is fitted");
            boolean other = false;
            for (String outlet : c.fixtures.switches.keySet()) {
                String alarm = outlet.equals(Fixtures.AIR_PAUSE) ? "air-stuck" : "output-stuck";
                other |= !outlet.equals(Fixtures.HEAT) && !outlet.equals(Fixtures.CUT_OUT)
                        && untold(c, outlet, alarm);
            }
            rules.lasting("output-told", c, other, SEEN_S,
                    "an output could not be set and nobody was told");
            crossed(c, s.live().cones().get(c.settings().id()).hold().aimC());
            button(s, c);
        }
        heart(s, anyHeater);
    }

    /**
     * Whose heater it really is must be told before it has warmed the wrong water for long. Where the heat of
     * one of them is locked off before that can be seen, its switch seemingly welded or its heater dead,
     * nothing more can be seen: then that is what is told, with the advice to look at plugs and wires.
     */
    private void crossed(SimCone c, double aimC) {
        double heldC = held(c, aimC);
        Feed feed = c.fixtures.feed;
        boolean strange = feed.strange() && c.heaterOn();
        rules.lasting("crossed-heat", c, strange, CROSSED_HEAT_S,
                "another cone's output went on heating a cone");
        // Behind a cut-out that a suspicion opened nothing warms it any more, and nothing more can be seen.
        boolean hazard = strange && c.water().waterC() > heldC + CROSSED_K
                || feed.crossed() && !feed.cut() && rules.lastedS("crossed", c.settings().id()) > 0;
        rules.lasting("crossed", c, hazard && !crossingTold(c), CROSSED_FOUND_S,
                "the heater of one cone warmed another and nobody was told");
    }

    /** What it is held at; water that is to cool is no measure of another's heat until it has, °C. */
    private double held(SimCone c, double aimC) {
        double waterC = c.water().waterC();
        double before = heldC.getOrDefault(c.settings().id(), waterC);
        double lowestC = c.water().waterPresent() ? Math.min(before, waterC) : waterC;
        double held = Double.isNaN(aimC) ? lowestC : Math.max(aimC, lowestC);
        heldC.put(c.settings().id(), held);
        return held;
    }

    private boolean crossingTold(SimCone c) {
        Feed feed = c.fixtures.feed;
        return rules.told().anywhere("wrong-cone") || rules.told().any(c.settings().id(), "switch-stuck")
                || !feed.conducts() && rig.world().cones().stream()
                .filter(any -> any == c || feed.follows(any.fixtures.feed))
                .anyMatch(any -> rules.told().any(any.settings().id(), "welded", "no-effect"));
    }

    /** The lamp in the hand button says whether a press would be taken; in both directions. */
    private void button(State s, SimCone c) {
        if (c.fixtures.switches.get(Fixtures.BUTTON_LAMP) == null) {
            return;
        }
        boolean lit = rules.on(c, Fixtures.BUTTON_LAMP);
        String stage = s.book().cone(c.settings().id()).batch().stage().word();
        rules.lasting("button-lamp", c, lit && !refuses(c, Fixtures.BUTTON_LAMP) && NOTHING_TO_PRESS
                .contains(stage), SEEN_S, "the button's lamp was on although nothing can be reported by it");
        boolean dark = !lit && !refuses(c, Fixtures.BUTTON_LAMP) && !rig.process().hangs();
        rules.lasting("button-dark", c, dark && stage.equals("drained"), DARK_S,
                "the button's lamp was off although 'cleaned' would have been taken");
    }

    /** Judged by its edges, as what watches it does. */
    private void heart(State s, boolean stuck) {
        SimSwitch heart = rig.world().devices().switches().get("site.heartbeat");
        if (heart == null) {
            return;
        }
        long tick = s.live().timers().last().orElseThrow().monoMs();
        boolean late = lastTickMs >= 0 && tick - lastTickMs > LATE_MS;
        boolean edge = heart.conducting() != lastBeat;
        rules.lasting("stuck-beat", "", stuck && edge, SEEN_S,
                "the heart beat on although a heater could not be switched");
        rules.lasting("pulse", "", !edge && !stuck && !late && !heart.refuses()
                && !rig.process().hangs(), PULSE_S,
                "the heart stopped although all was well");
        lastBeat = heart.conducting();
        lastTickMs = tick;
    }

    private boolean untold(SimCone c, String outlet, String alarm) {
        return refuses(c, outlet) && !rules.told().any(c.settings().id(), alarm);
    }

    private static boolean refuses(SimCone c, String outlet) {
        SimSwitch s = c.fixtures.switches.get(outlet);
        return s != null && s.refuses();
    }

    private boolean cutOutObeys(SimCone c) {
        // Where wires are crossed it is not its own cut-out that the heater hangs on.
        return c.settings().fittings().heat().cutOut() && !c.fixtures.feed.crossed()
                && !Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfSwitch s
                        && s.cone().equals(c.settings().id()) && s.outlet().equals(Fixtures.CUT_OUT));
    }
}
