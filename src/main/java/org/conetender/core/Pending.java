package org.conetender.core;

import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Reports;
import org.conetender.core.image.Request;

/**
 * Facts on their way to the record, in one transaction.
 *
 * @param facts in order
 * @param request who waits for the answer, if anybody
 * @param besides what their answer says of what was there before them; mostly nothing
 * @param way how far they got
 * @param sinceMs when they were handed to the record, last, monotonic ms
 */
record Pending(List<Fact> facts, Optional<Request> request, String besides, Way way, long sinceMs) {

    /** How far they got. */
    enum Way {
        /** Handed to the record, which has not answered. */
        OFFERED,
        /** The record could not take them; they are in force and must be offered again. */
        REFUSED,
        /** Durable, but something before them is not: they are folded in when it is. */
        KEPT
    }

    Pending now(Way next) {
        return new Pending(facts, next == Way.OFFERED ? request : Optional.empty(), besides, next, sinceMs);
    }

    /** Handed to the record once more. */
    Pending again(long nowMs) {
        return new Pending(facts, Optional.empty(), besides, Way.OFFERED, nowMs);
    }

    /** How long the record has owed an answer to them, ms; 0 when it owes none. */
    long owedMs(long nowMs) {
        return way == Way.OFFERED ? nowMs - sinceMs : 0;
    }

    String cone() {
        return facts.getFirst().cone();
    }

    /** Whether they count already, in their place among the others. */
    boolean counts() {
        return takesAway() || way == Way.KEPT;
    }

    /** Whether they count before they are durable (style.md, commit order); what they give still waits. */
    boolean takesAway() {
        return facts.stream().allMatch(f -> Reports.takesAway(f.change()));
    }

    long lastSeq() {
        return facts.getLast().seq();
    }
}
