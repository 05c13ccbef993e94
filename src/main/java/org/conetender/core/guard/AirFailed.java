package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;

/** Danger: air failed though commanded on. Most urgent once nauplii swim (science.md §1, §7.3). */
public final class AirFailed implements Guard {

    @Override
    public String id() {
        return "air-failed";
    }

    @Override
    public List<Finding> look(View v) {
        if (v.judged().air().unprovenForMs() == 0 || !v.stage().hasWater() || v.batch().marks().valveShut()) {
            return List.of();
        }
        AlarmKind kind = v.stage().hasAnimals() ? AlarmKind.AIR_FAILED_ANIMALS : AlarmKind.AIR_FAILED;
        return List.of(Finding.veto(id(), "its air is switched on but none arrives").alarm(kind));
    }
}
