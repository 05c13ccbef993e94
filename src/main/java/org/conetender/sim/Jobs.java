package org.conetender.sim;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/** Many runs on threads of their own. Each works alone; what it answers with is done by the caller. */
public final class Jobs {

    private Jobs() {}

    /**
     * Does all of them.
     *
     * @param jobs each answers with what files its result
     * @param progress hears the share that is done, 0..1, on the calling thread
     * @throws InterruptedException if the caller was interrupted; what was begun is given up
     */
    public static void run(List<Callable<Runnable>> jobs, int threads, Consumer<Double> progress)
            throws InterruptedException {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            ExecutorCompletionService<Runnable> service = new ExecutorCompletionService<>(pool);
            jobs.forEach(service::submit);
            for (int done = 1; done <= jobs.size(); done++) {
                Future<Runnable> job = service.take();
                job.get().run();
                progress.accept(done / (double) jobs.size());
            }
        } catch (ExecutionException e) {
            throw new IllegalStateException("a run failed: " + e.getCause(), e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }
}
