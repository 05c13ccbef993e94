package org.conetender.sim;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.HeatKind;

/**
 * How far above its set-point a cone with a cut-out may get, whatever single thing is wrong, and whatever
 * pair: the bounds are those of the issue of a welded switch (control.md §2.4), and the error of its probe.
 * Where no contact proves the air and it stops, the upper water is warmer than its probe: that counts as its
 * error, up to arrest. So does what is heated until it is missed by a probe that hangs in other water.
 */
final class HeatBounds {

    /** What a single fault may bring at least, K, and what another adds. */
    private static final double SINGLE_K = 0.5;
    private static final double PAIR_K = 1.5;
    /** What a heater may warm unfelt by a probe that is swapped, K (guess: three steps and what follows). */
    private static final double UNFELT_K = 0.5;
    /** Half as much again as rises during both lags, of heater and probe, and two ticks, s. */
    private static final double COAST = 1.5;
    private static final double TICKS_S = 2;
    /** So long after its peak the room's warmth is in the water yet, ms (guess). */
    private static final long WARM_ROOM_MS = 6 * 3_600_000L;
    /** A lamp and a pump warm water above its room by this much at most, K (guess). */
    private static final double ABOVE_ROOM_K = 1;

    /** What was over so long ago has no part in what the water does now, ms (guess). */
    private static final long OVER_MS = 6 * 3_600_000L;

    private final Rig rig;
    private final Invariants rules;
    private final Map<String, Since> since = new HashMap<>();
    /** Of the room of late, each warmer than all that came after it. */
    private final Deque<Warmth> peaks = new ArrayDeque<>();

    /** @param atMs world time, ms  @param airC the room then, °C */
    private record Warmth(long atMs, double airC) {}

    /** What has happened to one batch. */
    private static final class Since {
        long batch = -1;
        double aimC;
        /** By how much unstirred water was warmer than around its probe, until that has cooled off, K. */
        double aloftK;
        /** When each was there last, world time, ms. */
        final Map<Fault, Long> faults = new HashMap<>();
        /** When hot water came in last, world time, ms: where the record is damaged it outlasts its batch. */
        long kettleMs = Long.MIN_VALUE / 2;
    }

    HeatBounds(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
    }

    /** With and without a living daemon: whoever pours does not ask for it. */
    void always() {
        for (Fault f : rig.world().wrong()) {
            if (kettle(f)) {
                since.computeIfAbsent(f.cone(), k -> new Since()).kettleMs = rig.world().clock().elapsedMs();
            }
        }
    }

    void look(State s) {
        long now = rig.world().clock().elapsedMs();
        double airC = rig.world().room().airC();
        while (!peaks.isEmpty() && peaks.getLast().airC() <= airC) {
            peaks.removeLast();
        }
        peaks.addLast(new Warmth(now, airC));
        while (now - peaks.getFirst().atMs() > WARM_ROOM_MS) {
            peaks.removeFirst();
        }
        for (SimCone c : rig.world().cones()) {
            Cone.Heat heat = c.settings().fittings().heat();
            if (heat.kind() != HeatKind.IMMERSED || !heat.cutOut()) {
                continue;
            }
            Batch b = s.book().cone(c.settings().id()).batch();
            Since t = since.computeIfAbsent(c.settings().id(), k -> new Since());
            if (t.batch != b.number()) {
                t.batch = b.number();
                t.aimC = c.settings().limits().setpointC();
                t.faults.clear();
            }
            double aim = s.live().cones().get(c.settings().id()).hold().aimC();
            t.aimC = Double.isNaN(aim) ? t.aimC : Math.max(t.aimC, aim);
            for (Fault f : rig.world().wrong()) {
                if (touches(f, c.settings().id())) {
                    t.faults.put(f, now);
                }
            }
            t.faults.values().removeIf(last -> now - last > OVER_MS);
            bound(c, t);
        }
    }

    private void bound(SimCone c, Since t) {
        // Crossed wires put the outputs of two cones wrong at once.
        int n = t.faults.size();
        for (Fault f : t.faults.keySet()) {
            n += f instanceof Fault.Crossed ? 1 : 0;
        }
        double litres = Math.max(c.water().litres(), 0.4 * c.settings().usual().litres());
        double rise = c.settings().fittings().heat().riseKPerS(litres);
        // In a warm room more may warm the water than its heater: that takes longer to tell.
        double roomPeakC = peaks.getFirst().airC();
        boolean warmRoom = roomPeakC > t.aimC - ABOVE_ROOM_K;
        double plain = Math.max(t.aimC, roomPeakC + ABOVE_ROOM_K)
                + Math.max(SINGLE_K, COAST * rise * lagsS(c)) + error(c) + unfeltK(t)
                + (n > 1 || warmRoom ? PAIR_K : 0);
        double aloftK = c.water().waterC() - c.water().waterC(SimCone.HEIGHT[0]);
        t.aloftK = Math.max(aloftK, c.water().waterC() > t.aimC + SINGLE_K ? t.aloftK : 0);
        boolean judged = n < 3 && !beyondSoftware(t.faults.keySet()) && c.water().heaterCovered()
                && rig.world().clock().elapsedMs() - t.kettleMs > OVER_MS;
        boolean further = judged && c.water().waterC() > plain + t.aloftK;
        rules.lasting(n > 1 ? "excess-of-two" : "excess", c, further, 5,
                "the water went further above its set-point than " + n + " faults may bring it");
        // Where no contact proves the air nothing shows that it stops: the probe lies below the plume.
        boolean proven = c.fixtures.contacts.containsKey(Fixtures.PROOF);
        boolean aloft = c.water().waterC(1) > c.settings().limits().arrestC();
        // A valve that somebody left shut is another thing that is wrong.
        boolean single = n + (c.air().valveOpen() ? 0 : 1) < 2;
        rules.lasting("layer", c, judged && single && !warmRoom && proven && aloft, 5,
                "water above the probe went beyond arrest with one fault");
    }

    /** No heater brought that heat. */
    private static boolean kettle(Fault f) {
        return f instanceof Fault.OfWater w && w.kind() == Fault.Water.HOT_POURED;
    }

    /** Whether neither of the two switches opens: no program can do anything then. */
    private static boolean beyondSoftware(Set<Fault> faults) {
        boolean heat = false;
        boolean cutOut = false;
        for (Fault f : faults) {
            if (f instanceof Fault.OfSwitch s && switch (s.kind()) {
                case WELDED, INVERTED, DEAF, CHATTERING -> true;
                case NONE, OPEN, REFUSING -> false;
            }) {
                heat |= s.outlet().equals(Fixtures.HEAT);
                cutOut |= s.outlet().equals(Fixtures.CUT_OUT);
            }
        }
        return heat && cutOut;
    }

    private static double lagsS(SimCone c) {
        double slowestS = 0;
        for (SimProbe p : c.fixtures.probes) {
            slowestS = Math.max(slowestS, p.build().tauWaterS());
        }
        return c.water().build.quirks().lagS() + TICKS_S + slowestS;
    }

    /** By how much its probes say too little, K: one that says too much keeps the water cool. */
    private static double error(SimCone c) {
        double most = 0;
        for (SimProbe p : c.fixtures.probes) {
            most = Math.max(most, -p.errorC());
        }
        return most;
    }

    private static double unfeltK(Since t) {
        return t.faults.keySet().stream().anyMatch(Fault.Swapped.class::isInstance) ? UNFELT_K : 0;
    }

    private static boolean touches(Fault f, String cone) {
        return switch (f) {
            case Fault.Swapped s -> s.cone().equals(cone) || s.other().equals(cone);
            case Fault.Crossed x -> x.cone().equals(cone) || x.other().equals(cone);
            case Fault.OfSite s -> switch (s.kind()) {
                case POWER_CUT, ROOM_HOT, ROOM_COLD -> true;
                case LINK_DOWN, LINK_SLOW, NOBODY_COMES, CLOCK_UNTRUSTED, CLOCK_WRONG, DISK_HANGS,
                     NO_BATTERY -> false;
                case PUMPS_STOP -> true;
            };
            case Fault.OfRoomProbe _, Fault.OfBus _ -> true;
            case Fault.OfProbe _, Fault.OfSwitch _, Fault.OfContact _, Fault.OfAir _, Fault.OfWater _ ->
                    f.cone().equals(cone);
        };
    }
}
