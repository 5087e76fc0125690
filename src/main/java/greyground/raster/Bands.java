package greyground.raster;

import java.util.ArrayDeque;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * Makes bands of rows on several threads and hands them on in order, top to bottom.
 *
 * <p>A maker must be a pure function of the rows it is asked for; then neither the band height nor the number of threads
 * can change what the taker receives. At most two bands per thread are in flight, which bounds memory.
 */
public final class Bands {
    private Bands() {}

    /**
     * Makes one band.
     *
     * @param <T> what a band becomes
     */
    @FunctionalInterface
    public interface Maker<T> {
        /** Makes rows {@code firstRow} to {@code firstRow + rowCount - 1}. Called by one thread at a time per maker. */
        T make(int firstRow, int rowCount) throws Exception;
    }

    /**
     * Receives finished bands in order, on the calling thread.
     *
     * @param <T> what a band became
     */
    @FunctionalInterface
    public interface Taker<T> {
        /** Takes the band that starts at {@code firstRow}. */
        void take(int firstRow, int rowCount, T band) throws Exception;
    }

    /**
     * Runs the work to its end, or to the first failure.
     *
     * @param rows rows in all, at least 1
     * @param rowsPerBand at least 1; the last band may be shorter
     * @param threads at least 1
     * @param makers gives each thread its own maker, which may own buffers
     * @param <T> what a band becomes
     */
    public static <T> void inOrder(
            int rows,
            int rowsPerBand,
            int threads,
            Supplier<? extends Maker<T>> makers,
            Taker<T> taker,
            Progress progress)
            throws Exception {
        ThreadLocal<Maker<T>> own = ThreadLocal.withInitial(makers);
        ArrayDeque<Future<T>> inFlight = new ArrayDeque<>();
        try (Crew workers = new Crew("band", threads)) {
            int asked = 0;
            int taken = 0;
            while (taken < rows) {
                while (asked < rows && inFlight.size() < 2 * threads) {
                    int first = asked;
                    int count = Math.min(rowsPerBand, rows - first);
                    inFlight.add(workers.submit(() -> own.get().make(first, count)));
                    asked += count;
                }
                int count = Math.min(rowsPerBand, rows - taken);
                taker.take(taken, count, await(inFlight.remove(), workers));
                taken += count;
                progress.done((double) taken / rows);
            }
        }
    }

    private static <T> T await(Future<T> band, Crew workers) throws Exception {
        try {
            while (true) {
                try {
                    return band.get(Crew.PATIENCE_MILLISECONDS, TimeUnit.MILLISECONDS);
                } catch (TimeoutException notYet) {
                    if (!band.isDone()) {
                        workers.checkNothingLost();
                    }
                }
            }
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof Exception cause) {
                throw cause;
            }
            if (failed.getCause() instanceof Error error) {
                throw error;
            }
            throw failed;
        }
    }
}
