package greyground.desk.model;

import java.io.IOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/**
 * The one thread that computes while the window stays free. Each kind of work has one place in the queue: what is asked later
 * takes the place of what was asked before. Long work stops for what is more pressing and begins again afterwards; short work ends
 * first, so that a moving hand never starves the loupe.
 */
public final class BenchWorker implements AutoCloseable {
    private final Map<Kind, Work> waiting = new EnumMap<>(Kind.class);
    private final Consumer<Throwable> failures;
    private final Thread thread = new Thread(this::work, "bench");
    private @Nullable Kind running;
    private boolean stopped;
    private boolean again;
    private boolean closed;
    private @Nullable Work last;

    /** Kinds of work, most pressing first. */
    enum Kind {
        OPEN(true),
        PLATE(true),
        TONE(false),
        PICTURE(false),
        AGAINST(false),
        LOST(false),
        LAY_OUT(true),
        MEASURE(true),
        SHEET(false),
        LOUPE(false),
        BITES(true),
        COUNTS(false),
        THUMBNAILS(true),
        RECENT(false),
        FINE_PICTURE(true),
        FINE_SHEET(true),
        WORDS(true),
        BITE_LOG(true),
        CHECK(true);

        private final boolean takesLong;

        Kind(boolean takesLong) {
            this.takesLong = takesLong;
        }
    }

    /** Work that tells how far it is, and may be stopped there. */
    @FunctionalInterface
    interface Work {
        /** Tells {@code watch} how far it is, 0 to 1, which throws {@link CancellationException} once it is no longer wanted. */
        void run(DoubleConsumer watch) throws IOException;
    }

    /**
     * Starts the thread.
     *
     * @param failures hears of what went wrong, on the worker's thread
     */
    BenchWorker(Consumer<Throwable> failures) {
        this.failures = failures;
        thread.setDaemon(true);
        thread.start();
    }

    /** Asks for work; what waits of the same kind is forgotten. */
    synchronized void ask(Kind kind, Work work) {
        if (closed) {
            return;
        }
        waiting.put(kind, work);
        Kind present = running;
        if (present != null && kind.compareTo(present) <= 0 && (present.takesLong || kind == Kind.PLATE)) {
            // A new plate makes all else pointless; what was dropped or asked anew is not wanted again because of a
            // third.
            again = (again || !stopped) && kind != Kind.PLATE && kind != present;
            stopped = true;
        }
        notifyAll();
    }

    /** Forgets work that waits, and stops it if it runs. */
    synchronized void drop(Kind kind) {
        waiting.remove(kind);
        if (kind == running) {
            stopped = true;
            again = false;
        }
    }

    /** Whether work of a kind is under way. */
    synchronized boolean isDoing(Kind kind) {
        return kind == running;
    }

    /** Whether anything runs or waits. */
    synchronized boolean isBusy() {
        return running != null || !waiting.isEmpty();
    }

    private void work() {
        while (true) {
            Work work = next();
            if (work == null) {
                return;
            }
            try {
                work.run(this::watch);
            } catch (CancellationException unwanted) {
                beginAgain(work);
            } catch (Throwable failed) {
                tell(failed);
            } finally {
                synchronized (this) {
                    running = null;
                    notifyAll();
                }
            }
        }
    }

    /** Whatever fails, in a work or in who hears of it, the thread works on. */
    private void tell(Throwable failed) {
        try {
            failures.accept(failed);
        } catch (Throwable unheard) {
            return;
        }
    }

    private synchronized @Nullable Work next() {
        try {
            while (waiting.isEmpty() && !closed) {
                wait();
            }
        } catch (InterruptedException ended) {
            return null;
        }
        if (waiting.isEmpty()) {
            Work closing = last;
            last = null;
            return closing;
        }
        Kind kind = waiting.keySet().iterator().next();
        running = kind;
        stopped = false;
        again = false;
        return waiting.remove(kind);
    }

    private synchronized void beginAgain(Work work) {
        Kind present = running;
        if (again && present != null) {
            waiting.putIfAbsent(present, work);
        }
    }

    private synchronized void watch(double fraction) {
        if (stopped) {
            throw new CancellationException("no longer wanted");
        }
    }

    /** Drops all work; {@code closing} is the last the thread does, and is waited for. */
    void close(Work closing) {
        synchronized (this) {
            waiting.clear();
            stopped = true;
            last = closing;
            closed = true;
            notifyAll();
        }
        LongWork.join(thread);
    }

    @Override
    public void close() {
        close(watch -> {});
    }
}
