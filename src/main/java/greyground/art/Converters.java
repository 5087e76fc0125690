package greyground.art;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;

/** Converts bands on other threads while the calling thread reads on; a fixed number of work places bounds memory. */
final class Converters implements AutoCloseable {
    private final ExecutorService workers;
    private final int places;
    private final BlockingQueue<Object> free;
    private final AtomicReference<Throwable> failure = new AtomicReference<>();
    // The calling thread's own.
    private int made;

    Converters(int threads) {
        this.places = threads + 2;
        this.free = new ArrayBlockingQueue<>(places);
        this.workers = Executors.newFixedThreadPool(threads, work -> {
            Thread thread = new Thread(work, "art");
            thread.setDaemon(true);
            return thread;
        });
    }

    /** A free work place, made anew while there are few. All places must be of one type. */
    @SuppressWarnings("unchecked") // What goes in by convert() came out of here.
    <T> T take(Supplier<T> maker) throws Exception {
        check();
        Object place = free.poll();
        if (place == null && made < places) {
            made++;
            return maker.get();
        }
        return (T) (place == null ? free.take() : place);
    }

    /** Runs {@code work} on another thread and frees {@code place} after it. */
    void convert(Object place, Runnable work) {
        workers.execute(() -> {
            try {
                work.run();
            } catch (RuntimeException | Error failed) {
                failure.compareAndSet(null, failed);
            } finally {
                free.add(place);
            }
        });
    }

    /** Waits for all work. */
    void join() throws Exception {
        for (int i = 0; i < made; i++) {
            free.take();
        }
        made = 0;
        check();
    }

    private void check() {
        Throwable failed = failure.get();
        if (failed instanceof RuntimeException unchecked) {
            throw unchecked;
        }
        if (failed instanceof Error error) {
            throw error;
        }
    }

    @Override
    public void close() {
        workers.shutdownNow();
    }
}
