package org.conetender.core;

import org.conetender.core.batch.Batch;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Thermal;

/** What a change in the book means for what was believed of the cone. */
final class Refreshed {

    private Refreshed() {}

    /**
     * A released latch forgives the tracks behind it; a new filling, or water whose level changed, must be
     * proven again before it gets full heat.
     */
    static ConeJudgement of(ConeJudgement j, ConeBook old, ConeBook now) {
        boolean released = now.latches().size() < old.latches().size();
        return new ConeJudgement(released ? j.water().forgiven() : j.water(), j.roomC(), j.level(),
                released ? j.heat().forgiven() : levelChanged(old.batch(), now.batch())
                        ? j.heat().untested() : j.heat(),
                released ? j.thermal().map(Thermal::cleared) : j.thermal(), j.air());
    }

    private static boolean levelChanged(Batch old, Batch now) {
        return now.number() != old.number() || now.marks().harvests() != old.marks().harvests()
                || !now.marks().toppedUp().equals(old.marks().toppedUp());
    }
}
