package org.conetender.port;

/** The service manager. Called from the control thread; never throws, never waits. */
public interface Supervisor {

    /** Ready: the first tick was complete. */
    void ready();

    /** Alive: fed last, and only after a complete tick on time. */
    void alive();

    /** One line for people. */
    void status(String line);

    /** Going down on purpose. */
    void stopping();
}
