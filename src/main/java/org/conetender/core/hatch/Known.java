package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Lots;

/**
 * What is known of the cysts in one cone, kept from tick to tick: reckoned anew only when a report has
 * changed what their lot taught, or other cysts are in.
 *
 * @param lots that it was taken from
 * @param who they are
 * @param evidence what was taken
 * @param kin what is known of other lots of the same source
 * @param speed what follows from it, at {@value Rate#ANCHOR_C} °C
 * @param whole whether all was taken in; one lot is learnt in a tick, as that takes time
 * @param naupliiPerGram that a gram of it gives, by what was counted, else as of any lot
 */
public record Known(Lots lots, Who who, Evidence evidence, List<Speed> kin, Speed speed, boolean whole,
                    double naupliiPerGram) {

    /** @param lot label; empty for none  @param cone id  @param batch its number */
    record Who(String lot, String cone, long batch) {

        private boolean is(String ofLot, String ofCone, long ofBatch) {
            return batch == ofBatch && cone.equals(ofCone) && lot.equals(ofLot);
        }
    }

    /** @param others of the lot  @param own of the batch  @param relatives lots of the same source */
    record Evidence(List<List<Lesson>> others, List<Lesson> own, List<List<List<Lesson>>> relatives) {}

    public static final Known NONE = new Known(Lots.NONE, new Who("", "", 0),
            new Evidence(List.of(), List.of(), List.of()), List.of(), Speed.UNKNOWN_LOT, true,
            Oxygen.USUAL_NAUPLII_PER_G);

    /** Published hatch times lie between these, °C (science.md §2.2, §2.3); no lot is carried further. */
    private static final double LEAST_C = 20;
    private static final double MOST_C = 30;

    /**
     * By all that the book says now, however long that takes: for a beginning, before the first tick. The
     * lots of its source are learnt side by side.
     */
    public Known begun(Lots now, String cone, Batch b) {
        Known k = after(now, cone, b);
        if (k.whole) {
            return k;
        }
        List<List<List<Lesson>>> relatives = now.relatives(k.who.lot);
        List<Speed> of = relatives.parallelStream().map(r -> {
            int at = k.evidence.relatives.indexOf(r);
            return at >= 0 ? k.kin.get(at) : Learnt.alone(r);
        }).toList();
        return new Known(k.lots, k.who, new Evidence(k.evidence.others, k.evidence.own, relatives), of,
                k.speed, false, k.naupliiPerGram).after(now, cone, b);
    }

    /** By what the book says now; at most one lot is learnt. @param cone the batch's */
    public Known after(Lots now, String cone, Batch b) {
        String lot = b.stock().map(Batch.Stock::lot).orElse("");
        if (whole && now == lots && who.is(lot, cone, b.number())) {
            return this;
        }
        Who next = new Who(lot, cone, b.number());
        // Of a tin that nobody named nothing is known but by this batch itself.
        List<Lesson> own = now.own(lot, cone, b.number());
        Evidence e = Lots.unnamed(lot) ? new Evidence(List.of(), own, List.of())
                : new Evidence(now.others(lot, cone, b.number()), own, now.relatives(lot));
        if (whole && e.equals(evidence)) {
            return new Known(now, next, evidence, kin, speed, true, naupliiPerGram).counted();
        }
        List<Speed> of = new ArrayList<>();
        for (List<List<Lesson>> r : e.relatives) {
            int at = evidence.relatives.indexOf(r);
            of.add(at >= 0 ? kin.get(at) : Learnt.alone(r));
            if (at < 0) {
                return new Known(now, next, new Evidence(evidence.others, evidence.own,
                        e.relatives.subList(0, of.size())), of, next.equals(who) ? speed : NONE.speed, false,
                        naupliiPerGram).counted();
            }
        }
        return new Known(now, next, e, of, Learnt.of(Learnt.Prior.of(of), e.others, e.own), true,
                naupliiPerGram).counted();
    }

    private Known counted() {
        return new Known(lots, who, evidence, kin, speed, whole,
                lots.naupliiPerGram(who.lot, who.cone, who.batch, speed.k90()));
    }

    /** Whether they are the same cysts, of whose lot there is more to learn, or may be by now. */
    public boolean canWait(Lots now, String cone, Batch b) {
        String lot = b.stock().map(Batch.Stock::lot).orElse("");
        return (now != lots || !whole) && who.is(lot, cone, b.number());
    }

    /** The same in that water; any where it is not known. @param waterC °C, or NaN */
    public Speed at(double waterC) {
        return speed.timesSeen() == 0 || Double.isNaN(waterC) ? speed
                : speed.at(Math.clamp(waterC, LEAST_C, MOST_C), Rate.USUAL.baseC());
    }
}
