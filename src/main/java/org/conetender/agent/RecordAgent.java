package org.conetender.agent;

import java.util.List;
import java.util.Optional;
import org.conetender.core.Result;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.image.Commit;
import org.conetender.port.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes facts and minutes durable, in the order in which they were decided, and says so. The only
 * thread that touches the store after the start. A failure is a fact for the next image, not an end.
 */
public final class RecordAgent implements Agent {

    private static final Logger LOG = LoggerFactory.getLogger(RecordAgent.class);

    /**
     * A record that could not be written is tried again after so many ticks (guess): whoever has made room
     * reports again soon, and is refused while it counts as failing. Ticks that passed while a write took its
     * time to fail are one.
     */
    static final int AGAIN_TICKS = 5;

    private final Store store;
    private final Mail mail;
    /** The last minute that was handed over. */
    private Optional<Checkpoint> last = Optional.empty();
    private int failingTicks;

    RecordAgent(Store store, Mail mail) {
        this.store = store;
        this.mail = mail;
    }

    @Override
    public String name() {
        return "record";
    }

    @Override
    public int doWork() {
        List<Result.Record> records = mail.records();
        int done = records.size();
        for (Result.Record r : records) {
            for (List<Fact> facts : r.transactions()) {
                append(facts);
                done++;
            }
            r.minute().ifPresent(m -> {
                last = Optional.of(m.checkpoint());
                mail.committed(commit(Commit.MINUTE, attempt(() -> store.minute(m.checkpoint()), true)));
                history(m);
            });
        }
        if (!records.isEmpty()) {
            again(records.stream().anyMatch(r -> !r.empty()));
        }
        return done;
    }

    /** By the last minute, since nothing else may be written twice. @param tried in this round already */
    private void again(boolean tried) {
        failingTicks = tried || mail.storeTrouble().isEmpty() ? 0 : failingTicks + 1;
        if (failingTicks >= AGAIN_TICKS && last.isPresent()) {
            failingTicks = 0;
            attempt(() -> store.minute(last.get()), true);
        }
    }

    /**
     * Keeps one transaction and tells the control agent; a failure is told like any other. A full disk takes
     * facts for longer than minutes: so one that was kept ends no trouble, but asks the last minute whether
     * it has ended.
     */
    void append(List<Fact> facts) {
        boolean trouble = mail.storeTrouble().isPresent() && last.isPresent();
        Optional<Store.StoreException> failure = attempt(() -> store.append(facts), !trouble);
        for (Fact f : facts) {
            mail.committed(commit(f.seq(), failure));
        }
        if (trouble && failure.isEmpty()) {
            attempt(() -> store.minute(last.get()), true);
        }
    }

    private static Commit commit(long seq, Optional<Store.StoreException> failure) {
        return new Commit(seq, failure.map(Exception::getMessage),
                failure.filter(Store.StoreException::mayBeKept).isPresent());
    }

    /** Reports lack what is not kept here, and nothing else does: an alarm of its own says so. */
    private void history(Minute m) {
        boolean kept = mail.historyTrouble.get().isEmpty();
        try {
            store.history(m);
            if (!kept) {
                LOG.info("the history is being kept again");
            }
            mail.historyTrouble.set(Optional.empty());
        } catch (Store.StoreException e) {
            if (kept) {
                LOG.warn("temperatures and outputs are not kept for reports: {}", e.getMessage());
            }
            mail.historyTrouble.set(Optional.of(e.getMessage()));
        }
    }

    private interface Write {
        void run() throws Store.StoreException;
    }

    /** @param ends whether the trouble is over if this is done */
    private Optional<Store.StoreException> attempt(Write w, boolean ends) {
        try {
            w.run();
            if (ends && mail.storeTrouble().isPresent()) {
                LOG.info("the record is being kept again");
            }
            mail.storeTrouble(ends ? Optional.empty() : mail.storeTrouble());
            return Optional.empty();
        } catch (Store.StoreException e) {
            if (mail.storeTrouble().isEmpty()) {
                LOG.error("the record could not be written: {}", e.getMessage());
            }
            mail.storeTrouble(Optional.of(e.getMessage()));
            return Optional.of(e);
        }
    }
}
