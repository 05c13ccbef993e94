package org.conetender.sim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.conetender.core.State;
import org.conetender.core.batch.Fact;
import org.conetender.core.settings.Cone;

/**
 * What must hold after every second, judged by the plant's truth and not by the daemon's belief; one
 * for every row of the table of dangers (design.md). The first that breaks ends the run.
 */
public final class Invariants {

    /** Requests whose id begins so were sent stale on purpose and must never be obeyed. */
    public static final String STALE = "stale-";

    /** @param rule its name  @param cone empty for the site  @param atMs world time  @param what in words */
    public record Violation(String rule, String cone, long atMs, String what) {}

    private final Rig rig;
    /** Since when each hazard has lasted, by rule and cone, world time. */
    private final Map<String, Map<String, Long>> sinceMs = new HashMap<>();
    private final Map<String, Long> seenAt = new TreeMap<>();
    private final List<Violation> broken = new ArrayList<>();
    private final SiteRules site;
    private final OutputRules outputs;
    private final LifeRules lives;
    private final AirRules airs;
    private final TruthRules truth;
    private final HeatBounds heat;
    private final CallRules calls;
    private final SaidRules saids;
    private final Said said;
    private final Cuts cuts = new Cuts();
    private Told told = Told.NOTHING;
    private int damages;

    Invariants(Rig rig) {
        this.rig = rig;
        this.site = new SiteRules(rig, this);
        this.outputs = new OutputRules(rig, this);
        this.lives = new LifeRules(rig, this);
        this.airs = new AirRules(rig, this);
        this.truth = new TruthRules(rig, this);
        this.heat = new HeatBounds(rig, this);
        this.calls = new CallRules(rig, this);
        this.saids = new SaidRules(rig, this);
        this.said = new Said(rig);
    }

    public List<Violation> broken() {
        return broken;
    }

    /** Somebody acknowledged when these were the facts of that cone; the book forgets it with the alarm. */
    void saw(String cone, List<Fact> facts) {
        if (!facts.isEmpty()) {
            seenAt.put(cone, facts.getLast().seq());
        }
    }

    /** Whether somebody acknowledged after that fact. */
    boolean saw(String cone, Fact last) {
        return seenAt.getOrDefault(cone, 0L) == last.seq();
    }

    /** The process is about to die. @param last what it holds */
    void dying(State last) {
        truth.dying(last);
    }

    /** The record was damaged while nobody lived; what it has lost counts no more. */
    private void damaged() {
        damages = rig.disk().damaged();
        seenAt.clear();
        said.damaged();
        truth.damaged();
        lives.damaged();
        airs.damaged();
        cuts.damaged();
    }

    /** What ends with the process starts anew with the next. @param alive whether there was one */
    void died(boolean alive) {
        if (alive) {
            lives.death(rig.world().clock().elapsedMs());
        }
        sinceMs.clear();
        site.died();
        outputs.died();
        airs.died();
        calls.died();
    }

    /** What people have said. */
    Said said() {
        return said;
    }

    /** The last power cut. */
    Cuts cuts() {
        return cuts;
    }

    void look() {
        if (rig.disk().damaged() != damages) {
            damaged();
        }
        said.look();
        for (SimCone c : rig.world().cones()) {
            always(c);
        }
        truth.always();
        lives.always();
        heat.always();
        if (rig.alive()) {
            State s = rig.state();
            told = Told.of(s);
            truth.look(s);
            heat.look(s);
            site.look(s);
            outputs.look(s);
            lives.look(s);
            calls.look(s);
            for (SimCone c : rig.world().cones()) {
                ConeRules cone = new ConeRules(rig, this, c, s);
                cone.look();
                airs.look(c, s, cone);
                saids.look(s, c);
            }
        }
    }

    /** What must hold with and without a living daemon. */
    private void always(SimCone c) {
        Cone.Air air = c.settings().fittings().air();
        boolean harmful = on(c, "air-pause") && air.geometry().canSiphon() && c.water().waterPresent()
                && c.air().valveOpen() && !said.of(c.settings().id()).valveShut();
        lasting("siphon", c, harmful, 0, "the pump was stopped although water could run back into it");
        // The house's cap counts with animals in the water, which the daemon has from hatching on.
        boolean animals = rig.alive()
                && rig.state().book().cone(c.settings().id()).batch().stage().hasAnimals();
        lasting("suffocation", c, on(c, "air-pause") && animals, 12 * 60,
                "air was commanded off for more than 12 min");
    }

    boolean on(SimCone c, String outlet) {
        SimSwitch s = c.fixtures.switches.get(outlet);
        return s != null && s.commanded();
    }

    /** Breaks when {@code hazard} has lasted {@code seconds} without a break; at once when that is 0. */
    void lasting(String rule, SimCone c, boolean hazard, long seconds, String what) {
        lasting(rule, c == null ? "" : c.settings().id(), hazard, seconds, what);
    }

    void lasting(String rule, String cone, boolean hazard, long seconds, String what) {
        Map<String, Long> since = sinceMs.get(rule);
        if (!hazard) {
            if (since != null && !since.isEmpty()) {
                since.remove(cone);
            }
            return;
        }
        long now = rig.world().clock().elapsedMs();
        if (since == null) {
            since = new HashMap<>();
            sinceMs.put(rule, since);
        }
        if (now - since.computeIfAbsent(cone, k -> now) >= seconds * 1_000) {
            broken.add(new Violation(rule, cone, now, what));
        }
    }

    /** The alarms that stand. */
    Told told() {
        return told;
    }

    /** How long that hazard has lasted, s; 0 while it does not. */
    long lastedS(String rule, String cone) {
        Long since = sinceMs.getOrDefault(rule, Map.of()).get(cone);
        return since == null ? 0 : (rig.world().clock().elapsedMs() - since) / 1_000;
    }
}
