package org.conetender.core;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Request;
import org.conetender.core.judge.Breath;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;

/**
 * All that one tick hands to the next. The ledger is durable, everything in {@link Live} is rebuilt.
 */
public record State(Ledger ledger, Live live) {

    public Book book() {
        return ledger.book();
    }

    /**
     * @param begun when this life of the process began
     * @param lastSeen the last moment the record knows from before; empty for the first life
     * @param cones by id
     * @param alarms which stand
     * @param timers the rest
     * @param beat the heartbeat's level, which every healthy tick turns over
     */
    public record Live(Moment begun, Optional<Moment> lastSeen, Map<String, ConeLive> cones, Alarms alarms,
                       Timers timers, boolean beat) {}

    /**
     * @param last when the last tick began; empty before the first
     * @param checkpointAtMs when the last checkpoint was written, monotonic ms
     * @param wallUntrustedForMs how long the wall clock has not been trusted in this life
     * @param waiting requests that wait for a grant of their cone to become durable
     * @param minuteOwed since when the record has owed an answer to a checkpoint, monotonic ms
     */
    public record Timers(Optional<Moment> last, long checkpointAtMs, long wallUntrustedForMs,
                         List<Request> waiting, OptionalLong minuteOwed) {}

    /**
     * The state with which a life of the process begins: nothing is energised, nothing heard yet.
     *
     * @param facts all that the record holds, in order
     * @param checkpoint the last one
     */
    public static State begin(Settings settings, List<Fact> facts, Optional<Checkpoint> checkpoint,
            Moment now) {
        Moment first = facts.isEmpty() ? now : facts.getFirst().at();
        Book book = Book.empty(settings, first);
        for (Fact f : facts) {
            book = book.after(f);
        }
        Map<String, ConeLive> cones = new TreeMap<>();
        for (Cone c : settings.cones()) {
            Batch b = book.cone(c.id()).batch();
            Optional<Moment> last = facts.stream().filter(f -> f.cone().equals(c.id())).map(Fact::at)
                    .reduce((x, y) -> y);
            cones.put(c.id(), ConeLive.begin(c.id(), b, checkpoint, Breath.begun(b, last, now)));
        }
        long next = facts.isEmpty() ? 1 : facts.getLast().seq() + 1;
        return new State(Ledger.of(book, next),
                new Live(now, lastSeen(facts, checkpoint), cones, Alarms.NONE, new Timers(Optional.empty(),
                        now.monoMs(), 0, List.of(), OptionalLong.empty()), false));
    }

    private static Optional<Moment> lastSeen(List<Fact> facts, Optional<Checkpoint> checkpoint) {
        Optional<Moment> fact = facts.isEmpty() ? Optional.empty() : Optional.of(facts.getLast().at());
        if (checkpoint.isEmpty() || fact.isEmpty()) {
            return checkpoint.map(Checkpoint::at).or(() -> fact);
        }
        Moment a = checkpoint.get().at();
        Moment b = fact.get();
        return Optional.of(a.sameBoot(b) && a.monoMs() > b.monoMs() ? a
                : !a.sameBoot(b) && a.wallMs() > b.wallMs() ? a : b);
    }
}
