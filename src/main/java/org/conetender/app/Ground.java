package org.conetender.app;

import org.conetender.agent.Ports;
import org.conetender.port.Clock;
import org.conetender.port.Requests;
import org.conetender.port.Supervisor;

/**
 * What the daemon stands on: time, devices, and whoever speaks to it on this machine. Real Linux in
 * production, a simulated world in the demonstration; the record and the broker are the same for both.
 */
public interface Ground extends AutoCloseable {

    Clock clock();

    Ports.Devices devices();

    Requests requests();

    Supervisor supervisor();

    /** De-energises every output, for good. Any thread, more than once. */
    void outputsSafe();

    /** Lets go of everything; outputs first. */
    @Override
    void close();

    /** How a ground comes to be, once it is certain that no other daemon holds the record. */
    @FunctionalInterface
    interface Opening {
        /** @throws Unavailable with a sentence, when a part cannot be had; nothing is held then */
        Ground open() throws Unavailable;
    }
}
