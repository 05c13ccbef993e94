package org.conetender.core;

import org.conetender.core.batch.Batch;
import org.conetender.core.guard.Suffocation;
import org.conetender.core.guard.View;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Breath;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/** How long the air of a batch may be off: the least of the configured cap, the house's, and the oxygen's. */
public final class AirOff {

    /** A reading this old when the air went off still holds: heat is off since, so water only cools. */
    private static final long KNOWN_BEFORE_MS = Units.MINUTE_MS;

    private AirOff() {}

    /** @param judged what is believed of the cone in this tick  @param naupliiPerGram that its lot gives */
    public static View.Caps caps(Cone cone, Batch b, ConeJudgement judged, double naupliiPerGram) {
        return caps(cone, b, warmestC(b, judged), naupliiPerGram);
    }

    /** @param waterC how warm the water is at most, °C */
    static View.Caps caps(Cone cone, Batch b, double waterC, double naupliiPerGram) {
        double oxygen = Breath.charge(b, naupliiPerGram).map(c -> Oxygen.airOffMinutes(c, waterC))
                .orElse(Suffocation.LONGEST_MINUTES);
        double drawing = Math.min(Suffocation.LONGEST_MINUTES, oxygen);
        double settled = Math.min(drawing, cone.timing().airOffCapMinutes());
        return new View.Caps(Units.msOfMinutes(settled), Units.msOfMinutes(drawing),
                Units.msOfMinutes(Math.max(0, Math.min(cone.timing().settleMinutes(), settled - 2))));
    }

    /**
     * How warm the water will be at its harvest, °C, as far as can be said when the cysts go in: a tap's cold
     * water is warmed to the set-point, and what is warmer already may stay so.
     */
    static double harvestC(Cone cone, Batch b, ConeJudgement judged) {
        double now = warmestC(b, judged);
        return cone.fittings().heat().fitted()
                ? Math.max(now, b.marks().setpointC().orElse(cone.limits().setpointC())) : now;
    }

    /**
     * The warmest the water can be. Who draws takes the water from the probe, and must not lose minutes by
     * it: what was read when the air went off stands until it is back.
     */
    private static double warmestC(Batch b, ConeJudgement judged) {
        Moment off = b.stage().airOff();
        boolean knownThen = off != null && !Double.isNaN(judged.water().lastC())
                && judged.water().lastAtMs() >= off.monoMs() - KNOWN_BEFORE_MS;
        return Breath.warmestC(knownThen && !judged.belief().known()
                ? new Belief.Trusted(judged.water().lastC()) : judged.belief());
    }
}
