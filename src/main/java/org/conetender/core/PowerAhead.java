package org.conetender.core;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.conetender.core.batch.Book;
import org.conetender.core.guard.StuckHeater;
import org.conetender.core.guard.WrongCone;
import org.conetender.core.hatch.Projection;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Shortage;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/** What a cone's heater may give from now on: nothing while it is locked off, else its part of the site's. */
final class PowerAhead {

    private final Work work;
    /** In one tick several ask, and it takes letting the site's sharing run. */
    private final Map<String, Reckoned> shares = new HashMap<>();

    /** @param book that it was reckoned from */
    private record Reckoned(Book book, double share) {}

    /** In that tick. */
    PowerAhead(Work work) {
        this.work = work;
    }

    /**
     * Whether no heat is given until a person has come: a latch of this cone stands, the site's heaters are
     * locked, or its wires are known to be crossed with another's. Every latch withholds heat.
     */
    static boolean locked(Settings settings, Book book, Cone c) {
        return c.fittings().heat().watts() > 0 && (!book.lives().locks().isEmpty()
                || !book.cone(c.id()).latches().isEmpty() || WrongCone.known(settings, book, c.id()));
    }

    /** The same in this tick. */
    static boolean locked(Work work, Cone c) {
        return locked(work.settings, work.ledger.book(), c);
    }

    /**
     * Share of the time in which its heater can have power, 0..1: what the sharing gives it while it wants
     * all it can get and the others only hold their water. That they warm up first, one slower for the
     * others, is not foreseen.
     */
    double share(Cone c) {
        Reckoned known = shares.get(c.id());
        if (known == null || known.book() != work.ledger.book()) {
            known = new Reckoned(work.ledger.book(), reckoned(c));
            shares.put(c.id(), known);
        }
        return known.share();
    }

    private double reckoned(Cone c) {
        if (c.fittings().heat().watts() == 0) {
            return 1;
        }
        double limit = work.settings.site().supply().limitWatts()
                - StuckHeater.wattsAtLarge(work.settings, work.ledger.book(), work.image);
        List<Shortage.Heater> others = new ArrayList<>();
        for (Cone o : work.settings.cones()) {
            if (!o.id().equals(c.id()) && o.fittings().heat().watts() > 0 && wants(o)) {
                others.add(heater(o, holding(o)));
            }
        }
        return Shortage.share(heater(c, 1), others, limit);
    }

    private static Shortage.Heater heater(Cone c, double duty) {
        Cone.Heat heat = c.fittings().heat();
        return new Shortage.Heater(heat.watts(), duty, Hold.turnMs(heat));
    }

    private boolean wants(Cone o) {
        return work.aimC(o).isPresent() && work.judged.get(o.id()).belief().known() && !locked(work, o);
    }

    /** Share of the time in which it is on to hold its water where it is wanted. */
    private double holding(Cone o) {
        Projection.Plant plant = Foresight.plant(o, work.batch(o.id()), work.judged.get(o.id()),
                Foresight.room(work, o));
        return plant.holdingW(work.aimC(o).orElseThrow()) / plant.watts();
    }
}
