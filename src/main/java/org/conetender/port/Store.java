package org.conetender.port;

import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;

/**
 * The durable record. One thread at a time: the record agent's. When a call returns, what it was
 * given survives any crash; when it throws, nothing of it was kept, but where the exception says that it may
 * have been ({@link StoreException#mayBeKept}).
 */
public interface Store extends AutoCloseable {

    /**
     * What the record holds.
     *
     * @param facts every fact in order of {@code seq}
     * @param checkpoint the last one, if any
     * @param damages each time when the record was damaged and only a part of it could be read back, or when
     *     a backup took its place: what is lost and under which name the other one is kept; in words that no
     *     other has, oldest first
     */
    record Kept(List<Fact> facts, Optional<Checkpoint> checkpoint, List<String> damages) {}

    /** Reads everything back. Called once, before the first write. */
    Kept load() throws StoreException;

    /** Keeps these facts in one transaction, all or none. */
    void append(List<Fact> facts) throws StoreException;

    /** Keeps the checkpoint of a minute, in place of the one before. */
    void minute(Checkpoint checkpoint) throws StoreException;

    /**
     * Keeps a minute for reports, with the next ones: a sudden end may lose some of them. Nothing else
     * depends on them: what stops this stops neither {@link #append} nor {@link #minute}. Of a storm of
     * alarms only the beginning may be kept.
     */
    void history(Minute minute) throws StoreException;

    @Override
    void close();

    /** The record could not be read or written; the message says what it means and what to do. */
    final class StoreException extends Exception {
        private static final long serialVersionUID = 1;

        private final boolean mayBeKept;

        public StoreException(String message, Throwable cause) {
            this(message, cause, false);
        }

        /** @param mayBeKept as {@link #mayBeKept} */
        public StoreException(String message, Throwable cause, boolean mayBeKept) {
            super(message, cause);
            this.mayBeKept = mayBeKept;
        }

        /**
         * Whether a restart may find what was given all the same: it was written, and only that it was made
         * to last failed. The next call that returns settles it: then nothing of it was kept.
         */
        public boolean mayBeKept() {
            return mayBeKept;
        }
    }
}
