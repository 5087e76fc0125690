package greyground.raster;

import java.util.concurrent.Callable;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;

/**
 * A fixed number of threads that work off what they are given, in order. When memory runs out a thread can die between two works and take
 * one with it; whoever waits for that work asks {@link #checkNothingLost} now and then.
 */
public final class Crew implements AutoCloseable {
    /** How long to wait for a work before asking whether any is lost (assumed). */
    public static final long PATIENCE_MILLISECONDS = 200;

    private final ThreadPoolExecutor workers;
    private final AtomicReference<Throwable> death = new AtomicReference<>();
    // The waiting thread's own: whether nobody was at work when it last asked.
    private boolean idle;

    /** Threads of this name, at least 1. */
    public Crew(String name, int threads) {
        this.workers =
                new ThreadPoolExecutor(threads, threads, 0, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), work -> {
                    Thread thread = new Thread(work, name);
                    thread.setDaemon(true);
                    thread.setUncaughtExceptionHandler((dead, cause) -> death.compareAndSet(null, cause));
                    return thread;
                });
    }

    /** Gives a work whose failure it keeps to itself. */
    public void execute(Runnable work) {
        workers.execute(work);
    }

    /** Gives a work whose result is wanted. */
    public <T> Future<T> submit(Callable<T> work) {
        return workers.submit(work);
    }

    /** Throws what killed a thread; or that memory ran out, if twice running there is nothing left to do and nobody at it. */
    public void checkNothingLost() {
        Throwable cause = death.get();
        if (cause instanceof RuntimeException unchecked) {
            throw unchecked;
        }
        if (cause instanceof Error error) {
            throw error;
        }
        boolean now = workers.getActiveCount() == 0 && workers.getQueue().isEmpty();
        if (now && idle) {
            throw new OutOfMemoryError("a thread was lost, and its work with it");
        }
        idle = now;
    }

    /** Stops at once. */
    @Override
    public void close() {
        workers.shutdownNow();
    }
}
