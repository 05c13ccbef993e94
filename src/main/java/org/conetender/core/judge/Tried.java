package org.conetender.core.judge;

/**
 * What was tried with the two switches of a heater, to learn which of them opens.
 *
 * @param proving how far each has been tried alone
 * @param cutShort whether warming that looks like a welded switch ended with the cut-out
 */
public record Tried(Proving proving, CutShort cutShort) {

    /** So far of the trial, and nothing else. */
    public static Tried of(Proving proving) {
        return new Tried(proving, CutShort.NONE);
    }

    /** The same, so far of the trial. */
    Tried with(Proving p) {
        return new Tried(p, cutShort);
    }
}
