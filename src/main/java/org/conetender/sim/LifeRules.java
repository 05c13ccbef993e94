package org.conetender.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.image.Ask;
import org.conetender.core.judge.Breath;
import org.conetender.core.unit.Moment;

/** The rules about lives that end too early: deaths in a row, and cuts on a machine without a clock. */
final class LifeRules {

    /** A set clock is never so far off unless it was stepped, ms. */
    private static final long LIED_MS = 5_000;
    /** Three deaths within this are a loop; the daemon sees each up to a minute early (style.md, leases). */
    private static final long WITHIN_MS = 8 * 60_000;
    /** When it was last well is written once a minute, ms. */
    private static final long WRITTEN_MS = 60_000;
    /** A probe may be wrong by so much (science.md §9), and water warmer where it is not, K. */
    private static final double PROBE_K = 1.5;
    /** A cut is known to the minute, and the machine boots for a while. */
    private static final long SURELY_SHORT_MS = 3 * 60_000;

    private final Rig rig;
    private final Invariants rules;
    private final List<Long> deathsMs = new ArrayList<>();
    /** When the first of three deaths in a row was, until a life has begun that can tell of them. */
    private OptionalLong loopsFromMs = OptionalLong.empty();
    /** Whether they kept dying and nobody has acknowledged that, by the facts up to that number. */
    private boolean looping;
    private long lookedSeq;
    /** For how long nothing was written down, ms, and whether the power was off in it. */
    private long gapMs;
    private boolean dark;
    /** Such times in all since a clock last told the daemon where it is in time, and the most of it, ms. */
    private long unpartedMs;
    private long longestGapMs;
    /** The least cap while a batch is marked. */
    private final Map<String, Double> markedCapMs = new TreeMap<>();
    /** Number of the last fact when the last life ended. */
    private long endedSeq;
    private long untrustedAtMs;
    private boolean lied;
    /** By how much the trusted clock was off, ms, and when that changed last. */
    private long offMs;
    private long steppedAtMs = Long.MIN_VALUE;
    /** Number of the last fact that was left when the record was damaged; nobody has looked since. */
    private OptionalLong damagedAt = OptionalLong.empty();

    LifeRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
    }

    /**
     * A process that lived has died without a word, by the world's count. What no disk took down, its
     * beginning or when it was last well, no later life can know.
     */
    void death(long atMs) {
        boolean kept = rig.disk().since(endedSeq).stream().anyMatch(f -> f.change() instanceof Change.Began);
        endedSeq = rig.disk().lastSeq();
        if (!kept || gapMs > WRITTEN_MS) {
            return;
        }
        deathsMs.add(atMs);
        int n = deathsMs.size();
        if (n >= 3 && atMs - deathsMs.get(n - 3) <= WITHIN_MS) {
            loopsFromMs = OptionalLong.of(deathsMs.get(n - 3));
            lookedSeq = endedSeq;
        }
    }

    /** The facts that told of deaths before may be lost with others; heat is locked for those already. */
    void damaged() {
        damagedAt = OptionalLong.of(rig.disk().lastSeq());
        endedSeq = rig.disk().lastSeq();
        // Nothing tells any more when the daemon last lived.
        longestGapMs = Long.MAX_VALUE;
        deathsMs.clear();
        loopsFromMs = OptionalLong.empty();
        looping = false;
    }

    /** Whether somebody acknowledged that after that fact. */
    private boolean seen(long seq, String alarm) {
        return rig.disk().since(seq).stream().anyMatch(f ->
                f.change() instanceof Change.Told(Ask.Acknowledge(String of)) && of.equals(alarm));
    }

    /** A second more, with and without a living daemon. */
    void always() {
        boolean powered = rig.world().powered();
        gapMs = rig.process().diskTakes() && powered ? rig.alive() ? 0 : gapMs : gapMs + 1_000;
        boolean was = dark;
        dark = gapMs > 0 && (dark || !powered);
        boolean parted = !dark && rig.alive() && rig.world().clock().now().wallTrusted();
        unpartedMs = parted ? 0 : unpartedMs + (!dark ? 0 : was ? 1_000 : gapMs);
        longestGapMs = Math.max(longestGapMs, unpartedMs);
        Moment clock = rig.world().clock().now();
        long off = clock.wallTrusted() ? clock.wallMs() - rig.world().clock().trueWallMs() : offMs;
        steppedAtMs = Math.abs(off - offMs) > LIED_MS ? rig.world().clock().elapsedMs() : steppedAtMs;
        offMs = off;
        lied |= Math.abs(offMs) > LIED_MS;
    }

    /** Until the disk says that somebody acknowledged, by its own words and not by the daemon's book. */
    private void damage() {
        if (damagedAt.isPresent() && seen(damagedAt.getAsLong(), "record-damaged")) {
            damagedAt = OptionalLong.empty();
        }
        boolean locked = damagedAt.isPresent();
        rules.lasting("damage-told", "", locked && !rules.told().anywhere("record-damaged"), 10,
                "the record was damaged and nobody was told");
        for (SimCone c : rig.world().cones()) {
            rules.lasting("damage", c, locked && (rules.on(c, "heat") || rules.on(c, "air-pause")), 0,
                    "heat was on, or air off, after the record was damaged and before anybody looked");
        }
    }

    void look(State s) {
        damage();
        long now = rig.world().clock().elapsedMs();
        untrustedAtMs = rig.world().clock().now().wallTrusted() ? untrustedAtMs : now;
        // A set clock that steps between them says that they were further apart than they were.
        looping |= loopsFromMs.isPresent() && steppedAtMs < loopsFromMs.getAsLong() - WRITTEN_MS;
        loopsFromMs = OptionalLong.empty();
        looping &= !seen(lookedSeq, "crash-loop");
        lookedSeq = rig.disk().lastSeq();
        boolean locked = looping;
        boolean told = rules.told().anywhere("crash-loop");
        rules.lasting("crash-loop-told", "", locked && !told, 10,
                "the daemon died three times within ten minutes and nobody was told");
        for (SimCone c : rig.world().cones()) {
            rules.lasting("crash-loop", c, locked && (rules.on(c, "heat") || rules.on(c, "air-pause")), 0,
                    "heat was on, or air off, after the third death within ten minutes");
            shortCut(s, c, now);
        }
    }

    /** A short cut leaves no mark once the clock has been set. */
    private void shortCut(State s, SimCone c, long now) {
        boolean marked = false;
        for (String d : s.book().cone(c.settings().id()).batch().marks().words().doubts()) {
            marked |= d.startsWith("the power was off");
        }
        // It is marked by what could be borne then: water that cools since bears more.
        if (!marked) {
            markedCapMs.remove(c.settings().id());
        }
        double capMs = markedCapMs.merge(c.settings().id(), capMinutes(s, c) * 60_000, Math::min);
        // A mark is taken away by a fact, which needs a disk that takes it, and while they are in the water.
        boolean lifted = rig.process().diskTakes() && now - untrustedAtMs > 60_000
                && s.book().cone(c.settings().id()).batch().stage().hasAnimals();
        // A set clock that steps has lied, before or since: then nobody can tell how long a cut was.
        rules.lasting("short-cut", c, marked && !lied && longestGapMs < capMs - SURELY_SHORT_MS && lifted, 60,
                "a short power cut marked a batch for good");
    }

    /** What is borne at least, by what was told of the batch, in water as warm as its probe may show it. */
    private double capMinutes(State s, SimCone c) {
        String id = c.settings().id();
        boolean honest = !Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfBus
                || f instanceof Fault.OfProbe p && p.cone().equals(id));
        double waterC = honest ? c.water().waterC() + PROBE_K : Breath.WARMEST_C;
        double perGram = s.live().cones().get(id).known().naupliiPerGram();
        Batch b = s.book().cone(id).batch();
        double oxygen = b.stock().flatMap(k -> b.fill().map(f -> Oxygen.bornMinutes(
                k.cystsG() * perGram / (1_000 * f.litres()), waterC, f.ppt())))
                .orElse(Double.POSITIVE_INFINITY);
        return Math.min(c.settings().timing().airOffCapMinutes(), oxygen);
    }
}
