package org.conetender.sim;

import java.util.OptionalDouble;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Stage;
import org.conetender.core.unit.Moment;

/** The rules that go by what people said, and not by what the daemon made of it. */
final class SaidRules {

    /** A report acts in the tick in which it is durable; a lease and a tick are forgiven, s. */
    private static final long ACTS_S = 6;
    /** Hands are in for 15 min (design.md); what they were said to be in for is known to a minute, ms. */
    private static final long HANDS_MS = 14 * 60_000;
    /** So long without any heat in cold water somebody has to be told why, s (guess: twice any trial). */
    private static final long COLD_S = 3 * 3_600;
    /** Water is cold so far below what was told, K (guess: more than a probe errs). */
    private static final double COLD_K = 3;

    private final Rig rig;
    private final Invariants rules;

    SaidRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
    }

    void look(State s, SimCone c) {
        Said.Standing said = rules.said().of(c.settings().id());
        Batch b = s.book().cone(c.settings().id()).batch();
        boolean heat = rules.on(c, Fixtures.HEAT);
        rules.lasting("heat-empty", c, heat && !said.water(), ACTS_S,
                "a heater was on in a cone that was said to be empty, or given up");
        double aimC = s.live().cones().get(c.settings().id()).hold().aimC();
        OptionalDouble most = said.told();
        double mostC = Math.max(most.orElse(c.settings().limits().setpointC()),
                c.settings().limits().floorC());
        rules.lasting("aim-told", c, aimC > mostC, ACTS_S, "more was aimed at than anybody had told");
        hands(s, c, said);
        boolean paused = rules.on(c, Fixtures.AIR_PAUSE);
        rules.lasting("air-restart", c, paused && b.stage().airOff() != null
                && !rules.said().settledInThisLife(c.settings().id()), ACTS_S,
                "air was off in a separation that an earlier life began");
        boolean full = c.cysts().isPresent() && c.water().heaterCovered();
        rules.lasting("air-off-unheard", c, paused && b.stage().airOff() == null && full
                && rules.said().unheard(c.settings().id())
                && !c.fixtures.contacts.containsKey(Fixtures.LEVEL), ACTS_S,
                "air was off in a cone of which nobody had told anything since the record was damaged");
        cold(c, said, b.stage(), heat);
    }

    private void hands(State s, SimCone c, Said.Standing said) {
        Moment now = rig.world().clock().now();
        // Across a boot the daemon's clocks may have lied about how long that was.
        boolean known = s.book().cone(c.settings().id()).batch().marks().handsIn()
                .filter(m -> !m.sameBoot(now)).isEmpty();
        boolean in = known && rig.world().clock().elapsedMs() - said.handsMs() < HANDS_MS;
        rules.lasting("hands-in", c, in && (rules.on(c, Fixtures.HEAT) || rules.on(c, Fixtures.HARVEST)
                || rules.on(c, Fixtures.TRIGGER) || rules.on(c, Fixtures.AIR_PAUSE)), 2,
                "something was on with hands in");
    }

    /** A daemon that only ever refuses is safe for the building, and no use: it must say so. */
    private void cold(SimCone c, Said.Standing said, Stage stage, boolean heat) {
        double heldC = said.told().orElse(c.settings().limits().setpointC());
        boolean cold = said.water() && stage.growing() && c.water().waterC() < heldC - COLD_K
                && c.settings().fittings().heat().fitted() && rig.world().powered()
                && !Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfBus || f instanceof Fault.Swapped
                || f instanceof Fault.Crossed || f instanceof Fault.OfProbe && f.cone().equals(
                        c.settings().id()));
        boolean told = !rules.told().none(c.settings().id())
                || Latched.crossingTold(rig, rules.told(), c.settings().id());
        rules.lasting("cold-told", c, cold && !heat && !told, COLD_S,
                "no heat was given for hours to water that is cold, and nobody was told why");
    }
}
