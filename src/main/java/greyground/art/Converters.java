package greyground.art;

import greyground.raster.Crew;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;

/** Converts bands on other threads while the calling thread reads on; a fixed number of work places bounds memory. */
final class Converters implements AutoCloseable {
    private final Crew workers;
    private final int places;
    private final BlockingQueue<Object> free;
    private final AtomicReference<Throwable> failure = new AtomicReference<>();
    // The calling thread's own.
    private int made;

    Converters(int threads) {
        this.places = threads + 2;
        this.free = new ArrayBlockingQueue<>(places);
        this.workers = new Crew("art", threads);
    }

    /** A free work place, made anew while there are few. All places must be of one type. */
    @SuppressWarnings("unchecked") // What goes in by convert() came out of here.
    <T> T take(Supplier<T> maker) {
        check();
        Object place = free.poll();
        if (place == null && made < places) {
            made++;
            return maker.get();
        }
        return (T) (place == null ? freed() : place);
    }

    /** The next place that is freed; refuses to wait for one that never will be. */
    private Object freed() {
        try {
            Object place = free.poll(Crew.PATIENCE_MILLISECONDS, TimeUnit.MILLISECONDS);
            while (place == null) {
                check();
                workers.checkNothingLost();
                place = free.poll(Crew.PATIENCE_MILLISECONDS, TimeUnit.MILLISECONDS);
            }
            return place;
        } catch (InterruptedException interrupted) {
            throw Crew.stopped();
        }
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
    void join() {
        for (int i = 0; i < made; i++) {
            freed();
        }
        made = 0;
        check();
    }

    private void check() {
        Crew.throwUnchecked(failure.get());
    }

    @Override
    public void close() {
        workers.close();
    }
}
