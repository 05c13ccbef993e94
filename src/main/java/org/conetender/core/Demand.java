package org.conetender.core;

import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Stage;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Predict;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Judge;
import org.conetender.core.judge.Proving;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.HeatKind;
import org.conetender.core.unit.Units;

/** What each stage wants of heat, air and light (design.md, the life of a batch), before any guard. */
final class Demand {

    private Demand() {}

    /**
     * The temperature the stage wants held, °C; empty where heat is not wanted.
     *
     * @param live how far its cysts are, and when it will be ready
     * @param made what was made of the hour it is wanted at
     */
    static OptionalDouble aimC(Cone cone, Batch b, ConeLive live, Optional<Appointment> made) {
        double set = Appointment.setC(cone, b, made);
        return switch (b.stage()) {
            case Stage.Filled _, Stage.Hydrating _, Stage.Incubating _, Stage.Hatching _ ->
                    OptionalDouble.of(set);
            case Stage.Ready _ ->
                    OptionalDouble.of(live.unripe(b) ? set
                            : Math.min(set, cone.limits().floorC()));
            case Stage.Clean _, Stage.Settling _, Stage.Settled _, Stage.Drawing _, Stage.Drained _,
                 Stage.Abandoned _ -> OptionalDouble.empty();
        };
    }

    /** Whether the stage wants the air off. */
    static boolean airOff(Cone cone, Batch b) {
        return b.stage().airOff() != null
                || !b.stage().hasWater() && !cone.fittings().air().idleOn();
    }

    static boolean lamp(Cone cone, Batch b) {
        return cone.fittings().lights().harvest() && b.stage().airOff() != null;
    }

    /** The trigger light burns in the first hours after complete hydration (science.md §5). */
    static boolean trigger(Cone cone, Batch b, Work work) {
        return cone.fittings().lights().trigger() && b.stage() instanceof Stage.Incubating
                && b.stock().isPresent()
                && work.since(b.stock().get().at()).leastMs() < Units.msOfHours(cone.timing().triggerHours());
    }

    /** The heating law's memory after this tick, before any guard. */
    static Hold hold(Cone cone, Batch b, Tick.Now now) {
        Hold before = now.was().hold();
        OptionalDouble aim = now.aimC();
        ConeJudgement j = now.judged();
        if (!cone.fittings().heat().fitted() || !b.stage().hasWater()) {
            return Hold.IDLE;
        }
        if (aim.isEmpty() || !j.belief().known()) {
            return before.idle();
        }
        double litres = Judge.warmedLitres(cone, b);
        Hold.Plant plant = Hold.Plant.of(cone.fittings().heat(), litres, Judge.lossWPerK(cone, litres),
                aim.getAsDouble() - j.roomOrUsualC());
        double errorK = aim.getAsDouble() - j.belief().hottestC();
        Hold h = before.after(errorK, aim.getAsDouble(), now.dtMs(), plant);
        if (cone.fittings().heat().kind() != HeatKind.IMMERSED) {
            return h;
        }
        double most = j.proving().part() == Proving.Part.UNTESTABLE ? Hold.LOW_POWER
                : Hold.most(cone, j.heat());
        if (most < 1) {
            return h.atMost(most);
        }
        Predict.Switching kind = now.was().wear().left(Hold.switching(cone.fittings().heat()));
        Predict.Around around = new Predict.Around(j.roomOrUsualC(), now.dtMs() / 1000.0);
        Hold.Real real = new Hold.Real(now.was().out().heat(), errorK, now.dtMs(), plant);
        return j.thermal().map(t -> h.steered(t, around, kind).beside(before, real)).orElse(h);
    }
}
