package org.conetender.core;

import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.RelayBook;
import org.conetender.core.heat.Wear;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;

/**
 * How far the life of a heater's relay is used, and how long it will last.
 *
 * @param closings of the present relay
 * @param used share of the closings that it is rated for; above 1 once it has had them
 * @param daysLeft at the pace of the last days, or at its whole budget where that is not known; 0 or more
 */
public record RelayLife(long closings, double used, double daysLeft) {

    /** Of that cone; empty where no relay switches a heater. */
    public static Optional<RelayLife> of(Cone cone, State s, Moment now) {
        if (!cone.fittings().heat().wears()) {
            return Optional.empty();
        }
        Cone.Contacts rated = cone.fittings().heat().contacts();
        RelayBook book = s.book().cone(cone.id()).heater().relay();
        long ever = s.live().cones().get(cone.id()).wear().closings();
        double pace = book.perDay(ever, s.book().boots(), now).orElse(rated.cyclesPerDay());
        long closings = book.used(ever);
        double left = Math.max(0, rated.lifeCycles() - closings);
        return Optional.of(new RelayLife(closings, closings / rated.lifeCycles(),
                left == 0 ? 0 : left / pace));
    }

    /**
     * What a life begins with. One that ended unseen took up to a step of closings with it, written nowhere:
     * half of a step is their mean (a cone that was never in use has none). It is not written down by itself,
     * so that one death after another adds it once.
     *
     * @param died whether the last life ended without a word
     */
    static Wear begun(Cone cone, ConeBook kept, boolean died) {
        long closings = kept.heater().relay().closings();
        boolean used = closings > 0 || kept.batch().stage().hasWater();
        return Wear.begun(closings
                + (died && used && cone.fittings().heat().wears() ? RelayBook.STEP / 2 : 0));
    }

    /** What a life that ends in good order must write down, few as they are; empty where there is nothing. */
    static List<Change> unwritten(Cone cone, State s) {
        long ever = s.live().cones().get(cone.id()).wear().closings();
        return cone.fittings().heat().wears()
                && ever > s.book().cone(cone.id()).heater().relay().closings()
                ? List.of(new Change.Worn(ever)) : List.of();
    }

    /** Writes down what was counted, now and then. What a failing record does not take is counted on. */
    static void keep(Work work) {
        if (work.image.pipes().store().isPresent()) {
            return;
        }
        for (Cone c : work.settings.cones()) {
            long ever = work.live(c.id()).wear().closings();
            RelayBook book = work.ledger.book().cone(c.id()).heater().relay();
            if (c.fittings().heat().wears() && book.due(ever)) {
                work.write(c.id(), new Change.Worn(ever));
            }
        }
    }

    /** What is wrong once it is worn; by what is written, so that no restart takes it back. */
    static Optional<Alarms.Cause> worn(Work work, Cone c) {
        RelayBook book = work.ledger.book().cone(c.id()).heater().relay();
        double rated = c.fittings().heat().contacts().lifeCycles();
        return !c.fittings().heat().wears() || book.used(book.closings()) < rated ? Optional.empty()
                : Optional.of(new Alarms.Cause(c.id(), AlarmKind.RELAY_WORN, "the relay of its heater has "
                        + "closed " + Text.decimals(rated, 0) + " times, which is all that it is rated for",
                        Alarm.Held.BY_CAUSE));
    }
}
