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
        return seq == other.seq || oneRequest(seq, source, other.seq, other.source);
    }

    /**
     * Whether the sources of two facts are one request. A client that counts its ids from one again may use
     * one anew, though not while it is remembered ({@link Book#REMEMBERED_IDS}).
     */
    static boolean oneRequest(long seq, String source, long otherSeq, String otherSource) {
        return !source.isEmpty() && source.equals(otherSource)
                && Math.abs(seq - otherSeq) < Book.REMEMBERED_IDS;
    }
}
