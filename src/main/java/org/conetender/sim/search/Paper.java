package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.conetender.core.Result;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Commit;

/**
 * The record as it is on disk and on its way there; immutable.
 *
 * @param durable what a restart would read
 * @param checkpoint the last one
 * @param queue transactions that have been handed over and not answered, oldest first
 * @param minute whether a checkpoint waits with them
 * @param finished answers that the next tick will be told
 * @param mood what becomes of what is handed to it
 * @param trouble why the last could not be written; empty while all is well
 */
record Paper(Durable durable, Optional<Checkpoint> checkpoint, List<List<Fact>> queue, boolean minute,
             List<Commit> finished, Mood mood, Optional<String> trouble) {

    /** What becomes of what is handed to the record. */
    enum Mood {
        KEEPING,
        /** It gives no answer, and nothing is written. */
        SILENT,
        REFUSING
    }

    static Paper empty(Durable nothing) {
        return new Paper(nothing, Optional.empty(), List.of(), false, List.of(), Mood.KEEPING,
                Optional.empty());
    }

    Paper mood(Mood next) {
        return new Paper(durable, checkpoint, queue, minute, finished, next, trouble).worked();
    }

    /** After a tick that took the answers and hands over more. */
    Paper after(Result.Record record) {
        List<List<Fact>> all = queue;
        if (!record.transactions().isEmpty()) {
            all = new ArrayList<>(queue);
            all.addAll(record.transactions());
        }
        boolean asked = record.checkpoint().isPresent();
        boolean keeps = asked && mood == Mood.KEEPING;
        return new Paper(durable, keeps ? record.checkpoint() : checkpoint, all, minute || asked, List.of(),
                mood, keeps ? Optional.empty() : trouble).worked();
    }

    /** The process died. @param arrived whether what was on its way still reached the disk */
    Paper died(boolean arrived) {
        return new Paper(durable.with(arriving(arrived)), checkpoint, List.of(), false, List.of(), mood,
                Optional.empty());
    }

    /** What nobody was told of yet, and a restart reads. @param arrived as when the process dies */
    List<Fact> untold(boolean arrived) {
        Set<Long> kept = finished.stream().filter(c -> c.failure().isEmpty()).map(Commit::seq)
                .collect(Collectors.toSet());
        List<Fact> out = new ArrayList<>(arriving(arrived));
        for (Durable.Kept k = durable.kept(); k != null && kept.contains(k.fact().seq()); k = k.before()) {
            out.add(k.fact());
        }
        return out;
    }

    private List<Fact> arriving(boolean arrived) {
        return arrived && mood != Mood.REFUSING ? queue.stream().flatMap(List::stream).toList() : List.of();
    }

    /** The process died, and the newer half of the record cannot be read any more. */
    Paper damaged() {
        return new Paper(durable.damaged(), checkpoint, List.of(), false, List.of(), mood, Optional.empty());
    }

    /** What was written down before a life begins. */
    Paper knowing(List<Fact> facts) {
        return new Paper(durable.with(facts), checkpoint, queue, minute, finished, mood, trouble);
    }

    /** With a transaction that comes outside of a tick. */
    Paper handed(List<Fact> facts) {
        return new Paper(durable, checkpoint, List.of(facts), minute, finished, mood, trouble).worked();
    }

    private Paper worked() {
        if (mood == Mood.SILENT || queue.isEmpty() && !minute) {
            return this;
        }
        boolean keep = mood == Mood.KEEPING;
        Optional<String> why = queue.isEmpty() && !keep ? trouble
                : keep ? Optional.empty() : Optional.of("the disk is full; free some space");
        Durable d = durable;
        List<Commit> answers = new ArrayList<>(finished);
        for (List<Fact> transaction : queue) {
            d = keep ? d.with(transaction) : d;
            transaction.forEach(f -> answers.add(new Commit(f.seq(), why)));
        }
        if (minute) {
            answers.add(new Commit(Commit.MINUTE, why));
        }
        return new Paper(d, checkpoint, List.of(), false, List.copyOf(answers), mood, why);
    }

    /** How long the oldest transaction has waited, ms. */
    long waitsForMs(long nowMs) {
        return queue.isEmpty() ? 0 : Math.max(0, nowMs - queue.getFirst().getFirst().at().monoMs());
    }
}
