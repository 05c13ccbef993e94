package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.judge.Watch.Suspect;

/** Danger: heater or probe out of the water. Power without effect goes off and stays off. */
public final class NoEffect implements Guard {

    static final String ID = "no-effect";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public List<Finding> look(View v) {
        if (v.latch(id()).isEmpty() && (!v.judged().heat().failed() || WrongCone.explains(v))
                && !Suspicion.falls(v, Suspect.DEAD, ID)) {
            return List.of();
        }
        if (v.latch(id()).isEmpty() && WrongCone.maySoonTell(v)) {
            return List.of(Finding.veto(ID, "the heater was on but the water did not warm as it should; "
                    + "whether it warms another cone is being found out", Power.HEAT));
        }
        return List.of(Finding.trip(id(), "the heater was on but the water did not warm as it should",
                Power.HEAT, Power.CUT_OUT).alarm(AlarmKind.NO_EFFECT));
    }
}
