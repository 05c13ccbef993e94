package org.conetender.core;

import org.conetender.core.batch.Batch;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.guard.SwitchesTried;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Motion;
import org.conetender.core.judge.Proving;
import org.conetender.core.judge.Tried;
import org.conetender.core.judge.Watch;

/** What a change in the book means for what was believed of the cone. */
final class Refreshed {

    /** Of the water, what may be drawn with a part of a hatch, which nobody measures (guess). */
    private static final double DRAWN = 0.5;
    /** And what a filling to the mark, or up to it, may be off (guess). */
    private static final double FILLED = 0.1;

    private Refreshed() {}

    /**
     * A released latch forgives the tracks behind it; a new filling, or water whose level changed, must be
     * proven again before it gets full heat; and the switches are tried at a new filling, and when one of
     * them was mended or exchanged.
     */
    static ConeJudgement of(ConeJudgement j, ConeBook old, ConeBook now) {
        if (old == now) {
            return j;
        }
        boolean released = now.latches().size() < old.latches().size();
        boolean other = levelChanged(old.batch(), now.batch());
        double share = now.batch().marks().harvests() + old.batch().marks().harvests() > 0 ? DRAWN : FILLED;
        boolean due = now.batch().number() != old.batch().number()
                || now.heater().relay().exchanged().size() > old.heater().relay().exchanged().size()
                || SwitchesTried.VOIDED_BY.stream().anyMatch(g -> old.latch(g).isPresent()
                        && now.latch(g).isEmpty());
        return new ConeJudgement(released ? j.water().forgiven() : j.water(), j.roomC(), j.level(),
                released ? j.heat().forgiven() : other ? j.heat().untested() : j.heat(),
                j.thermal().map(t -> released ? t.watched(Watch::cleared) : t)
                        .map(t -> other ? t.refilled(share) : t)
                        .map(t -> due ? t.watched(Watch::another) : t),
                j.air(), other ? Motion.NONE : j.motion(),
                due ? Tried.of(Proving.DUE) : j.tried());
    }

    /** What its heater failed to do before wires that were crossed were put right does not count. */
    static ConeJudgement forgiven(ConeJudgement j) {
        return new ConeJudgement(j.water(), j.roomC(), j.level(), j.heat().forgiven(),
                j.thermal().map(t -> t.watched(Watch::cleared)), j.air(), j.motion(), j.tried());
    }

    /** Water that is there again since a report was taken back is a filling like another: it may be gone. */
    private static boolean levelChanged(Batch old, Batch now) {
        boolean again = now.stage().hasWater() && !old.stage().hasWater();
        return again || now.number() != old.number() || now.marks().harvests() != old.marks().harvests()
                || !now.marks().toppedUp().equals(old.marks().toppedUp());
    }
}
