package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** Danger: a power cut that stopped the air for too long once nauplii swim. The batch is doubtful. */
public final class PowerCut implements Guard {

    /** A batch that comes to hatching this soon after the start got there in the cut (guess: a few ticks). */
    private static final long HATCHED_MEANWHILE_MS = Units.MINUTE_MS;

    @Override
    public String id() {
        return "power-cut";
    }

    @Override
    public List<Finding> look(View v) {
        if (v.scene().lastSeen().isEmpty() || v.scene().lastSeen().get().sameBoot(v.scene().begun())
                || !v.stage().hasAnimals() || !thereBefore(v)) {
            return List.of();
        }
        Span gap = v.scene().begun().since(v.scene().lastSeen().get());
        if (gap.mostMs() <= v.scene().caps().settledMs()) {
            return List.of();
        }
        String long1 = gap.bounded() ? Text.of("about %.0f min", Units.minutes(gap.mostMs()))
                : "an unknown time";
        String why = "the power was off for " + long1 + " with nauplii in the water";
        return List.of(Finding.veto(id(), why).alarm(AlarmKind.DOUBTFUL).doubting(why));
    }

    /**
     * Whether the animals lived through the cut, or hatched in it: a later batch has nothing to do with it.
     */
    private static boolean thereBefore(View v) {
        return v.animalsSince().map(m -> v.restartedSince(m)
                || m.monoMs() - v.scene().begun().monoMs() < HATCHED_MEANWHILE_MS).orElse(false);
    }
}
