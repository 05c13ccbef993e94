package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Hearing;
import org.conetender.core.judge.Water;

/** Danger: a probe that lies, or says nothing. No heat on a reading that is not believed. */
public final class LyingProbe implements Guard {

    private static final String ID = "probe";

    @Override
    public String id() {
        return ID;
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
        oneLeft(v).ifPresent(found::add);
        return found;
    }

    /** One of two probes that is gone while the other serves: nothing is lost yet, but nothing is spare. */
    private static Optional<Finding> oneLeft(View v) {
        List<String> probes = v.cone().fittings().probes().water();
        if (probes.size() < 2 || !v.water().known() || v.handled() || !v.stage().hasWater()) {
            return Optional.empty();
        }
        for (String p : probes) {
            if (Hearing.mute(v.scene().image().probe(p))) {
                return Optional.of(Finding.veto(ID, "its probe " + p
                        + " has gone silent; the other one serves").alarm(AlarmKind.ONE_PROBE));
            }
        }
        return Optional.empty();
    }

    @Override
    public boolean causeGone(View v) {
        return v.water().known();
    }
}
