package org.conetender.core.guard;

import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.judge.Thermal;
import org.conetender.core.unit.Text;

/**
 * Danger: water goes, by a drip or by evaporation, until the heater stands bare. Less water warms faster
 * and cools faster; what was learned of this filling tells how much seems to be gone. A trend of hours:
 * a reason to look, never to withhold anything. What the level contact says is {@link DryHeater}'s.
 */
public final class FallingWater implements Guard {

    /** Shares are told to so many percent. */
    private static final double STEP = 5;

    @Override
    public String id() {
        return "falling";
    }

    @Override
    public List<Finding> look(View v) {
        Optional<Thermal> falling = v.judged().thermal().filter(Thermal::falling);
        if (falling.isEmpty() || !v.stage().hasWater() || v.handled()) {
            return List.of();
        }
        return falling.map(t -> Finding.veto(id(),
                "about " + Text.decimals(STEP * Math.round(100 * t.gone() / STEP), 0) + " % of its water "
                        + "seems to be gone: it warms and cools faster than after it was filled")
                .alarm(AlarmKind.WATER_FALLING)).stream().toList();
    }
}
