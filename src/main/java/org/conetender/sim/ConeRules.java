package org.conetender.sim;

import java.util.Optional;
import org.conetender.core.ConeLive;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Stage;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.judge.Thermal;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.HeatKind;
import org.conetender.core.settings.Cone.Limits;
import org.conetender.core.unit.Moment;

/** The rules of one cone for one second. Bounds are the guards' own figures plus what sensing adds. */
final class ConeRules {

    /** A probe may be wrong by this much, K (offset, lag, step; science.md §9). */
    private static final double PROBE_K = 1.0;

    /** What was just filled is let settle for three minutes, then the alarm waits for one. */
    private static final long DRY_TOLD_S = 5 * 60;
    /** Ten minutes by its row, and one to be sure of the contact. */
    private static final long WET_TOLD_S = 11 * 60;

    /**
     * 25 W welded in 2 L are found within 139 s (control.md §2.4); twice that under a cold element, and two
     * minutes more where the heaters of other cones must be asked about first (guess).
     */
    private static final long WELDED_FOUND_S = 278 + 120;

    /** A reading may be used for a minute (control.md §3.3), and is looked at once a second, ms. */
    private static final long OLD_MS = 61_000;

    /** Two readings of such an age are of the same water (core.judge.Water). */
    private static final long FRESH_MS = 10_000;

    /** Water so near what is held wants heat in parts of the time only, K (guess). */
    private static final double NEAR_K = 0.3;

    /** Hands, and water that was poured in, count for 15 min (design.md); a minute more, ms. */
    private static final long HANDLED_MS = 16 * 60_000;

    /** Of a filling, what is left when falling water must have been told: the heater is covered to 0.4. */
    private static final double LEFT = 0.6;

    private final Rig rig;
    private final Invariants rules;
    private final SimCone cone;
    private final Cone settings;
    private final ConeBook book;
    private final ConeBook recorded;
    private final Batch batch;
    private final Optional<Thermal> thermal;
    /** What the daemon holds it at, °C; NaN while it wants no heat. */
    private final double aimC;
    private final boolean waterKnown;

    ConeRules(Rig rig, Invariants rules, SimCone cone, State state) {
        this.rig = rig;
        this.rules = rules;
        this.cone = cone;
        this.settings = cone.settings();
        this.book = state.book().cone(settings.id());
        this.recorded = state.ledger().committed().cone(settings.id());
        this.batch = book.batch();
        ConeLive live = state.live().cones().get(settings.id());
        this.thermal = live.judged().thermal();
        this.aimC = live.hold().aimC();
        this.waterKnown = live.judged().water().belief().known();
    }

    void look() {
        heat();
        probe();
        watched();
        air();
        cut();
    }

    private boolean told(String... any) {
        return rules.told().any(settings.id(), any);
    }

    private void heat() {
        boolean heat = rules.on(cone, "heat");
        boolean cutOut = rules.on(cone, "cut-out");
        boolean lamps = rules.on(cone, "lamp") || rules.on(cone, "trigger");
        double water = cone.water().waterC();
        rules.lasting("safe-aim", cone, aimC > Math.min(settings.limits().guardC() - Limits.MARGIN_C,
                Limits.MOST_SETPOINT_C), 0, "more than the most that is safe was aimed at");
        // Water that no air stirs, where nothing shows that, is not as warm everywhere as at its probe.
        boolean hot = cone.water().litres() >= SimCone.PROBE_AT * settings.usual().litres()
                && water > settings.limits().guardC() + PROBE_K
                && probeHonest() && (cone.air().flowLpm() > 0 || honest("air-proof"));
        rules.lasting("too-hot", cone, hot && (heat || cutOut || lamps), 60,
                "the water was above the guard with heat or lamps on");
        rules.lasting("too-hot-told", cone, hot && water > settings.limits().arrestC() + PROBE_K
                && batch.stage().develops() && !told("arrest", "overheat", "room-too-warm", "cooked"), 120,
                "the water was above arrest and nobody was told");
        // One that hangs bare warms no water, and only a contact for the level can tell that it does.
        boolean unasked = cone.heaterOn() && !heat && batch.stage().hasWater()
                && !cone.fixtures.feed.crossed() && (cone.water().heaterCovered() || honest("level"));
        rules.lasting("welded", cone, unasked && settings.fittings().heat().cutOut() && !broken("cut-out"),
                15 * 60,
                "a heater that was off kept heating although a cut-out is fitted");
        // Whoever was told that nobody knows how warm it is, is told of that too; while nobody knows.
        // In a room as warm as the water nothing tells the one from the other; both are in those words.
        boolean blind = told("probe") || !waterKnown && told("probe-unsteady")
                || told("room-too-warm") && rig.world().room().airC() > water - PROBE_K;
        boolean crossed = Latched.crossingTold(rig, rules.told(), settings.id());
        rules.lasting("welded-told", cone, unasked && !blind && !crossed
                && !told("welded", "overheat", "heater-stuck", "cut-out-stuck"), 20 * 60,
                "a heater that was off kept heating and nobody was told");
        // Behind an open cut-out, as in a trial, no heater does anything; nor does one that is not asked.
        boolean dead = heat && cutOut == settings.fittings().heat().cutOut() && !cone.heaterOn()
                && rig.world().powered();
        rules.lasting("no-effect", cone, (dead || rules.lastedS("no-effect", settings.id()) > 0
                && batch.stage().hasWater() && broken("heat") && !(water >= aimC))
                && !crossed && !told("no-effect", "probe", "probe-unsteady", "probe-frozen",
                "switch-stuck", "overheat", "dry", "welded", "heater-stuck", "cut-out-stuck", "wrong-cone"),
                60 * 60,
                "a heater did nothing for an hour and nobody was told");
        boolean levelHonest = honest("level");
        rules.lasting("dry", cone, heat && levelHonest && !cone.water().heaterCovered(), 10,
                "a heater was on without water although the level contact said so");
        rules.lasting("dry-told", cone, levelHonest && batch.stage().hasWater() && !handled()
                && !cone.water().heaterCovered() && !told("dry"), DRY_TOLD_S,
                "the water was low, the level contact said so, and nobody was told");
        SimContact level = cone.fixtures.contacts.get(Fixtures.LEVEL);
        rules.lasting("wet-told", cone, batch.stage() instanceof Stage.Drained && level != null
                && level.read() == Level.CLOSED && !told("wet-contact"), WET_TOLD_S,
                "a cone was reported drained, its level contact said wet, and nobody was told");
        rules.lasting("cooked-told", cone, cone.water().waterPresent() && batch.stage().develops()
                && probeHonest() && water > settings.limits().lossC() + PROBE_K && !told("cooked"), 120,
                "the water was at the loss temperature and nobody was told");
        boolean proofHonest = honest("air-proof");
        rules.lasting("still-water", cone, heat && proofHonest && cone.air().flowLpm() <= 0
                && settings.fittings().heat().kind() == HeatKind.IMMERSED, 5,
                "immersed heat without stirring");
        rules.lasting("paused-heat", cone, heat && rules.on(cone, Fixtures.AIR_PAUSE)
                && settings.fittings().heat().kind() == HeatKind.IMMERSED, 2,
                "immersed heat with the air switched off");
    }

    /** Whether that contact is fitted and says what is true. */
    boolean honest(String contact) {
        return cone.fixtures.contacts.containsKey(contact) && !broken(contact);
    }

    private boolean broken(String device) {
        return Fault.any(rig.world().wrong(), f -> f.cone().equals(settings.id()) && switch (f) {
            // One that opens and closes lets half of the heat through.
            case Fault.OfSwitch s -> s.outlet().equals(device) && s.kind() != SimSwitch.Fault.CHATTERING;
            case Fault.OfContact c -> c.contact().equals(device)
                    && c.kind() != SimContact.Fault.CHATTERING;
            case Fault.OfAir a -> device.equals("air-proof");
            case Fault.OfProbe _, Fault.Swapped _, Fault.Crossed _, Fault.OfWater _, Fault.OfRoomProbe _,
                 Fault.OfBus _, Fault.OfSite _ -> false;
        } && !(f instanceof Fault.OfAir(String c, Air.Fault kind, var w)
                && kind != Air.Fault.PROOF_STUCK_CLOSED
                && kind != Air.Fault.PROOF_STUCK_OPEN));
    }

    private boolean gone(String probe) {
        ProbeSample p = rig.world().devices().probes().get(probe).latest(rig.world().clock().now().monoMs());
        return !(p.reading() instanceof Reading.Value) || p.ageMs() > OLD_MS;
    }

    /** Whether two probes that answer are further apart than two good ones in one water can be. */
    private boolean differ() {
        if (settings.fittings().probes().water().size() < 2) {
            return false;
        }
        double leastC = Double.POSITIVE_INFINITY;
        double mostC = Double.NEGATIVE_INFINITY;
        for (String id : settings.fittings().probes().water()) {
            ProbeSample p = rig.world().devices().probes().get(id).latest(rig.world().clock().now().monoMs());
            double c = p.reading() instanceof Reading.Value(double shown) && p.ageMs() < FRESH_MS ? shown
                    : Double.NaN;
            leastC = Math.min(leastC, c);
            mostC = Math.max(mostC, c);
        }
        return mostC - leastC > PROBE_K;
    }

    private boolean probeHonest() {
        return !Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfBus
                || f instanceof Fault.OfProbe(var c, var i, var k, var w)
                && c.equals(settings.id()) || f instanceof Fault.Swapped(var a, var b, var w2)
                && (a.equals(settings.id()) || b.equals(settings.id())));
    }

    /**
     * A probe that is gone or in air must be told; a frozen or swapped one cannot be seen without learning.
     */
    private void probe() {
        boolean anyGone = false;
        boolean allGone = true;
        for (String probe : settings.fittings().probes().water()) {
            boolean gone = gone(probe);
            anyGone |= gone;
            allGone &= gone;
        }
        rules.lasting("probe", cone, allGone && batch.stage().hasWater() && !handled()
                && !told("probe", "probe-unsteady"), 5 * 60, "no probe answered and nobody was told");
        rules.lasting("pair-told", cone, differ() && batch.stage().hasWater() && !handled()
                && !told("probe", "probe-unsteady"), 5 * 60,
                "the two probes of a cone said what cannot both be true, and nobody was told");
        rules.lasting("one-probe", cone, anyGone && batch.stage().hasWater() && !handled()
                && !told("probe", "probe-unsteady", "one-probe"), 14 * 60,
                "one of two probes was gone and nobody was told");
    }

    /** What the watch over a learned cone must find, and by when; nothing else may be wrong meanwhile. */
    private void watched() {
        boolean proven = thermal.filter(t -> t.proof().passed()).isPresent();
        boolean calm = batch.stage().hasWater() && proven && !handled() && cone.air().flowLpm() > 0;
        boolean unasked = cone.heaterOn() && !rules.on(cone, "heat") && broken("heat");
        boolean coldRoom = rig.world().room().airC() < cone.water().waterC() - 1 - PROBE_K
                && !Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfRoomProbe
                || f instanceof Fault.OfBus);
        rules.lasting("welded-soon", cone, calm && unasked && coldRoom && probeHonest()
                && !told("welded", "overheat", "heater-stuck", "cut-out-stuck", "probe", "probe-unsteady"),
                WELDED_FOUND_S,
                "a known cone was heated against our will for longer than it takes to see it");
        // It may heat, be stopped and heat again while it is found out whose heater it is.
        boolean welded = proven && batch.stage().hasWater() && settings.fittings().heat().cutOut()
                && Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfSwitch s
                && s.cone().equals(settings.id()) && s.outlet().equals(Fixtures.HEAT)
                && s.kind() == SimSwitch.Fault.WELDED);
        rules.lasting("welded-late", cone, welded && coldRoom && probeHonest()
                && cone.water().waterC() > aimC - NEAR_K && !told("welded", "wrong-cone", "switch-stuck",
                "overheat", "heater-stuck", "cut-out-stuck", "probe", "probe-unsteady"), 2 * 60 * 60,
                "a switch was welded for two hours in water that was warm enough, and nobody was told");
        boolean stands = calm && Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfProbe p
                && p.cone().equals(settings.id())
                && (p.kind() == SimProbe.Fault.FROZEN || p.kind() == SimProbe.Fault.IN_AIR));
        boolean away = false;
        for (String id : settings.fittings().probes().water()) {
            double shownC = rig.world().devices().probes().get(id).shownC();
            away |= Math.abs(shownC - cone.water().waterC()) > PROBE_K + 0.2;
        }
        // Water that its room keeps where it is asks nothing of a probe: then that is shown.
        boolean shown = thermal.filter(Thermal::untestable).isPresent();
        // What fell out of its water was told when it fell; what it reads since is as steady as water.
        boolean fell = Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfProbe p
                && p.cone().equals(settings.id()) && p.kind() == SimProbe.Fault.IN_AIR);
        boolean heard = told("probe-frozen", "probe", "probe-unsteady", "no-effect", "welded", "dry",
                "overheat");
        rules.lasting("fall-heard", cone, fell && (heard || rules.lastedS("fall-heard", settings.id()) > 0),
                AirRules.NEVER_S, "");
        rules.lasting("frozen-told", cone, stands && away && !shown && cone.water().heaterCovered() && !heard
                && rules.lastedS("fall-heard", settings.id()) == 0, 5 * 60,
                "a probe stood still or lay in air, far from its water, and nobody was told");
        boolean seeps = calm && settings.fittings().heat().switchKind() == Cone.SwitchKind.RELAY
                && Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfWater w
                && w.cone().equals(settings.id()) && w.kind() == Fault.Water.SEEP);
        double left = batch.fill().map(f -> cone.water().litres() / f.litres()).orElse(1.0);
        boolean low = left < LEFT && cone.water().heaterCovered();
        rules.lasting("falling-told", cone, seeps && low && !told("water-falling", "no-effect",
                "dry", "probe", "probe-unsteady", "overheat", "welded"), 30 * 60,
                "water seeped away until little more than the heater was covered, and nobody was told");
        // Before much heat is given, both switches must open: one that does not is told, whatever hides it.
        boolean stuck = batch.stage().hasWater() && cone.water().heaterCovered() && probeHonest()
                && Fault.any(rig.world().wrong(), f -> f instanceof Fault.OfSwitch s
                && s.cone().equals(settings.id()) && s.kind() == SimSwitch.Fault.WELDED
                && (s.outlet().equals(Fixtures.HEAT) || s.outlet().equals(Fixtures.CUT_OUT))
                && batch.fill().filter(fill -> sinceMs(fill.at())
                <= rig.world().clock().elapsedMs() - s.when().atMs()).isPresent());
        boolean twice = cone.heaterOn() && rules.on(cone, "heat") && rules.on(cone, "cut-out");
        rules.lasting("switch-tried", cone, stuck && twice && !told("switch-stuck", "welded"), 60,
                "normal heat was given in a batch although one of its switches was stuck when it began");
    }

    /** Whether somebody was at the water so lately that its probes prove nothing. */
    private boolean handled() {
        return rig.world().clock().elapsedMs() - rules.said().of(settings.id()).touchedMs() < HANDLED_MS
                || perhaps(batch.marks().handsIn(), recorded.batch().marks().handsIn())
                || perhaps(batch.marks().toppedUp(), recorded.batch().marks().toppedUp());
    }

    /** Whether it may have been lately: before a cut whose length nobody knows, or by no record. */
    private boolean perhaps(Optional<Moment> m, Optional<Moment> written) {
        Moment now = rig.world().clock().now();
        return m.filter(at -> !at.sameBoot(now) || !m.equals(written))
                .filter(at -> rig.state().book().since(at, now).leastMs() < HANDLED_MS).isPresent();
    }

    private void air() {
        boolean paused = rules.on(cone, "air-pause");
        long offForS = cone.air().pausedMs() / 1_000;
        boolean animals = batch.stage().hasAnimals();
        boolean shut = batch.marks().valveShut();
        boolean proofHonest = honest("air-proof");
        rules.lasting("air-failed", cone, proofHonest && !paused && cone.air().offTrueMs() > 0 && !shut
                && batch.stage().hasWater() && !told("air-failed", "air-failed-animals"), 120,
                "no air arrived and nobody was told");
        rules.lasting("air-failed-animals", cone, proofHonest && !paused && cone.air().offTrueMs() > 0
                && !shut && animals && !told("air-failed-animals"), 120,
                "no air arrived at nauplii and nobody was told that it is urgent");
        rules.lasting("shut-valve", cone, !paused && shut && batch.stage().develops()
                && !told("air-shut-in"), 90,
                "air ran against a shut valve and nobody was told");
        boolean lost = rules.said().valveAside(settings.id());
        rules.lasting("valve-aside", cone, lost && !paused && batch.stage().develops()
                && !told("air-shut-in"), 90, "a report that the valve is shut was set aside, and nobody "
                + "was told that no air gets in");
        rules.lasting("valve-aside-heat", cone, lost && rules.on(cone, "heat"), 0,
                "heat was on though a report that the valve is shut was set aside");
        rules.lasting("siphon-told", cone, batch.stage().airOff() != null && !shut
                && settings.fittings().air().geometry().canSiphon() && !told("siphon"), 5,
                "a separation waits for a valve that nobody reported shut, and nobody was told");
        double cap = settings.timing().airOffCapMinutes();
        boolean drawing = batch.stage() instanceof Stage.Drawing;
        // Drawing has a cap of its own, counted from the same moment (design.md, the life of a batch).
        long dueS = (long) ((drawing ? 12 : cap) - 2) * 60;
        rules.lasting("air-due", cone, paused && animals && shut && !told("air-due"), dueS,
                "air could not return by itself and this was not told 2 min before the cap");
        rules.lasting("air-cap", cone, paused && animals && !drawing, (long) (cap * 60),
                "air was commanded off beyond the configured cap");
        boolean fresh = batch.stage() instanceof Stage.Settling && offForS < 5;
        boolean spent = cone.air().outOfBreath(settings.fittings().air().proof());
        rules.lasting("air-again", cone, paused && fresh && spent, 2,
                "air was commanded off again before the water had recovered");
        // An output that welded, before or while it paused the air, makes no pause of the daemon's.
        rules.lasting("paused", cone, paused && animals, AirRules.NEVER_S, "");
        long heldS = Math.min(offForS, rules.lastedS("paused", settings.id()));
        rules.lasting("drawing-told", cone, paused && drawing && heldS > 12 * 60 - 100
                && !told("air-due"), 2,
                "air was about to return to a person who draws, unannounced");
    }

    private long sinceMs(Moment m) {
        return rig.world().clock().now().since(m).mostMs();
    }

    /** After a long cut with animals in the water the batch must be in doubt. */
    private void cut() {
        rig.invariants().cuts().look(settings.id(), batch);
        double borneMs = settings.timing().airOffCapMinutes() * 60_000;
        boolean long1 = rig.invariants().cuts().forMs() > borneMs + 60_000
                && rig.process().livedMs() > 60_000;
        rules.lasting("power-cut", cone, long1 && batch.stage().hasAnimals()
                && rig.invariants().cuts().hadAnimals(settings.id(), batch)
                && batch.marks().words().doubts().isEmpty() && !told("doubtful"), 60,
                "a long power cut left no doubt");
        // Without a clock the mark waits for one, an hour at most, while the alarm stands.
        rules.lasting("power-cut-marked", cone, long1 && batch.stage().hasAnimals()
                && rig.invariants().cuts().hadAnimals(settings.id(), batch)
                && batch.marks().words().doubts().isEmpty(), 62 * 60, "a long power cut was never marked");
    }
}
