package org.conetender.port;

import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;

/**
 * The durable record. One thread at a time: the record agent's. When a call returns, what it was
 * given survives any crash; when it throws, nothing of it was kept.
 */
public interface Store extends AutoCloseable {

    /**
     * What the record holds.
     *
     * @param facts every fact in order of {@code seq}
     * @param checkpoint the last one, if any
     */
    record Kept(List<Fact> facts, Optional<Checkpoint> checkpoint) {}

    /** Reads everything back. Called once, before the first write. */
    Kept load() throws StoreException;

    /** Keeps these facts in one transaction, all or none. */
    void append(List<Fact> facts) throws StoreException;

    /** Keeps one minute: its temperatures and the checkpoint, in one transaction. */
    void minute(Checkpoint checkpoint) throws StoreException;

    @Override
    void close();

    /** The record could not be read or written; the message says what it means and what to do. */
    final class StoreException extends Exception {
        public StoreException(String message, Throwable cause) {
            super(message, cause);
        }
    }
}
