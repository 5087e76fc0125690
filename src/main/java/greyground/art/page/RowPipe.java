package greyground.art.page;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Lets rows be pulled from a decoder that pushes them: it runs on a thread of its own, a few batches ahead. The pull is also
 * the watchdog: a decoder that takes longer than its time limit over the next batch is aborted and refused.
 */
public final class RowPipe implements SampleRows {
    /** A decoder that pushes all its rows, top to bottom. */
    public interface Source {
        /** Decodes everything; returns when the last row is out, or throws. */
        void run(RowSink sink) throws IOException;

        /** Asks a running decoder to stop, from another thread. */
        void abort();
    }

    /** Seconds any decoder may take before its first rows come, and more for each million pixels (assumed, ample). */
    private static final long SECONDS = 9;
    /** A decoder that was told to stop looks up at its next row (assumed); one that never does is let go. */
    private static final long LONGEST_END_MILLISECONDS = 5000;

    private static final int BATCH_BYTES = 1 << 18;
    private static final int BATCHES = 8;

    @SuppressWarnings("ArrayRecordComponent") // Never compared.
    private record Batch(byte[] bytes, int count) {}

    private final Source source;
    private final int rowBytes;
    private final long limitSeconds;
    private final BlockingQueue<Batch> full = new ArrayBlockingQueue<>(BATCHES);
    private final Thread worker;
    /** Ends the queue. Made beforehand: when memory has run out none can be made. */
    private final Batch last = new Batch(new byte[0], 0);

    private volatile @Nullable Throwable failed;
    private volatile boolean stopped;
    // The puller's own: the batch at hand.
    private Batch current = new Batch(new byte[0], 0);
    private int used;
    // The pusher's own: the batch being filled.
    private byte[] filling = new byte[0];
    private int filled;

    /** How long a decoder of so many pixels may take. */
    public static long limitSeconds(long pixels) {
        return SECONDS + pixels / 1_000_000;
    }

    /** {@code limitSeconds} is how long the next rows may be waited for. */
    public RowPipe(Source source, int rowBytes, long limitSeconds) {
        this.rowBytes = rowBytes;
        this.source = source;
        this.limitSeconds = limitSeconds;
        this.worker = new Thread(this::run, "art");
        worker.setDaemon(true);
        worker.start();
    }

    private void run() {
        Throwable failure = null;
        try {
            source.run(this::push);
            flush();
        } catch (IOException | RuntimeException | Error thrown) {
            failure = thrown;
        }
        failed = failure;
        try {
            put(last);
        } catch (IOException | OutOfMemoryError nobodyListens) {
            // The puller went away first, or hears of it when its patience ends; the machine must not print a word of
            // its own.
            return;
        }
    }

    private void push(byte[] bytes, int offset, int count) throws IOException {
        if (filled + count > filling.length) {
            flush();
            filling = new byte[Math.max(BATCH_BYTES, count)];
        }
        System.arraycopy(bytes, offset, filling, filled, count);
        filled += count;
    }

    private void flush() throws IOException {
        if (filled > 0) {
            put(new Batch(filling, filled));
            filling = new byte[0];
            filled = 0;
        }
    }

    private void put(Batch batch) throws IOException {
        try {
            while (!full.offer(batch, 200, TimeUnit.MILLISECONDS)) {
                if (stopped) {
                    throw new InterruptedIOException("stopped");
                }
            }
        } catch (InterruptedException interrupted) {
            throw new InterruptedIOException("stopped");
        }
    }

    @Override
    public void read(int firstRow, int rowCount, byte[] into) throws IOException {
        int count = Math.multiplyExact(rowCount, rowBytes);
        int done = 0;
        while (done < count) {
            if (used == current.count) {
                current = await();
                used = 0;
            }
            int some = Math.min(count - done, current.count - used);
            System.arraycopy(current.bytes, used, into, done, some);
            used += some;
            done += some;
        }
    }

    private Batch await() throws IOException {
        Batch batch;
        try {
            batch = full.poll();
            if (batch == null) {
                Patience patience = new Patience(limitSeconds);
                do {
                    batch = full.poll(Patience.SLICE_MILLISECONDS, TimeUnit.MILLISECONDS);
                } while (batch == null && !patience.over());
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("stopped");
        }
        if (batch == null) {
            throw new Unreadable("decoding takes longer than " + limitSeconds
                    + " s, which no sound file of its size needs: save it anew");
        }
        if (batch.count > 0) {
            return batch;
        }
        Throwable failure = failed;
        if (failure instanceof IOException io) {
            throw io;
        }
        if (failure instanceof RuntimeException unchecked) {
            throw unchecked;
        }
        if (failure instanceof Error error) {
            throw error;
        }
        throw new Unreadable("the picture data end early");
    }

    /** Stops the decoder and waits until it has given back what it reads from. */
    @Override
    public void close() {
        stopped = true;
        if (worker.isAlive()) {
            source.abort();
            try {
                worker.join(LONGEST_END_MILLISECONDS);
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
