package org.conetender.core.batch;

import org.conetender.core.unit.Moment;

/**
 * One line of the book: what happened, when, to which cone, on whose request. Never changed once
 * recorded; a withdrawal is a fact of its own.
 *
 * @param seq counts up from 1 over the life of the book, without gaps in a healthy one
 * @param at when
 * @param cone the cone's id; empty for the whole site
 * @param source id of the request behind it; empty when the daemon acted by itself
 * @param change what happened
 */
public record Fact(long seq, Moment at, String cone, String source, Change change) {

    /** Whether one request is behind both, or they are one. */
    public boolean sameRequest(Fact other) {
        return seq == other.seq || !source.isEmpty() && source.equals(other.source);
    }
}
