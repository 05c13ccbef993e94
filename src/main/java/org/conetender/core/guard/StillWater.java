package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.judge.AirTrack;
import org.conetender.core.judge.Judge;
import org.conetender.core.settings.Cone.HeatKind;

/**
 * Danger: heat without stirring. An immersed heater is off while air is off or proven absent (science.md
 * §9).
 */
public final class StillWater implements Guard {

    @Override
    public String id() {
        return "still-water";
    }

    @Override
    public List<Finding> look(View v) {
        boolean still = v.scene().wants().airOff() || v.judged().air().offForMs() > 0
                || v.batch().marks().valveShut() || v.judged().air().proof() == AirTrack.Proof.FAILED
                || Judge.stuck(v.cone(), v.scene().image());
        if (!still || v.cone().fittings().heat().kind() != HeatKind.IMMERSED) {
            return List.of();
        }
        return List.of(Finding.veto(id(), "no air stirs the water", Power.HEAT));
    }
}
