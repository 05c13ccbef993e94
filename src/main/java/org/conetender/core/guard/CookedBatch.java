package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.settings.Cone.Limits;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * Danger: the batch is cooked. Above the guard temperature everything that warms goes off; latched if
 * our heater was at work, else the room is to blame. Limits after science.md §1. A reading that jumped and is
 * not believed calls a person too, for somebody may have poured hot water in: it withholds lamps, and marks
 * the batch.
 */
public final class CookedBatch implements Guard {

    /** Heat given this lately may still be arriving (element and probe lags, control.md head). */
    private static final long COASTING_MS = 2 * Units.MINUTE_MS;

    /** Water must be so much below a limit to count as cooler, K: five probe steps (control.md §7: 1 %). */
    static final double BAND_K = 0.3;

    @Override
    public String id() {
        return "too-hot";
    }

    @Override
    public List<Finding> look(View v) {
        Limits l = v.cone().limits();
        boolean known = v.water().known();
        double hottest = known ? v.water().hottestC() : v.judged().water().jumpedToC(v.now().monoMs());
        String what = known ? "the water" : "a reading in doubt, perhaps of hot water poured in,";
        List<Finding> found = new ArrayList<>(justBack(v, hottest));
        if (v.latch(id()).isPresent()
                || known && hottest >= l.guardC() && v.stage().hasWater() && ours(v)) {
            found.add(Finding.trip(id(),
                    Text.of("the water passed %.1f °C with the heater at work", l.guardC()),
                    Power.HEAT, Power.CUT_OUT, Power.LAMPS).alarm(AlarmKind.OVERHEAT));
        } else if (!known && hottest >= l.guardC()) {
            found.add(Finding.veto(id(), Text.of("%s is over %.1f °C", what, l.guardC()), Power.LAMPS));
        } else if (hottest >= l.guardC()) {
            Finding f = Finding.veto(id(),
                    Text.of("the room is too warm: the water is over %.1f °C%s", l.guardC(),
                            v.cone().fittings().heat().fitted() ? " with the heater off" : ""),
                    Power.HEAT, Power.CUT_OUT, Power.LAMPS);
            // The probe of an empty cone hangs in the air, or in the hot water it is washed with.
            found.add(v.stage().hasWater() ? f.alarm(AlarmKind.ROOM_TOO_WARM) : f);
        }
        if (hottest >= l.arrestC() && v.stage().develops()) {
            found.add(Finding.veto(id(), Text.of("%s is over %.1f °C, where cysts stop developing", what,
                    l.arrestC()), Power.HEAT).alarm(AlarmKind.ARREST));
        }
        if (hottest >= l.lossC() && v.stage().develops()) {
            String loss = Text.of(" was at %.1f °C or more", l.lossC());
            String why = v.batch().marks().words().doubts().stream().filter(d -> d.endsWith(loss)).findFirst()
                    .orElse(what + loss);
            found.add(Finding.veto(id(), why, Power.HEAT).alarm(AlarmKind.COOKED).doubting(why));
        }
        return found;
    }

    /** Below a limit, but not yet by the deadband. */
    private List<Finding> justBack(View v, double hottest) {
        Limits l = v.cone().limits();
        List<Finding> found = new ArrayList<>();
        if (near(hottest, l.guardC()) && v.stage().hasWater()) {
            found.add(back("the room is too warm: the water", l.guardC(), AlarmKind.ROOM_TOO_WARM));
        }
        if (near(hottest, l.arrestC()) && v.stage().develops()) {
            found.add(back("the water", l.arrestC(), AlarmKind.ARREST));
        }
        if (near(hottest, l.lossC()) && v.stage().develops()) {
            found.add(back("the water", l.lossC(), AlarmKind.COOKED));
        }
        return found;
    }

    private static boolean near(double c, double limitC) {
        return c < limitC && c >= limitC - BAND_K;
    }

    private Finding back(String where, double limitC, AlarmKind kind) {
        return Finding.veto(id(), Text.of("%s is just below %.1f °C", where, limitC)).alarm(kind).justBack();
    }

    @Override
    public boolean causeGone(View v) {
        return v.water().known() && v.water().hottestC() < v.cone().limits().guardC() - BAND_K;
    }

    private static boolean ours(View v) {
        boolean warmedUp = v.now().monoMs() - v.scene().begun().monoMs() > COASTING_MS;
        return v.scene().wants().heatWasOn() || v.latch(WeldedHeater.ID).isPresent()
                || v.latch(WrongCone.ID).isPresent() || warmedUp
                && v.judged().heat().offForMs() < COASTING_MS;
    }
}
