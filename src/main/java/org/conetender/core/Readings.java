package org.conetender.core;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Power;
import org.conetender.core.guard.View;
import org.conetender.core.settings.Cone;

/**
 * The cone under the other readings of the record ({@link Ledger}): what a restart would read now, and
 * what it would read once everything on its way has arrived. Power needs the consent of all.
 */
final class Readings {

    private Readings() {}

    /** The view of the effective book, with what the other readings withhold. */
    static View all(Work work, View v, List<Guard> guards) {
        List<Book> others = work.ledger.otherReadings(v.cone().id());
        if (others.isEmpty()) {
            return v;
        }
        EnumSet<Power> denied = EnumSet.noneOf(Power.class);
        for (Book other : others) {
            denied.addAll(denied(v, other, guards, work.live(v.cone().id())));
        }
        denied.remove(Power.HEARTBEAT);
        return denied.isEmpty() ? v
                : new View(v.settings(), v.cone(), v.book(), v.coneBook(), v.judged(),
                        v.scene().unwritten(denied));
    }

    private static Set<Power> denied(View v, Book other, List<Guard> guards, ConeLive live) {
        Cone cone = v.cone();
        ConeBook book = other.cone(cone.id());
        Batch b = book.batch();
        EnumSet<Power> denied = EnumSet.noneOf(Power.class);
        if (Demand.aimC(cone, b, live, Optional.empty()).isEmpty()) {
            denied.addAll(Set.of(Power.HEAT, Power.CUT_OUT));
        }
        boolean airOff = Demand.airOff(cone, b);
        if (!airOff) {
            denied.add(Power.AIR_OFF);
        }
        View w = new View(v.settings(), cone, other, book, v.judged(), v.scene().wanting(airOff));
        guards.forEach(g -> g.look(w).forEach(f -> denied.addAll(f.denies())));
        return denied;
    }

    /** The lowest temperature that any reading wants held, °C. @param aim the effective book's */
    static OptionalDouble lowest(Work work, Cone cone, OptionalDouble aim) {
        List<Book> others = work.ledger.otherReadings(cone.id());
        if (others.isEmpty() || aim.isEmpty()) {
            return aim;
        }
        double c = aim.getAsDouble();
        for (Book other : others) {
            ConeLive live = work.live(cone.id());
            c = Math.min(c, Demand.aimC(cone, other.cone(cone.id()).batch(), live,
                    live.outlook().appointment()).orElse(c));
        }
        return OptionalDouble.of(c);
    }
}
