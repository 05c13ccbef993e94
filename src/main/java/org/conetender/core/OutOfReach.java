package org.conetender.core;

import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Stage;
import org.conetender.core.heat.Reach;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Watch;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Text;

/** A temperature to which a heater's watts do not bring its water, told only where that is sure. */
final class OutOfReach {

    /** What lacks less than this is not worth a word, K (guess: a probe's error). */
    private static final double LACKS_K = 0.5;

    /** What was told lasts until less than this lacks, K (guess). */
    private static final double STILL_K = 0.25;

    /** The temperature that can be reached is told in steps of this, K. */
    private static final double STEP_K = 0.5;

    private OutOfReach() {}

    /**
     * What a person is told of the temperature that is wanted now. For a wanted hour it is as warm as can be
     * and may be in time ({@link Appointments} tells that); what is ripe is only kept.
     */
    static Optional<Alarms.Cause> cause(Work work, Cone c) {
        Batch b = work.batch(c.id());
        OptionalDouble aim = b.marks().readyBy().isPresent() || b.stage() instanceof Stage.Ready
                ? OptionalDouble.empty() : work.aimC(c);
        if (aim.isEmpty()) {
            return Optional.empty();
        }
        double aimC = aim.getAsDouble();
        return reach(work, c, aimC - STILL_K).map(r -> new Alarms.Cause(c.id(), AlarmKind.OUT_OF_REACH,
                words(work, c, r, aimC), Alarm.Held.BY_CAUSE, r.mostC() > aimC - LACKS_K, true));
    }

    /** A sentence for whoever tells a set-point; empty where it is reached, or nobody can be sure. */
    static String warning(Work work, Cone c, double setC) {
        return reach(work, c, setC - LACKS_K).map(r -> " But " + words(work, c, r, setC) + ".").orElse("");
    }

    /** What its heater reaches, where that is surely below so many °C, as its water is. */
    private static Optional<Reach> reach(Work work, Cone c, double belowC) {
        ConeJudgement j = work.judged.get(c.id());
        return j.thermal().filter(t -> sure(j, t) && j.belief().known() && j.belief().middleC() < belowC)
                .filter(_ -> !PowerAhead.locked(work, c))
                .map(t -> Reach.of(t.estimate(), j.roomOrUsualC(), power(work, c)))
                .filter(r -> r.mostC() < belowC);
    }

    private static boolean sure(ConeJudgement j, Thermal t) {
        return t.fits() && t.following() && j.heat().responded() && t.watch().suspect() == Watch.Suspect.NONE;
    }

    private static double power(Work work, Cone c) {
        return work.live(c.id()).heating().power();
    }

    private static String words(Work work, Cone c, Reach r, double aimC) {
        String room = work.judged.get(c.id()).roomC().map(t -> Text.of(" of %.0f °C", t)).orElse("");
        return Text.of("%.1f °C cannot be reached: in this room%s its heater%s brings the water to about "
                + "%.1f °C", aimC, room, power(work, c) < 1 ? ", sharing the site's watts," : "",
                STEP_K * Math.round(r.likelyC() / STEP_K));
    }
}
