package greyground.raster;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/**
 * Makes bands of rows on several threads and hands them on in order, top to bottom.
 *
 * <p>A maker must be a pure function of the rows it is asked for; then neither the band height nor the number of threads
 * can change what the taker receives. At most two bands per thread are in flight, which bounds memory.
 */
public final class Bands {
    /** One being made, one waiting to be taken. */
    private static final int BANDS_PER_THREAD = 2;

    private Bands() {}

    /**
     * Makes one band.
     *
     * @param <T> what a band becomes
     */
    @FunctionalInterface
    public interface Maker<T> {
        /** Makes rows {@code firstRow} to {@code firstRow + rowCount - 1}. Called by one thread at a time per maker. */
        T make(int firstRow, int rowCount) throws IOException;
    }

    /**
     * Receives finished bands in order, on the calling thread.
     *
     * @param <T> what a band became
     */
    @FunctionalInterface
    public interface Taker<T> {
        /** Takes the band that starts at {@code firstRow}. */
        void take(int firstRow, int rowCount, T band) throws IOException;
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
            throws IOException {
        inOrder(rows, rowsPerBand, threads, BANDS_PER_THREAD * threads, makers, taker, progress);
    }

    /** The same with at most {@code mostInFlight} bands asked for and not yet taken. */
    static <T> void inOrder(
            int rows,
            int rowsPerBand,
            int threads,
            int mostInFlight,
            Supplier<? extends Maker<T>> makers,
            Taker<T> taker,
            Progress progress)
            throws IOException {
        ThreadLocal<Maker<T>> own = ThreadLocal.withInitial(makers);
        ArrayDeque<Future<T>> inFlight = new ArrayDeque<>();
        try (Crew workers = new Crew("band", threads)) {
            int asked = 0;
            int taken = 0;
            while (taken < rows) {
                while (asked < rows && inFlight.size() < mostInFlight) {
                    int first = asked;
                    int count = Math.min(rowsPerBand, rows - first);
                    inFlight.add(workers.submit(() -> own.get().make(first, count)));
                    asked += count;
                }
                int count = Math.min(rowsPerBand, rows - taken);
                taker.take(taken, count, workers.result(inFlight.remove()));
                taken += count;
                progress.done((double) taken / rows);
            }
        }
    }
}
