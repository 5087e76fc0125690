package greyground.raster;

import java.io.IOException;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * A fixed number of threads that work off what they are given, in order. Once it is closed none of them works any more, so that what they
 * read from may be closed after it. When memory runs out a thread can die between two works and take one with it; whoever waits for a work
 * asks now and then whether any is lost.
 */
public final class Crew implements AutoCloseable {
    /** How long to wait for a work before asking whether any is lost (assumed). */
    public static final long PATIENCE_MILLISECONDS = 200;

    /** A band or tile takes far less (assumed); whoever is still at it then hangs in something that never ends. */
    private static final long LONGEST_END_SECONDS = 60;

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

    /** As many threads as the machine has cores. */
    public static int allCores() {
        return Math.max(1, Runtime.getRuntime().availableProcessors());
    }

    /** Gives a work whose failure it keeps to itself. */
    public void execute(Runnable work) {
        workers.execute(work);
    }

    /** Gives a work whose result is wanted. */
    public <T> Future<T> submit(Callable<T> work) {
        return workers.submit(work);
    }

    /** Waits for a work of this crew; see {@link #joined}. */
    public <T> T result(Future<T> work) throws IOException {
        while (true) {
            try {
                return join(work, PATIENCE_MILLISECONDS);
            } catch (TimeoutException notYet) {
                if (!work.isDone()) {
                    checkNothingLost();
                }
            }
        }
    }

    /**
     * Waits for a work, whoever does it, and gives its result or throws what it threw.
     *
     * @throws CancellationException if the waiting thread is interrupted
     */
    public static <T> T joined(Future<T> work) throws IOException {
        try {
            return join(work, Long.MAX_VALUE);
        } catch (TimeoutException never) {
            throw new IllegalStateException(never);
        }
    }

    private static <T> T join(Future<T> work, long milliseconds) throws IOException, TimeoutException {
        try {
            return work.get(milliseconds, TimeUnit.MILLISECONDS);
        } catch (InterruptedException interrupted) {
            throw stopped();
        } catch (ExecutionException failed) {
            Throwable cause = failed.getCause();
            if (cause instanceof IOException broken) {
                throw broken;
            }
            throwUnchecked(cause);
            throw new IllegalStateException(cause);
        }
    }

    /** What an interrupted wait throws; the thread stays interrupted. */
    public static CancellationException stopped() {
        Thread.currentThread().interrupt();
        return new CancellationException("stopped");
    }

    /** Throws what can be thrown anywhere; nothing else. */
    public static void throwUnchecked(@Nullable Throwable cause) {
        if (cause instanceof RuntimeException unchecked) {
            throw unchecked;
        }
        if (cause instanceof Error error) {
            throw error;
        }
    }

    /** Throws what killed a thread; or that memory ran out, if twice running there is nothing left to do and nobody at it. */
    public void checkNothingLost() {
        throwUnchecked(death.get());
        boolean now = workers.getActiveCount() == 0 && workers.getQueue().isEmpty();
        if (now && idle) {
            throw new OutOfMemoryError("a thread was lost, and its work with it");
        }
        idle = now;
    }

    /** Begins no further work, and waits until whoever is at one has ended. */
    @Override
    public void close() {
        end(workers);
    }

    /** The same for threads of another kind. */
    public static void end(ExecutorService workers) {
        workers.shutdownNow();
        boolean interrupted = Thread.interrupted();
        try {
            workers.awaitTermination(LONGEST_END_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException again) {
            interrupted = true;
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
