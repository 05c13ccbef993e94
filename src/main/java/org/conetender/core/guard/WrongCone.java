package org.conetender.core.guard;

import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.Crossing;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Units;

/**
 * Danger: a heater that warms another cone than its own. Two plugs, switches or probes were exchanged, a
 * heater hangs in the wrong cone, or two outputs touch; the one cone is cooked while the other stays cold.
 * While {@link Crossing} asks whose heater it is, those in question are off, and water that is too warm for
 * questions has its cut-out open as well, for its own switch may be welded; once it is known both cones are
 * off, until a person has put it right.
 */
public final class WrongCone implements Guard {

    public static final String ID = "wrong-cone";

    /** After a filling the switches are tried, then it warms: by then it is known by whose heater (guess). */
    private static final long FIRST_HEAT_MS = 45 * Units.MINUTE_MS;
    /** Nobody waits longer for a name, with the heat off (guess: well within the hour of its alarm). */
    private static final long WAITED_MS = 40 * Units.MINUTE_MS;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public List<Finding> look(View v) {
        Beside beside = v.scene().beside();
        Optional<ConeBook.Latch> latch = v.latch(ID);
        Optional<String> by = beside.crossing().warmedBy();
        if (latch.isPresent() || by.isPresent()) {
            String what = by.map(other -> words(v.cone().id(), other)).orElseGet(() -> latch.get().why());
            return List.of(Finding.trip(ID, what, Power.HEAT, Power.CUT_OUT).alarm(AlarmKind.WRONG_CONE));
        }
        Optional<String> victim = victim(v.settings(), v.book(), v.cone().id());
        if (victim.isPresent()) {
            return List.of(Finding.veto(ID, "its heater warms cone " + victim.get(), Power.HEAT,
                    Power.CUT_OUT));
        }
        boolean tooWarm = beside.crossing().risk().tooWarm();
        Power[] denied = tooWarm ? new Power[] {Power.HEAT, Power.CUT_OUT} : new Power[] {Power.HEAT};
        if (beside.paused()) {
            String other = beside.askedFor().orElseThrow();
            return List.of(Finding.veto(ID, v.book().latch(other, WeldedHeater.ID).isPresent()
                    ? "its heater waits, for it may be why cone " + other + " warms behind its lock"
                    : "its heater is off for some minutes, to see whether it warms cone " + other, denied));
        }
        return beside.crossing().open() ? List.of(Finding.veto(ID,
                "it warms although its heater is off; whose heater does it is being found out", denied))
                : !tooWarm ? List.of()
                : List.of(Finding.veto(ID, "it warmed although its heater was off, and cools before its "
                        + "cut-out closes again", denied));
    }

    /** As {@link WeldedHeater}: water that was watched and rose no more is not heated any more. */
    @Override
    public boolean causeGone(View v) {
        return !v.stage().hasWater() || v.judged().heat().noRiseForMs() >= HeatTrack.STILL_MS;
    }

    /** Whether what that cone and its heater do is explained by crossed wires, or may be soon. */
    static boolean explains(View v) {
        return known(v.settings(), v.book(), v.cone().id()) || v.scene().beside().concerned();
    }

    /** Whether that would explain why it warms: that its own heater may warm another does not. */
    static boolean warms(View v) {
        return known(v.settings(), v.book(), v.cone().id()) || v.scene().beside().warmed();
    }

    /**
     * Whether another cone was emptied or filled so lately that its plug may have been mistaken for this
     * one's, and its first heat will tell. Nothing is heated in vain meanwhile.
     */
    static boolean maySoonTell(View v) {
        return v.judged().heat().offForMs() < WAITED_MS
                && v.settings().cones().stream().filter(c -> !c.id().equals(v.cone().id())
                && c.fittings().heat().kind() == Cone.HeatKind.IMMERSED && !c.touches(v.cone()))
                .map(c -> v.book().cone(c.id()).batch()).filter(b -> b.number() > 0)
                .anyMatch(b -> Handled.within(b.stage().hasWater() ? b.fill().map(Batch.Fill::at)
                        : Optional.of(b.stage().since()), v::since, FIRST_HEAT_MS));
    }

    /** The cone that this one's heater was found to warm: its latch keeps this one off as well. */
    public static Optional<String> victim(Settings settings, Book book, String cone) {
        for (Cone c : settings.cones()) {
            Optional<ConeBook.Latch> latch = c.id().equals(cone) ? Optional.empty() : book.latch(c.id(), ID);
            if (latch.isPresent() && culprit(settings, c.id(), latch.get()).orElse(cone).equals(cone)) {
                return Optional.of(c.id());
            }
        }
        return Optional.empty();
    }

    /** Whether the wires of that cone are known to be crossed with another's, and not put right yet. */
    public static boolean known(Settings settings, Book book, String cone) {
        return book.latch(cone, ID).isPresent() || victim(settings, book, cone).isPresent();
    }

    /**
     * Whose heater that latch names: what is kept of it is its sentence. Empty for one that this version
     * would word otherwise; then it may be any.
     */
    public static Optional<String> culprit(Settings settings, String cone, ConeBook.Latch latch) {
        return settings.cones().stream().map(Cone::id).filter(o -> latch.why().equals(words(cone, o)))
                .findFirst();
    }

    private static String words(String cone, String other) {
        return "the heater of cone " + other + " warms cone " + cone + ": the water followed that heater "
                + "and not its own switch; the heat of both is off";
    }
}
