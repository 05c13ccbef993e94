package org.conetender.core.image;

import java.util.Optional;

/**
 * What became of one fact that was handed to the record.
 *
 * @param seq the fact's number; {@link #MINUTE} for a checkpoint
 * @param failure empty when it is durable; else why it could not be recorded
 * @param mayBeKept whether a restart may find it all the same, though it failed
 */
public record Commit(long seq, Optional<String> failure, boolean mayBeKept) {

    /** No fact has this number; it stands for the minute's checkpoint. */
    public static final long MINUTE = 0;

    /** One that is durable, or surely was not kept. */
    public Commit(long seq, Optional<String> failure) {
        this(seq, failure, false);
    }
}
