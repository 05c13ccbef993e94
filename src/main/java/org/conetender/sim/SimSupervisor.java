package org.conetender.sim;

import org.conetender.port.Supervisor;

/** Counts what the daemon tells its service manager, so that a test can ask whether the dog was fed. */
public final class SimSupervisor implements Supervisor {

    private boolean ready;
    private boolean stopping;
    private long alive;
    private String status = "";

    @Override
    public void ready() {
        ready = true;
    }

    @Override
    public void alive() {
        alive++;
    }

    @Override
    public void status(String line) {
        status = line;
    }

    @Override
    public void stopping() {
        stopping = true;
    }

    public boolean isReady() {
        return ready;
    }

    public boolean isStopping() {
        return stopping;
    }

    /** How often it was fed. */
    public long fed() {
        return alive;
    }

    public String lastStatus() {
        return status;
    }
}
