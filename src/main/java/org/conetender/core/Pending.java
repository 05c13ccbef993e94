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
 * @param sentence the answer once they are durable
 * @param refused whether the record refused them once; then they are only kept if they take away
 */
record Pending(List<Fact> facts, Optional<Request> request, String sentence, boolean refused) {

    /** Whether acting on them need not wait for the record (style.md, commit order). */
    boolean takesAway() {
        return facts.stream().allMatch(f -> Reports.takesAway(f.change()));
    }

    long lastSeq() {
        return facts.getLast().seq();
    }
}
