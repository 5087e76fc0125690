package greyground.raster;

import greyground.quantity.Refusal;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Takes decoded rows and becomes a {@link GreyPlane}: in memory where the plane fits the budget, else in a spill file.
 *
 * <p>Many threads may put rows at once as long as no two put the same pixel. {@link #finish()} comes after all of them, once.
 * Closing an unfinished store gives its memory and file back; closing a finished one does nothing.
 */
public final class PlaneStore implements AutoCloseable {
    private final int width;
    private final int height;
    private final short @Nullable [][] rows;
    private final @Nullable SpillFile file;
    private final ThreadLocal<byte[]> packed = ThreadLocal.withInitial(() -> new byte[0]);
    private boolean finished;

    private PlaneStore(int width, int height, short @Nullable [][] rows, @Nullable SpillFile file) {
        this.width = width;
        this.height = height;
        this.rows = rows;
        this.file = file;
    }

    /** Bytes a plane of this size takes, wherever it lies. */
    public static long bytes(int width, int height) {
        return 2L * width * height;
    }

    /**
     * Opens a store for a plane of {@code width} by {@code height} pixels, each at least 1.
     *
     * @param heapBudgetBytes memory the plane may take; a larger plane spills
     * @param spillFolder where a spill file may be made
     * @throws Refusal if the spill file can't be made
     */
    public static PlaneStore open(int width, int height, long heapBudgetBytes, Path spillFolder) {
        Refusal.checkRange("art width", width, 1, Integer.MAX_VALUE / 2.0, "pixels", "use another file");
        Refusal.checkRange("art height", height, 1, Integer.MAX_VALUE, "pixels", "use another file");
        long bytes = bytes(width, height);
        return bytes <= heapBudgetBytes
                ? new PlaneStore(width, height, new short[height][], null)
                : new PlaneStore(width, height, null, new SpillFile(spillFolder, bytes));
    }

    /** Puts {@code rowCount} whole rows, one after the other in {@code samples}, from {@code firstRow} down. */
    public void putRows(int firstRow, int rowCount, short[] samples) {
        if (rows != null) {
            for (int r = 0; r < rowCount; r++) {
                short[] row = new short[width];
                System.arraycopy(samples, r * width, row, 0, width);
                rows[firstRow + r] = row;
            }
        } else if (file != null) {
            int count = Math.multiplyExact(rowCount, width);
            byte[] bytes = room(2 * count);
            SpillFile.pack(samples, 0, bytes, count);
            file.write(2L * width * firstRow, bytes, 2 * count);
        }
    }

    /** Puts {@code count} samples into row {@code y} from column {@code x} on, for art that lies on its side. */
    public void putRun(int x, int y, int count, short[] samples, int from) {
        if (rows != null) {
            System.arraycopy(samples, from, rowToFill(rows, y), x, count);
        } else if (file != null) {
            byte[] bytes = room(2 * count);
            SpillFile.pack(samples, from, bytes, count);
            file.write(2L * ((long) width * y + x), bytes, 2 * count);
        }
    }

    private short[] rowToFill(short[][] filled, int y) {
        synchronized (filled) {
            if (filled[y] == null) {
                filled[y] = new short[width];
            }
            return filled[y];
        }
    }

    private byte[] room(int bytes) {
        if (packed.get().length < bytes) {
            packed.set(new byte[bytes]);
        }
        return packed.get();
    }

    /** The plane, once every row has been put; whoever takes it closes it. */
    public GreyPlane finish() {
        finished = true;
        if (file != null) {
            return new SpillPlane(width, height, file);
        }
        if (rows == null) {
            throw new IllegalStateException("a store has rows or a file");
        }
        return new HeapPlane(width, rows);
    }

    @Override
    public void close() {
        if (!finished && file != null) {
            file.close();
        }
    }
}
