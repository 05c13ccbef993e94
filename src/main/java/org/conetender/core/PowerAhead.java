package org.conetender.core;

import java.util.List;
import org.conetender.core.batch.Book;
import org.conetender.core.guard.StuckHeater;
import org.conetender.core.guard.WrongCone;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/** What a cone's heater may give from now on: nothing while it is locked off, else its part of the site's. */
final class PowerAhead {

    private PowerAhead() {}

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
     * Share of the time in which its heater can have power, 0..1: all of it where the site's limit lets all
     * run that want heat. Else what the others leave once they only hold their water, and no less than by
     * equal turns. That they warm up first, one slower for the others, is not foreseen.
     */
    static double share(Work work, Cone c) {
        double own = c.fittings().heat().watts();
        double limit = work.settings.site().supply().limitWatts()
                - StuckHeater.wattsAtLarge(work.settings, work.ledger.book(), work.image);
        if (own == 0) {
            return 1;
        }
        List<Cone> others = work.settings.cones().stream().filter(o -> !o.id().equals(c.id())
                && o.fittings().heat().watts() > 0 && wants(work, o)).toList();
        List<Double> watts = others.stream().map(o -> o.fittings().heat().watts()).toList();
        double all = own + watts.stream().mapToDouble(w -> w).sum();
        if (all <= limit || own > limit) {
            return all <= limit ? 1 : 0;
        }
        // Heaters are on or off, so of the limit only what some of them come to together can be used.
        double used = Math.max(own + most(watts, limit - own), most(watts, limit));
        double needed = others.stream().mapToDouble(o -> holdingW(work, o)).sum();
        return Math.clamp(Math.max((used - needed) / own, used / all), 0, 1);
    }

    private static boolean wants(Work work, Cone o) {
        return work.aimC(o).isPresent() && work.judged.get(o.id()).belief().known() && !locked(work, o);
    }

    /** The most watts that some of these come to together within that limit. */
    private static double most(List<Double> watts, double limit) {
        if (watts.isEmpty()) {
            return 0;
        }
        double first = watts.getFirst();
        List<Double> rest = watts.subList(1, watts.size());
        double without = most(rest, limit);
        return first > limit ? without : Math.max(without, first + most(rest, limit - first));
    }

    /** Mean power that holds its water where it is wanted, W. */
    private static double holdingW(Work work, Cone o) {
        return Foresight.plant(o, work.batch(o.id()), work.judged.get(o.id()), Foresight.room(work, o))
                .holdingW(work.aimC(o).orElseThrow());
    }
}
