package org.conetender.core.judge;

import org.conetender.core.image.ContactSample.Level;

/**
 * What a level contact is taken to say. One that opens and closes by turns lies in spray or swings at the
 * water's edge: it counts as closed only after it has been for some seconds, and as low at once.
 *
 * @param says {@code UNKNOWN} where none is fitted or none was read
 * @param closedForMs how long it has read closed without a break, ms
 */
public record LevelTrack(Level says, long closedForMs) {

    /** As long without a break it must be closed (guess: longer than a swing in bubbling water), ms. */
    static final long SURE_MS = 10_000;

    /** Nothing was read yet: the first reading counts. */
    public static final LevelTrack NONE = new LevelTrack(Level.UNKNOWN, SURE_MS);

    /** Whether the cone is empty beyond doubt: it reads open now. A heater goes by {@code says}. */
    public boolean empty() {
        return says == Level.OPEN && closedForMs == 0;
    }

    /** After a tick of {@code dtMs} in which it read that. */
    LevelTrack after(Level read, long dtMs) {
        if (read != Level.CLOSED) {
            return new LevelTrack(read, 0);
        }
        long closed = Math.min(SURE_MS, closedForMs + dtMs);
        return new LevelTrack(closed < SURE_MS ? says : Level.CLOSED, closed);
    }
}
