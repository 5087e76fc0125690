package greyground.desk.model;

import java.io.IOException;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/**
 * One long piece of work at a time, on a thread of its own. News of it comes on the window's thread. It ends early in two ways: stopped,
 * it is heard of once more, when it has really ended; forgotten, it is not heard of again, though its thread may take a moment to end.
 */
public final class LongWork implements AutoCloseable {
    /** A window that closes waits no longer for work that nobody wants any more; it looks up far oftener (assumed). */
    private static final long LONGEST_END_MILLISECONDS = 5000;

    private final String name;
    private final Executor window;
    private volatile @Nullable Run<?> present;
    private @Nullable Thread last;

    /**
     * Nothing in the making yet.
     *
     * @param name what is made, as in "the film is not finished"
     * @param window runs what it is given on the window's thread
     */
    public LongWork(String name, Executor window) {
        this.name = name;
        this.window = window;
    }

    /**
     * What is to be done.
     *
     * @param <T> what comes of it
     */
    @FunctionalInterface
    public interface Work<T> {
        /** Tells {@code watch} how far it is, 0 to 1, which throws once the work is no longer wanted. */
        T run(DoubleConsumer watch) throws IOException;
    }

    /**
     * Hears how it goes, on the window's thread.
     *
     * @param <T> what comes of it
     * @param progress how far it is, 0 to 1
     * @param done it is made, even if stopping was asked for at the last moment
     * @param failed nothing came of it; why, in one line
     * @param stopped it was stopped, and has ended
     */
    public record News<T>(DoubleConsumer progress, Consumer<T> done, Consumer<String> failed, Runnable stopped) {}

    /** Begins; what ran before is forgotten. */
    public <T> void start(Work<T> work, News<T> news) {
        forget();
        Run<T> run = new Run<>(work, news);
        present = run;
        Thread thread = new Thread(run::run, name);
        thread.setDaemon(true);
        last = thread;
        thread.start();
    }

    /** Stops soon; told once it has. */
    public void stop() {
        Run<?> run = present;
        if (run != null) {
            run.unwanted = true;
        }
    }

    /** Stops soon; no news comes after this. */
    public void forget() {
        stop();
        present = null;
    }

    /** Forgets, and waits until the work has really ended and let its files go. */
    @Override
    public void close() {
        forget();
        Thread ending = last;
        if (ending != null) {
            join(ending);
        }
    }

    /** Waits for a thread whose work was stopped, but not for ever. */
    static void join(Thread ending) {
        try {
            ending.join(LONGEST_END_MILLISECONDS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Whether there is work of which news will come. */
    public boolean isRunning() {
        return present != null;
    }

    private final class Run<T> {
        private final Work<T> work;
        private final News<T> news;
        private volatile boolean unwanted;

        Run(Work<T> work, News<T> news) {
            this.work = work;
            this.news = news;
        }

        void run() {
            Runnable end = end();
            tell(() -> {
                present = null;
                end.run();
            });
        }

        private Runnable end() {
            try {
                T made = work.run(this::watch);
                return () -> news.done().accept(made);
            } catch (CancellationException stopped) {
                return news.stopped();
            } catch (Throwable failed) {
                return () -> news.failed().accept(DeskWords.fault(failed, name));
            }
        }

        private void watch(double done) {
            if (unwanted) {
                throw new CancellationException("stopped");
            }
            tell(() -> news.progress().accept(done));
        }

        private void tell(Runnable told) {
            window.execute(() -> {
                if (present == this) {
                    told.run();
                }
            });
        }
    }
}
