package org.conetender.sim.search;

/**
 * What the search itself remembers of one alarm: what guards found, and when people were called. All
 * monotonic ms; −1 where that is not so.
 *
 * @param foundMs since when guards have found its cause, for this occurrence
 * @param goneMs since when they have not found it any more
 * @param aloneMs since when it has stood in the list and followed from nothing there
 * @param firstMs when people were called of it for the first time since then
 * @param lastMs when for the last time
 */
record Bell(long foundMs, long goneMs, long aloneMs, long firstMs, long lastMs) {

    static final Bell NONE = new Bell(-1, -1, -1, -1, -1);

    /** After a tick in which its cause was found, or not. */
    Bell found(boolean there, long nowMs) {
        boolean anew = there && (foundMs < 0 || goneMs >= 0 && nowMs - goneMs >= AlarmRules.OFF_DELAY_MS);
        return anew ? new Bell(nowMs, -1, -1, -1, -1)
                : new Bell(foundMs, there ? -1 : goneMs < 0 ? nowMs : goneMs, aloneMs, firstMs, lastMs);
    }

    /** After a tick in which it stood alone, or not, and people were called of it, or not. */
    Bell stood(boolean alone, boolean called, long nowMs) {
        long since = !alone ? -1 : aloneMs < 0 ? nowMs : aloneMs;
        boolean first = called && (firstMs < 0 || aloneMs < 0);
        return new Bell(foundMs, goneMs, since, !alone ? -1 : first ? nowMs : firstMs,
                !alone ? -1 : called ? nowMs : lastMs);
    }

    /** Whether its cause was found in the last tick. */
    boolean there() {
        return foundMs >= 0 && goneMs < 0;
    }
}
