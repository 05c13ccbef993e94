package org.conetender.sim;

import org.conetender.core.image.ContactSample.Level;
import org.conetender.port.Contact;

/** One contact: a level float, an air proof, or the hand button. Read at any time; the world moves it. */
public final class SimContact implements Contact {

    /** What can be wrong with it. */
    public enum Fault { NONE, STUCK_CLOSED, STUCK_OPEN, UNREADABLE, CHATTERING }

    /** What an open contact that chatters says, second by second (guess). */
    private static final Level[] CHATTER =
            {Level.OPEN, Level.OPEN, Level.CLOSED, Level.UNKNOWN, Level.CLOSED};

    private final String id;
    private final SimClock clock;
    private boolean closed;
    private long pressedUntilMs;
    private Fault fault = Fault.NONE;

    public SimContact(String id, SimClock clock) {
        this.id = id;
        this.clock = clock;
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public Level read() {
        return switch (fault) {
            case NONE -> closed || clock.elapsedMs() < pressedUntilMs ? Level.CLOSED : Level.OPEN;
            case STUCK_CLOSED -> Level.CLOSED;
            case STUCK_OPEN -> Level.OPEN;
            case UNREADABLE -> Level.UNKNOWN;
            case CHATTERING -> closed ? Level.CLOSED
                    : CHATTER[(int) (clock.elapsedMs() / 1_000 % CHATTER.length)];
        };
    }

    /** What the world does to the contact, from now on. */
    void set(boolean isClosed) {
        closed = isClosed;
    }

    /** A person presses it for this many milliseconds from now. */
    public void press(long ms) {
        pressedUntilMs = clock.elapsedMs() + ms;
    }

    public void fail(Fault what) {
        fault = what;
    }
}
