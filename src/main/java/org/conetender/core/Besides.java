package org.conetender.core;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.conetender.core.guard.WeldedHeater;
import org.conetender.core.guard.WrongCone;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Crossing;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Watch;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.HeatKind;

/** What is judged of cones beside each other, once each was judged alone. */
final class Besides {

    /** A weld is named at 0.3 K, and what was in its element then comes out (guess: 25 W/L, lags of 90 s). */
    private static final double BEHIND_LOCK_K = 0.8;
    /** They heat again once that much is left: five steps of its probe lie between (guess). */
    private static final double COOLED_AGAIN_K = 0.5;

    private Besides() {}

    /** All cones of this tick; also forgives those whose crossed wires were put right. */
    static Map<String, Beside> of(Work work) {
        Map<String, Crossing> crossings = new TreeMap<>();
        Set<String> touched = touched(work);
        for (Cone c : work.settings.cones()) {
            crossings.put(c.id(), crossing(work, c, touched));
            mended(work, c).ifPresent(other -> work.judged.computeIfPresent(other, (id, j) ->
                    Refreshed.forgiven(j)));
        }
        Map<String, Beside> all = new HashMap<>();
        for (Cone c : work.settings.cones()) {
            Optional<String> asks = Optional.empty();
            boolean pauses = false;
            for (Map.Entry<String, Crossing> e : crossings.entrySet()) {
                boolean behind = work.ledger.book().latch(e.getKey(), WeldedHeater.ID).isPresent()
                        && warmsBehindLock(work, work.settings.cone(e.getKey()).orElseThrow(), c)
                        && goesWith(work, e, c);
                asks = asks.isEmpty() && (behind || e.getValue().concerns(c.id()))
                        ? Optional.of(e.getKey()) : asks;
                pauses |= behind || e.getValue().pauses(c.id());
            }
            Beside b = new Beside(crossings.get(c.id()), asks, pauses);
            all.put(c.id(), b);
            if (b.crossing().open()) {
                work.judged.computeIfPresent(c.id(), (id, j) -> j.asked());
            }
            // Water that stopped when others were switched off is warmed by no switch of its own.
            if (b.crossing().stopped() && work.judged.get(c.id()).suspect().heated()) {
                work.judged.computeIfPresent(c.id(), (id, j) -> j.cleared());
            }
        }
        return all;
    }

    /** Whether it touches a cone with warmer water: that may warm it, as a room does that nobody measures. */
    static boolean warms(Work work, Cone c) {
        double here = work.live(c.id()).judged().belief().middleC();
        for (Cone o : work.settings.cones()) {
            if (!o.id().equals(c.id()) && o.touches(c)
                    && work.live(o.id()).judged().belief().middleC() > here) {
                return true;
            }
        }
        return false;
    }

    /**
     * Whether that cone, locked as welded, has warmed behind its open cut-out, in a cooler room, by more than
     * its own switch explains. Whatever the question says, a heater beside it that it goes with may be why,
     * and waits until it has cooled: of two cones of unlike size whose probes are exchanged the one answers
     * too weakly to be named.
     */
    private static boolean warmsBehindLock(Work work, Cone locked, Cone c) {
        ConeJudgement j = work.judged.get(locked.id());
        Beside was = work.live(c.id()).beside();
        boolean waited = was.paused() && was.askedFor().filter(locked.id()::equals).isPresent();
        return !locked.id().equals(c.id()) && !locked.touches(c) && locked.fittings().heat().cutOut()
                && j.heat().riseWhileOffK(j.belief()) >= (waited ? COOLED_AGAIN_K : BEHIND_LOCK_K);
    }

    private static boolean goesWith(Work work, Map.Entry<String, Crossing> locked, Cone c) {
        return work.judged.get(locked.getKey()).thermal()
                .filter(t -> locked.getValue().hintsAt(c.id(), t.proof().traits())).isPresent();
    }

    private static Crossing.Second second(Work work, Cone c, ConeJudgement j) {
        boolean cutOut = c.fittings().heat().cutOut();
        return cutOut && j.tried().cutShort().tells() ? Crossing.Second.TELLS
                : !work.ledger.book().cone(c.id()).latches().isEmpty() ? Crossing.Second.LOCKED
                : !cutOut ? Crossing.Second.NONE
                : work.live(c.id()).out().cutOut() ? Crossing.Second.CONDUCTS : Crossing.Second.OPEN;
    }

    /** Whether its heater was found to do nothing here. */
    private static boolean dead(ConeJudgement j) {
        return j.heat().failed() || j.suspect() == Watch.Suspect.DEAD;
    }

    /** The cone whose heater warmed that one, if a person's acknowledgement has just released it. */
    private static Optional<String> mended(Work work, Cone c) {
        return work.ledger.book().latch(c.id(), WrongCone.ID).isPresent() ? Optional.empty()
                : work.before.book().latch(c.id(), WrongCone.ID)
                        .flatMap(l -> WrongCone.culprit(work.settings, c.id(), l));
    }

    private static Crossing crossing(Work work, Cone c, Set<String> touched) {
        ConeJudgement j = work.judged.get(c.id());
        Crossing was = work.live(c.id()).beside().crossing();
        if (j.thermal().isEmpty() || WrongCone.known(work.settings, work.ledger.book(), c.id())) {
            return Crossing.NONE;
        }
        if (work.dtMs == 0) {
            return was;
        }
        Thermal t = j.thermal().get();
        boolean anew = j.water().lastAtMs() != work.live(c.id()).judged().water().lastAtMs();
        double probeC = anew && j.belief() instanceof Belief.Trusted(double now) ? now : Double.NaN;
        Crossing.Seen seen = new Crossing.Seen(work.dtMs / 1000.0, probeC, new Crossing.Own(
                t.proof().traits(), t.watch().driftKPerS(), t.watch().underway().felt(), j.roomOrUsualC(),
                work.live(c.id()).hold().aimC(), j.suspect() == Watch.Suspect.WELDED, second(work, c, j),
                dead(j)), others(work, c, touched));
        return touched.contains(c.id()) || !readable(j) ? was.unseen(seen, false)
                : j.belief() instanceof Belief.Trusted ? was.after(seen) : was.unseen(seen, true);
    }

    /** Whether its water is known and stirred. */
    private static boolean readable(ConeJudgement j) {
        return j.belief().known() && j.thermal().isPresent() && j.thermal().get().following()
                && j.air().offForMs() == 0;
    }

    /**
     * Cones that are not left alone: somebody is there, or it is empty. While its own switches are tried, one
     * that does not open warms it, and that trial is not to be disturbed.
     */
    private static Set<String> touched(Work work) {
        Set<String> touched = new HashSet<>();
        for (Cone c : work.settings.cones()) {
            if (work.handled(c.id()) || !work.batch(c.id()).stage().hasWater()
                    || work.judged.get(c.id()).proving().part().misleads()) {
                touched.add(c.id());
            }
        }
        return touched;
    }

    /** Heaters that may be in question: not those of baths, nor of cones that touch. */
    private static Map<String, Crossing.Other> others(Work work, Cone c, Set<String> touched) {
        Map<String, Crossing.Other> others = new TreeMap<>();
        for (Cone o : work.settings.cones()) {
            HeatKind kind = o.fittings().heat().kind();
            if (!o.id().equals(c.id()) && (kind == HeatKind.IMMERSED || kind == HeatKind.MAT)
                    && !o.touches(c)) {
                others.put(o.id(), new Crossing.Other(work.live(o.id()).out().heat(),
                        o.fittings().heat().watts() / c.fittings().heat().watts(),
                        dead(work.judged.get(o.id())), touched.contains(o.id())));
            }
        }
        return others;
    }
}
