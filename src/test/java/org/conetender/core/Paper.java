package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Commit;

/** The record of a story: it keeps, waits or refuses, as the story wants, and never forgets. */
public final class Paper {

    /** What becomes of what is handed to it. */
    public enum Mood {
        KEEPING, WAITING, REFUSING,
        /** Written, but not surely durable: a restart finds it, unless something was kept before. */
        FALTERING
    }


    private final TreeMap<Long, Fact> kept = new TreeMap<>();
    private final List<List<Fact>> waiting = new ArrayList<>();
    private final List<Commit> finished = new ArrayList<>();
    private Optional<Checkpoint> checkpoint = Optional.empty();
    private Optional<String> trouble = Optional.empty();
    private Mood mood = Mood.KEEPING;
    private boolean minuteWaits;
    /** What a restart finds all the same. */
    private List<Fact> written = List.of();

    public void mood(Mood m) {
        mood = m;
        work();
    }

    void take(Result.Record record) {
        waiting.addAll(record.transactions());
        if (mood == Mood.KEEPING) {
            checkpoint = record.checkpoint().or(() -> checkpoint);
        }
        record.checkpoint().ifPresent(c -> trouble = mood == Mood.KEEPING ? Optional.empty() : trouble);
        minuteWaits |= record.checkpoint().isPresent();
        work();
    }

    /** Takes a transaction that comes outside of a tick. */
    void keep(List<Fact> facts) {
        waiting.add(facts);
        work();
    }

    /** Handles the oldest transaction by hand, while waiting. @param keep or refuse it */
    public boolean next(boolean keep) {
        if (waiting.isEmpty()) {
            return false;
        }
        handle(waiting.removeFirst(), keep);
        return true;
    }

    private void work() {
        while (mood != Mood.WAITING && !waiting.isEmpty()) {
            handle(waiting.removeFirst(), mood == Mood.KEEPING);
        }
        if (mood != Mood.WAITING && minuteWaits) {
            finished.add(new Commit(Commit.MINUTE, trouble));
            minuteWaits = false;
        }
    }

    private void handle(List<Fact> facts, boolean keep) {
        trouble = keep ? Optional.empty() : Optional.of("the disk is full; free some space");
        written = mood == Mood.FALTERING ? facts : List.of();
        for (Fact f : facts) {
            if (keep && kept.put(f.seq(), f) != null) {
                throw new IllegalStateException("fact " + f.seq() + " was handed over twice");
            }
            finished.add(new Commit(f.seq(), trouble, mood == Mood.FALTERING));
        }
    }

    List<Commit> takeCommits() {
        List<Commit> out = List.copyOf(finished);
        finished.clear();
        return out;
    }

    /** The process died: what was not kept is gone. */
    void died() {
        written.forEach(f -> kept.put(f.seq(), f));
        written = List.of();
        waiting.clear();
        finished.clear();
        minuteWaits = false;
        trouble = Optional.empty();
    }

    Optional<String> trouble() {
        return trouble;
    }

    /** What a restart would read, in order. */
    public List<Fact> facts() {
        return List.copyOf(kept.values());
    }

    Optional<Checkpoint> checkpoint() {
        return checkpoint;
    }
}
