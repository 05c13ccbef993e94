package org.conetender.core;

import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.HeaterBook.Learned;
import org.conetender.core.guard.SwitchesTried;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Cooling;
import org.conetender.core.judge.Judge;
import org.conetender.core.judge.Losses;
import org.conetender.core.judge.Proving;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Traits;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/** What proofs leave in the record: that the switches were tried, and how the heater behaves. */
final class Proofs {

    /** What is learned is written when it differs from what is written by so much, relative (guess). */
    private static final double NEWS = 0.02;

    /** Over a room so much cooler water shows what it loses, K (guess: probes err by an eighth of it). */
    private static final double OVER_K = 4;

    private Proofs() {}

    /** Writes down what this tick proved. What a failing record does not take is proven again. */
    static void keep(Work work) {
        if (work.image.pipes().store().isPresent()) {
            return;
        }
        for (Cone c : work.settings.cones()) {
            ConeJudgement j = work.judged.get(c.id());
            ConeBook book = work.ledger.book().cone(c.id());
            boolean news = c.fittings().heat().kind() == Cone.HeatKind.IMMERSED
                    && j.proving().part() == Proving.Part.PASSED && book.batch().stage().hasWater()
                    && !book.heater().tried(book.batch());
            if (news && SwitchesTried.VOIDED_BY.stream().noneMatch(g -> book.latch(g).isPresent())) {
                work.write(c.id(), new Change.Tried(c.fittings().heat().cutOut() ? "each switch opens alone"
                        : "off means off"));
            }
            j.thermal().flatMap(t -> news(work, c, t)).ifPresent(l -> work.write(c.id(),
                    new Change.Learned(l)));
        }
    }

    /**
     * How fast the cone cools without heat, over what the configuration gives: by the duty that holds it.
     * Only over a room that is measured, and is clearly cooler; else 0.
     */
    private static double cools(ConeJudgement j, Thermal t) {
        double overK = j.roomC().map(r -> t.estimate().readingC() - r).orElse(0.0);
        return overK < OVER_K ? 0 : Math.max(0, t.holding() * t.estimate().traits().riseKPerS() / overK
                / t.estimate().nominal().lossPerS());
    }

    /** How that cone cools without heat: as it has shown, where its room is measured; else by the book. */
    static Cooling cooling(Work work, Cone c) {
        double litres = Judge.warmedLitres(c, work.batch(c.id()));
        double nominalH = Losses.timeConstantH(litres, Judge.lossWPerK(c, litres));
        return work.ledger.book().cone(c.id()).heater().learned()
                .filter(l -> work.judged.get(c.id()).roomC().isPresent() && l.coolingKnown()
                        && l.fits(c.fittings().heat().watts(), litres))
                .map(l -> Cooling.shown(nominalH / l.cools())).orElse(Cooling.nominal(nominalH));
    }

    /** In the tick in which a proof is passed, if it is new and the last was written an hour ago. */
    private static Optional<Learned> news(Work work, Cone c, Thermal t) {
        if (!t.proof().passed() || t.proofAgeS() > 0) {
            return Optional.empty();
        }
        double watts = c.fittings().heat().watts();
        double litres = Judge.warmedLitres(c, work.batch(c.id()));
        ConeBook book = work.ledger.book().cone(c.id());
        Optional<Learned> kept = book.heater().learned();
        boolean other = kept.filter(l -> l.fits(watts, litres)).isEmpty();
        double cools = cools(work.judged.get(c.id()), t);
        Traits is = t.proof().traits();
        Traits nominal = t.estimate().nominal();
        Learned now = new Learned(watts, litres, is.riseKPerS() / nominal.riseKPerS(),
                is.lossPerS() / nominal.lossPerS(), is.lagS(),
                cools == 0 && !other ? kept.get().cools() : cools);
        boolean due = other || book.heater().learnedAt().filter(at -> work.since(at).leastMs()
                < Units.HOUR_MS).isEmpty();
        return due && (other || now.differs(kept.get(), NEWS)) ? Optional.of(now) : Optional.empty();
    }
}
