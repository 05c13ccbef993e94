package org.conetender.core;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.conetender.core.ConeLive.ConeOut;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/**
 * An output that is fitted.
 *
 * @param id of it  @param cone its cone; empty for the heartbeat, whose level is no cone's
 * @param level what is commanded
 */
record Outlet(String id, String cone, Predicate<ConeOut> level) {

    /** All that these settings name, in the order of their ids. */
    static List<Outlet> all(Settings settings) {
        List<Outlet> all = new ArrayList<>();
        for (Cone c : settings.cones()) {
            all.add(of(c, ".air-pause", ConeOut::airPause));
            if (c.fittings().heat().fitted()) {
                all.add(of(c, ".heat", ConeOut::heat));
            }
            if (c.fittings().heat().cutOut()) {
                all.add(of(c, ".cut-out", ConeOut::cutOut));
            }
            if (c.fittings().lights().harvest()) {
                all.add(of(c, ".lamp", ConeOut::lamp));
            }
            if (c.fittings().lights().trigger()) {
                all.add(of(c, ".trigger", ConeOut::trigger));
            }
            if (c.fittings().button()) {
                all.add(of(c, ".button-lamp", ConeOut::button));
            }
        }
        if (settings.site().supply().heartbeat()) {
            all.add(new Outlet(Tick.HEARTBEAT, "", _ -> false));
        }
        all.sort(Comparator.comparing(Outlet::id));
        return all;
    }

    private static Outlet of(Cone c, String output, Predicate<ConeOut> level) {
        return new Outlet(c.id() + output, c.id(), level);
    }
}
