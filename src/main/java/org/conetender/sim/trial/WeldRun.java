package org.conetender.sim.trial;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.guard.Guards;
import org.conetender.core.settings.Settings;
import org.conetender.sim.Fault;
import org.conetender.sim.Rig;
import org.conetender.sim.Seeds;
import org.conetender.sim.SimCone;
import org.conetender.sim.SimProbe;
import org.conetender.sim.SimSwitch;

/**
 * A switch that welds, under a whole daemon: alone, or beside a cone of which it may be asked whether its
 * heater is the cause. The cone has a cut-out; its room is measured or not.
 */
final class WeldRun {

    private static final long FILLED_S = 20;
    private static final int HOUR_S = 3_600;
    /** It welds so long after the start, once it is on, s (guess: held and known, or just so). */
    private static final int LEAST_S = 3 * HOUR_S;
    private static final int MOST_S = 8 * HOUR_S;
    private static final double COOL_C = 21;
    /** It is followed for so long, s. */
    private static final long AFTER_S = 4 * HOUR_S;
    private static final long FOR_EVER_MS = 1_000L * 1_000 * HOUR_S;
    /** The least excess that counts, K, and of the rise during both lags and two seconds (issue). */
    private static final double LEAST_K = 0.4;
    private static final double COAST = 1.5;
    private static final Set<String> NAMING = Set.of("wrong-cone", "welded", "no-effect", "switch-stuck",
            "probe-frozen", "probe-unsteady", "overheat", "room-too-warm");

    /**
     * @param measured whether the room is
     * @param share highest water after it over the highest of the hour before, as a share of its bound
     * @param heatedS from the first second in which it mattered until no power reached the heater any more
     * @param toldS from then until it was told as welded; NaN for never
     * @param first that was told after it, "" for nothing
     */
    record Notice(boolean measured, double share, double heatedS, double toldS, String first) {}

    private final Rig rig;
    private final boolean measured;
    private final int weldsAt;
    private double usualHighC = -Double.MAX_VALUE;
    private double earlierHighC = -Double.MAX_VALUE;
    private double highC = -Double.MAX_VALUE;
    private long mattersS = -1;
    private long heatedS = -1;
    private long toldS = -1;
    private String first = "";

    /** @param alone whether the second cone is left away */
    WeldRun(Pair pair, boolean alone) {
        Settings both = pair.settings();
        Settings settings = alone ? new Settings(both.site(), List.of(both.cones().getFirst())) : both;
        rig = new Rig(settings, pair.seed(), pair.bench(), Guards.ALL);
        measured = both.site().roomProbe().isPresent();
        SplittableRandom random = Seeds.of(pair.seed(), "weld");
        weldsAt = random.nextInt(LEAST_S, MOST_S);
    }

    /** Empty where something was told before, or it never was on. */
    Optional<Notice> run() {
        SimCone cone = rig.world().cones().getFirst();
        SimSwitch heat = rig.world().devices().switches().get("a.heat");
        boolean broken = false;
        for (long s = 0; s < MOST_S + HOUR_S && !broken || mattersS >= 0 && s < mattersS + AFTER_S
                || broken && mattersS < 0 && s < MOST_S + AFTER_S; s++) {
            if (!broken && s >= weldsAt && heat.commanded()) {
                if (!told().isEmpty()) {
                    return Optional.empty();
                }
                rig.world().apply(new Fault.OfSwitch("a", "heat", SimSwitch.Fault.WELDED,
                        new Fault.When(rig.world().clock().elapsedMs(), FOR_EVER_MS)));
                broken = true;
            }
            second(s);
            double c = cone.water().waterC();
            if (!broken) {
                before(s, c);
            } else {
                after(s, heat.commanded(), cone);
                highC = Math.max(highC, c);
            }
        }
        return mattersS < 0 ? Optional.empty() : Optional.of(notice(cone));
    }

    private void before(long s, double c) {
        if (s % HOUR_S == 0) {
            earlierHighC = usualHighC;
            usualHighC = -Double.MAX_VALUE;
        }
        usualHighC = Math.max(usualHighC, c);
    }

    private void after(long s, boolean commanded, SimCone cone) {
        mattersS = mattersS < 0 && !commanded ? s : mattersS;
        if (mattersS < 0) {
            return;
        }
        heatedS = cone.heaterOn() ? s - mattersS : heatedS;
        List<String> told = told();
        first = first.isEmpty() && !told.isEmpty() ? told.getFirst() : first;
        toldS = toldS < 0 && told.contains("welded") ? s - mattersS : toldS;
    }

    private void second(long s) {
        if (s == FILLED_S) {
            for (SimCone c : rig.world().cones()) {
                c.fill(c.settings().usual().litres(), COOL_C, c.settings().usual().ppt());
                c.air().valve(true);
                c.water().lid(c.settings().fittings().vessel().lid());
                rig.say(c.settings().id(), "started");
            }
        }
        rig.second();
    }

    private Notice notice(SimCone cone) {
        SimProbe probe = rig.world().devices().probes()
                .get(cone.settings().fittings().probes().water().getFirst());
        double lags = cone.water().build.quirks().lagS() + probe.build().tauWaterS() + 2;
        double rise = cone.settings().fittings().heat().riseKPerS(cone.settings().usual().litres());
        double usual = Math.max(cone.settings().limits().setpointC(), Math.max(usualHighC, earlierHighC));
        return new Notice(measured, Math.max(0, highC - usual) / Math.max(LEAST_K, COAST * rise * lags),
                heatedS, toldS < 0 ? Double.NaN : toldS, first);
    }

    private List<String> told() {
        return !rig.alive() ? List.of() : rig.state().live().alarms().raised().stream()
                .filter(a -> a.cone().equals("a")).map(Alarm::kind).map(k -> k.id())
                .filter(NAMING::contains).sorted().toList();
    }
}
