package org.conetender.app;

import java.nio.file.Path;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.conetender.adapter.sqlite.SqliteStore;
import org.conetender.port.Store;

/**
 * The record while it is read, on a thread of its own: years of it take as long as the relays, the bus and
 * the socket beside it. Its lock is had from the first moment on.
 */
final class Reading {

    private final FutureTask<Store> reading;

    private Reading(SqliteStore.Locked locked) {
        this.reading = new FutureTask<>(locked::open);
        Thread thread = new Thread(reading, "conetender-reading");
        thread.setDaemon(true);
        thread.start();
    }

    /** @throws Unavailable if another daemon has the record, or its folder cannot be used */
    static Reading begin(Path record) throws Unavailable {
        try {
            return new Reading(SqliteStore.lock(record));
        } catch (Store.StoreException e) {
            throw unavailable(e);
        }
    }

    /** The record, read. @throws Unavailable if it cannot be used; its lock is free again then */
    Store done() throws Unavailable {
        try {
            return reading.get();
        } catch (ExecutionException e) {
            switch (e.getCause()) {
                case Store.StoreException s -> throw unavailable(s);
                case RuntimeException bug -> throw bug;
                case Error bug -> throw bug;
                case Throwable other -> throw new IllegalStateException(other);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Unavailable("The record: the start was interrupted while it was read.", e);
        }
    }

    /** Nobody needs it any more. */
    void close() {
        try {
            done().close();
        } catch (Unavailable e) {
            // It could not be opened either, and holds nothing; why the start ends is said by the caller.
            return;
        }
    }

    private static Unavailable unavailable(Store.StoreException e) {
        return new Unavailable("The record: " + e.getMessage(), e);
    }
}
