package org.conetender.app;

/** Something the daemon needs cannot be had; the message says what it is and what to do. */
public final class Unavailable extends Exception {

    private static final long serialVersionUID = 1;

    public Unavailable(String message, Throwable cause) {
        super(message, cause);
    }
}
