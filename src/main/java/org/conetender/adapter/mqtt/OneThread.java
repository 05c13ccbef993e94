package org.conetender.adapter.mqtt;

import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The thread {@code conetender-mqtt}: tasks in order, now or later. An exception does not end it. */
final class OneThread {

    private static final Logger LOG = LoggerFactory.getLogger(OneThread.class);

    private final ScheduledThreadPoolExecutor executor;
    private final Consumer<RuntimeException> onBug;

    /** @param onBug called on the thread with whatever a task let escape */
    OneThread(Consumer<RuntimeException> onBug) {
        this.onBug = onBug;
        this.executor = new ScheduledThreadPoolExecutor(1, task -> {
            Thread made = new Thread(task, "conetender-mqtt");
            made.setDaemon(true);
            return made;
        });
        executor.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
    }

    /** Any thread. */
    void now(Runnable task) {
        after(0, task);
    }

    /** Any thread; {@code delayMs} in milliseconds. After {@link #stop} nothing runs any more. */
    void after(long delayMs, Runnable task) {
        try {
            executor.schedule(() -> guarded(task), delayMs, TimeUnit.MILLISECONDS);
        } catch (RejectedExecutionException closed) {
            LOG.debug("the transport is closed", closed);
        }
    }

    /** Any thread. */
    void stop() {
        executor.shutdownNow();
    }

    private void guarded(Runnable task) {
        try {
            task.run();
        } catch (RuntimeException bug) {
            LOG.error("a bug in the MQTT transport; the connection is made anew", bug);
            onBug.accept(bug);
        }
    }
}
