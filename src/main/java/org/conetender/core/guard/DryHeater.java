package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Stage;
import org.conetender.core.image.ContactSample.Level;

/**
 * Danger: a heater that runs dry. No heat unless the stage says that water is in and, where a level
 * contact is fitted, the contact agrees; without one the law gives only low power until the water
 * has answered ({@link org.conetender.core.judge.HeatTrack#responded}).
 */
public final class DryHeater implements Guard {

    @Override
    public String id() {
        return "dry";
    }

    @Override
    public List<Finding> look(View v) {
        List<Finding> found = new ArrayList<>();
        Stage s = v.stage();
        if (!s.hasWater() || s instanceof Stage.Abandoned) {
            found.add(Finding.veto(id(), "no water was reported in", Power.HEAT, Power.CUT_OUT));
        }
        if (!v.cone().fittings().probes().level()) {
            return found;
        }
        if (s.hasWater() && v.judged().level().says() != Level.CLOSED) {
            Finding f = Finding.veto(id(), "its level contact says the water is low", Power.HEAT,
                    Power.CUT_OUT);
            found.add(v.handled() ? f : f.alarm(AlarmKind.DRY));
        }
        if (s instanceof Stage.Drained && v.judged().level().says() == Level.CLOSED) {
            found.add(Finding.veto(id(), "it was reported drained but its level contact says wet", Power.HEAT,
                    Power.CUT_OUT).alarm(AlarmKind.WET_CONTACT));
        }
        return found;
    }
}
