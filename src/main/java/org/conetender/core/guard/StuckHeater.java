package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Book;
import org.conetender.core.image.Image;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/**
 * Danger: a heater whose output cannot be set. It may be on whatever we ask, so the other switch in
 * series opens, a person is called, and the heartbeat stops: a relay outside that watches it is then
 * the only thing that can still act. Not latched: an output that obeys again is ours again.
 */
public final class StuckHeater implements Guard {

    @Override
    public String id() {
        return "heater-stuck";
    }

    @Override
    public List<Finding> look(View v) {
        boolean heat = unset(v, ".heat");
        boolean cutOut = unset(v, ".cut-out");
        String what = heat && cutOut ? "neither the heater's output nor its cut-out's can be set"
                : cutOut ? "the cut-out's output cannot be set; the heater is switched off"
                : v.cone().fittings().heat().cutOut()
                ? "the heater's output cannot be set, so it may be on; the cut-out is open now"
                : "the heater's output cannot be set, so it may be on, and no cut-out is fitted";
        // Each is an alarm of its own: whoever knows of one has to hear of the other.
        List<Finding> found = new ArrayList<>();
        if (heat) {
            found.add(stuck(what).alarm(AlarmKind.HEATER_STUCK));
        }
        if (cutOut) {
            found.add(stuck(what).alarm(AlarmKind.CUT_OUT_STUCK));
        }
        return found;
    }

    private Finding stuck(String what) {
        return Finding.veto(id(), what, Power.HEAT, Power.CUT_OUT, Power.HEARTBEAT);
    }

    private static boolean unset(View v, String output) {
        return v.scene().image().pipes().unset(v.cone().id(), output);
    }

    /**
     * Watts of heaters that may be on against our will, W: no other heater may have them meanwhile. Those are
     * those whose output cannot be set; those found welded that no cut-out holds; and those found to warm
     * another cone, for nobody knows by which switch.
     */
    public static double wattsAtLarge(Settings settings, Book book, Image image) {
        double watts = 0;
        for (Cone c : settings.cones()) {
            if (image.pipes().unset(c.id(), ".heat") || welded(c, book, image)
                    || warmsAnother(settings, c, book)) {
                watts += c.fittings().heat().watts();
            }
        }
        return watts;
    }

    private static boolean welded(Cone c, Book book, Image image) {
        boolean cutOut = c.fittings().heat().cutOut();
        boolean holds = cutOut && !image.pipes().unset(c.id(), ".cut-out");
        boolean welded = book.latch(c.id(), WeldedHeater.ID).isPresent();
        boolean tried = book.latch(c.id(), SwitchesTried.ID).isPresent();
        return welded && (tried || !holds) || tried && !holds;
    }

    /** Where the latch does not say whose heater it is, it may be any, and none is counted. */
    private static boolean warmsAnother(Settings settings, Cone c, Book book) {
        for (Cone o : settings.cones()) {
            if (book.latch(o.id(), WrongCone.ID).flatMap(l -> WrongCone.culprit(settings, o.id(), l))
                    .filter(c.id()::equals).isPresent()) {
                return true;
            }
        }
        return false;
    }
}
