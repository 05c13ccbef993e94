package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** Danger: a power cut that stopped the air for too long once nauplii swim. The batch is doubtful. */
public final class PowerCut implements Guard {

    @Override
    public String id() {
        return "power-cut";
    }

    @Override
    public List<Finding> look(View v) {
        if (v.scene().lastSeen().isEmpty() || !v.stage().hasAnimals()
                || v.scene().lastSeen().get().sameBoot(v.scene().begun())) {
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
}
