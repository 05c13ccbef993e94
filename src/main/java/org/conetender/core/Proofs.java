package org.conetender.core;

import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.HeaterBook.Learned;
import org.conetender.core.guard.SwitchesTried;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Judge;
import org.conetender.core.judge.Proving;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Traits;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/** What proofs leave in the record: that the switches were tried, and how the heater behaves. */
final class Proofs {

    /** What is learned is written when it differs from what is written by so much, relative (guess). */
    private static final double NEWS = 0.02;

    private Proofs() {}

    /** Writes down what this tick proved. What a failing record does not take is proven again. */
    static void keep(Work work) {
        if (work.image.pipes().store().isPresent()) {
            return;
        }
        for (Cone c : work.settings.cones()) {
            ConeJudgement j = work.judged.get(c.id());
            ConeBook book = work.ledger.book().cone(c.id());
            boolean tried = c.fittings().heat().kind() == Cone.HeatKind.IMMERSED
                    && j.proving().part() == Proving.Part.PASSED && book.batch().stage().hasWater();
            boolean suspect = SwitchesTried.VOIDED_BY.stream().anyMatch(g -> book.latch(g).isPresent());
            if (tried && !suspect && !book.heater().tried(book.batch())) {
                work.write(c.id(), new Change.Tried(c.fittings().heat().cutOut() ? "each switch opens alone"
                        : "off means off"));
            }
            j.thermal().flatMap(t -> news(work, c, t)).ifPresent(l -> work.write(c.id(),
                    new Change.Learned(l)));
        }
    }

    /** In the tick in which a proof is passed, if it is new and the last was written an hour ago. */
    private static Optional<Learned> news(Work work, Cone c, Thermal t) {
        if (!t.proof().passed() || t.proofAgeS() > 0) {
            return Optional.empty();
        }
        Traits is = t.proof().traits();
        Traits nominal = t.estimate().nominal();
        Learned now = new Learned(c.fittings().heat().watts(), Judge.warmedLitres(c, work.batch(c.id())),
                is.riseKPerS() / nominal.riseKPerS(), is.lossPerS() / nominal.lossPerS(), is.lagS());
        ConeBook book = work.ledger.book().cone(c.id());
        Optional<Learned> kept = book.heater().learned();
        boolean other = kept.filter(l -> l.fits(now.watts(), now.litres())).isEmpty();
        boolean due = other || book.heater().learnedAt().filter(at -> work.since(at).leastMs()
                < Units.HOUR_MS).isEmpty();
        return due && (other || now.differs(kept.get(), NEWS)) ? Optional.of(now) : Optional.empty();
    }
}
