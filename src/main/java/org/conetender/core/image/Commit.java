package org.conetender.core.image;

import java.util.Optional;

/**
 * What became of one fact that was handed to the record.
 *
 * @param seq the fact's number; {@link #MINUTE} for a checkpoint
 * @param failure empty when it is durable; else why it could not be recorded
 */
public record Commit(long seq, Optional<String> failure) {

    /** No fact has this number; it stands for the minute's checkpoint. */
    public static final long MINUTE = 0;
}
