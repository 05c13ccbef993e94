package org.conetender.sim.search;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.conetender.core.ConeLive;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Lives;
import org.conetender.core.batch.Stage;
import org.conetender.core.guard.Handled;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/**
 * What must hold after every tick of the search. No guard, no permit and no ledger is asked: what was told,
 * what is on the disk and what the devices say are, and bounds are design.md's own.
 */
final class Rules {

    /** Air is never off longer (design.md, dangers). */
    static final double HOUSE_CAP_MINUTES = 12;
    /** An output holds for so long after the tick that set it (DEVELOPERS, threads). */
    private static final long LEASE_MS = 4 * Units.SECOND_MS;
    /** A reading serves for so long (control.md §3.3). */
    private static final long READING_LASTS_MS = Units.MINUTE_MS;

    private final Cone cone;
    private final List<String> broken;
    private final RecordRules record;
    private final AlarmRules alarms;

    /** @param broken takes what broke, in words */
    Rules(Cone cone, List<String> broken) {
        this.cone = cone;
        this.broken = broken;
        this.record = new RecordRules(this);
        this.alarms = new AlarmRules(this);
    }

    void check(boolean holds, String rule, String what) {
        if (!holds) {
            broken.add(rule + ": " + what);
        }
    }

    void look(Event e) {
        heat(e);
        lamps(e);
        air(e);
        told(e);
        record.look(e);
        alarms.look(e);
    }

    /** A life begins. @param state before its first tick */
    void begun(World w, State state) {
        record.begun(w, state);
    }

    private static boolean wantsHeat(Stage s) {
        return switch (s) {
            case Stage.Filled _, Stage.Hydrating _, Stage.Incubating _, Stage.Hatching _, Stage.Ready _ ->
                    true;
            case Stage.Clean _, Stage.Settling _, Stage.Settled _, Stage.Drawing _, Stage.Drained _,
                 Stage.Abandoned _ -> false;
        };
    }

    private void heat(Event e) {
        ConeLive.ConeOut out = e.out();
        if (!out.heat() && !out.cutOut()) {
            return;
        }
        Batch b = e.next().batch();
        check(wantsHeat(b.stage()), "heat-stage", "heat while the batch is " + b.stage().word());
        check(wantsHeat(e.durable().stage()), "heat-unwritten", "heat while the record has the batch "
                + e.durable().stage().word());
        Long blind = e.memory().wrongSinceMs().get(Hazard.BLIND);
        check(blind == null || e.nowMs() - blind <= READING_LASTS_MS, "heat-blind", "heat with no reading");
        check(!(e.readingC() >= cone.limits().guardC()), "heat-hot", "heat above the guard");
        check(!e.fitted().probes().level() || e.image().contact("a", ".level") == Level.CLOSED, "heat-dry",
                "heat although the level contact says that there is no water");
        check(!hands(e), "heat-hands", "heat with hands in the water");
        check(b.marks().toppedUp().filter(m -> e.next().state().book().since(m, e.next().world().now())
                .leastMs() < Handled.HANDS_MS).isEmpty(), "heat-topped-up", "heat right after topping up");
        check(e.before().world().paper().durable().locks().isEmpty(), "heat-locked",
                "heat although a lock stands in the record: " + e.before().world().paper().durable().locks());
        check(e.senses().unset().isEmpty() || !e.senses().unset().contains("a.heat"), "heat-stuck",
                "a heater that cannot be set is still wanted on");
        if (cone.fittings().heat().kind() == Cone.HeatKind.IMMERSED && out.heat()) {
            still(e, b);
            check(!out.cutOut() || e.live().judged().proving().part().over(), "heat-untried",
                    "heat before the switches were tried");
        }
    }

    private void still(Event e, Batch b) {
        boolean open = e.fitted().air().proof() && e.image().contact("a", ".air-proof") != Level.CLOSED;
        check(!e.out().airPause() && !e.before().live().out().airPause() && !open
                && !b.marks().valveShut() && !e.durable().marks().valveShut()
                && !e.senses().unset().contains("a.air-pause"), "heat-still",
                        "heat in water that nothing stirs");
    }

    private boolean hands(Event e) {
        long since = e.memory().handsSinceMs();
        return since >= 0 && e.nowMs() - since < Handled.HANDS_MS;
    }

    private void lamps(Event e) {
        boolean on = e.out().lamp() || e.out().trigger();
        check(!on || !hands(e), "lamps-hands", "a lamp with hands in the water");
        boolean trusted = e.live().judged().belief().known();
        check(!on || !trusted
                || !(e.readingC() >= cone.limits().guardC()), "lamps-hot", "a lamp above the guard");
        Boolean beat = e.result().outputs().get("site.heartbeat");
        check(beat == null || !beat || !e.senses().unset().contains("a.heat"), "heartbeat",
                "the heartbeat goes on although a heater cannot be set");
    }

    private void air(Event e) {
        if (!e.out().airPause()) {
            return;
        }
        Batch b = e.next().batch();
        Stage s = b.stage();
        check(s.airOff() != null || !s.hasWater(), "air-stage", "air off while the batch is " + s.word());
        Stage kept = e.durable().stage();
        check(kept.airOff() != null || !kept.hasWater(), "air-unwritten",
                "air off while the record has the batch " + kept.word());
        check(!hands(e), "air-hands", "air off with hands in the water");
        check(s.airOff() == null || e.airOffForMs() + LEASE_MS <= e.capMs(), "air-cap",
                "air off longer than the nauplii bear");
        check(s.airOff() == null || s.airOff().sameBoot(e.image().now())
                && s.airOff().monoMs() >= e.next().state().live().begun().monoMs(), "air-restart",
                "air off in a separation that an earlier life began");
        check(!cone.fittings().air().geometry().canSiphon() || b.marks().valveShut() && s.hasWater()
                && e.durable().marks().valveShut() && kept.hasWater(), "siphon",
                "the pump is off although nobody confirmed that the valve is shut");
        check(!e.senses().unset().contains("a.air-pause"), "air-stuck",
                "an output that cannot be set is used");
        Lives lives = e.before().world().paper().durable().book().lives();
        check(lives.lock().isEmpty() && lives.damage().isEmpty(), "air-locked",
                "air off although the daemon kept dying, or reports may be missing");
    }

    private void told(Event e) {
        Set<String> raised = e.next().state().live().alarms().raised().stream().map(a -> a.kind().id())
                .collect(Collectors.toSet());
        e.memory().wrongSinceMs().forEach((h, since) -> check(e.nowMs() - since < h.withinMs()
                || h.alarms().stream().anyMatch(raised::contains), "untold", "nobody was told: " + h));
        e.result().findings().get(Fitted.CONE).forEach(f -> check(!f.what().isBlank(), "reason",
                "a finding of '" + f.guard() + "' says nothing"));
    }
}
