package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Water;

/** Danger: a probe that lies, or says nothing. No heat on a reading that is not believed. */
public final class LyingProbe implements Guard {

    @Override
    public String id() {
        return "probe";
    }

    @Override
    public List<Finding> look(View v) {
        List<Finding> found = new ArrayList<>();
        if (v.latch(id()).isPresent()
                || v.judged().water().departures().size() >= Water.DEPARTURES_TO_LATCH) {
            found.add(Finding.trip(id(), "its probe left the water's course three times within an hour",
                    Power.HEAT, Power.CUT_OUT).alarm(AlarmKind.PROBE_UNSTEADY));
        }
        if (v.water() instanceof Belief.Untrusted(String why)) {
            Finding f = Finding.veto(id(), "its temperature is not known: " + why, Power.HEAT, Power.CUT_OUT);
            found.add(v.handled() || !v.stage().hasWater() ? f : f.alarm(AlarmKind.PROBE));
        }
        return found;
    }

    @Override
    public boolean causeGone(View v) {
        return v.water().known();
    }
}
