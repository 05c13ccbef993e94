package org.conetender.core.hatch;

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
 */
public record Known(Lots lots, Who who, Evidence evidence, List<Speed> kin, Speed speed) {

    /** @param lot label; empty for none  @param cone id  @param batch its number */
    record Who(String lot, String cone, long batch) {}

    /** @param others of the lot  @param own of the batch  @param relatives lots of the same source */
    record Evidence(List<List<Lesson>> others, List<Lesson> own, List<List<List<Lesson>>> relatives) {}

    public static final Known NONE = new Known(Lots.NONE, new Who("", "", 0),
            new Evidence(List.of(), List.of(), List.of()), List.of(), Speed.UNKNOWN_LOT);

    /** Published hatch times lie between these, °C (science.md §2.2, §2.3); no lot is carried further. */
    private static final double LEAST_C = 20;
    private static final double MOST_C = 30;

    /** By what the book says now. @param cone the batch's */
    public Known after(Lots now, String cone, Batch b) {
        String lot = b.stock().map(Batch.Stock::lot).orElse("");
        Who next = new Who(lot, cone, b.number());
        if (now == lots && next.equals(who)) {
            return this;
        }
        Evidence e = lot.isEmpty() ? NONE.evidence : new Evidence(now.others(lot, cone, b.number()),
                now.own(lot, cone, b.number()), now.relatives(lot));
        if (e.equals(evidence)) {
            return new Known(now, next, evidence, kin, speed);
        }
        List<Speed> of = e.relatives.equals(evidence.relatives) ? kin : e.relatives.stream()
                .map(r -> Learnt.of(Learnt.Prior.UNKNOWN, r, List.of())).toList();
        return new Known(now, next, e, of, Learnt.of(of.isEmpty() ? Learnt.Prior.UNKNOWN
                : Learnt.Prior.of(of), e.others, e.own));
    }

    /** Whether they are the same cysts, of whose lot the book may say something else by now. */
    public boolean canWait(Lots now, String cone, Batch b) {
        String lot = b.stock().map(Batch.Stock::lot).orElse("");
        return now != lots && who.equals(new Who(lot, cone, b.number()));
    }

    /** The same in that water; any where it is not known. @param waterC °C, or NaN */
    public Speed at(double waterC) {
        return speed.timesSeen() == 0 || Double.isNaN(waterC) ? speed
                : speed.at(Math.clamp(waterC, LEAST_C, MOST_C), Rate.USUAL.baseC());
    }
}
