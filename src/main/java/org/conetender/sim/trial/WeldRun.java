package org.conetender.sim.trial;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
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

    private static final int HOUR_S = 3_600;
    /** It welds so long after the start, s (guess: held and known, or just so)… */
    private static final int LEAST_S = 3 * HOUR_S;
    private static final int MOST_S = 8 * HOUR_S;
    /** …once it is on, where contacts stick; one in so many shorts once it is off (guess). */
    private static final int SHORTS_IN = 4;
    /** It is followed for so long, s. */
    private static final long AFTER_S = 4 * HOUR_S;

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
    private final boolean shorts;
    private final Excess excess = new Excess();
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
        shorts = random.nextInt(SHORTS_IN) == 0;
    }

    /** Empty where something was told before, or it was never so. */
    Optional<Notice> run() {
        SimCone cone = rig.world().cones().getFirst();
        SimSwitch heat = rig.world().devices().switches().get("a.heat");
        boolean broken = false;
        for (long s = 0; s < until(broken); s++) {
            if (!broken && s >= weldsAt && heat.commanded() != shorts) {
                if (!told().isEmpty()) {
                    return Optional.empty();
                }
                rig.world().apply(new Fault.OfSwitch("a", "heat", SimSwitch.Fault.WELDED,
                        new Fault.When(rig.world().clock().elapsedMs(), Keeping.FOR_EVER_MS)));
                broken = true;
            }
            second(s);
            double c = cone.water().waterC();
            if (!broken) {
                excess.before(s, c);
            } else {
                after(s, heat.commanded(), cone);
                excess.after(c);
            }
        }
        return mattersS < 0 ? Optional.empty() : Optional.of(notice(cone));
    }

    private long until(boolean broken) {
        return mattersS >= 0 ? mattersS + AFTER_S : MOST_S + (broken ? AFTER_S : HOUR_S);
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
        if (s == Keeping.FILLED_S) {
            rig.world().cones().forEach(c -> Keeping.fill(rig, c));
        }
        rig.second();
    }

    private Notice notice(SimCone cone) {
        SimProbe probe = rig.world().devices().probes()
                .get(cone.settings().fittings().probes().water().getFirst());
        double lags = cone.water().build.quirks().lagS() + probe.build().tauWaterS();
        double rise = cone.settings().fittings().heat().riseKPerS(cone.settings().usual().litres());
        return new Notice(measured, excess.overK(cone.settings().limits().setpointC())
                / Excess.boundK(rise, lags), heatedS, toldS < 0 ? Double.NaN : toldS, first);
    }

    private List<String> told() {
        return Keeping.named(rig).stream().filter(a -> a.cone().equals("a")).map(a -> a.kind().id()).sorted()
                .toList();
    }
}
