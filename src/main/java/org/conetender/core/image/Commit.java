package org.conetender.core.image;

import java.util.Optional;

/**
 * What became of one fact that was handed to the record.
 *
 * @param seq the fact's number
 * @param failure empty when it is durable; else why it could not be recorded
 */
public record Commit(long seq, Optional<String> failure) {}
