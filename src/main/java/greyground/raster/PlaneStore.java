package greyground.raster;

import greyground.quantity.Refusal;
import java.nio.file.Path;

/**
 * Takes decoded rows and becomes a {@link GreyPlane}: in memory where the plane fits the budget, else in a spill file.
 *
 * <p>Many threads may put rows at once as long as no two put the same pixel. {@link #finish()} comes after all of them, once.
 * Closing an unfinished store gives its memory and file back; closing a finished one does nothing.
 */
public final class PlaneStore implements AutoCloseable {
    private final Filled plane;
    private boolean finished;

    private PlaneStore(Filled plane) {
        this.plane = plane;
    }

    /** A plane while its pixels are put. */
    interface Filled extends GreyPlane {
        /** Puts {@code count} samples into row {@code y} from column {@code x} on. */
        void putRun(int x, int y, int count, short[] samples, int from);
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
        return new PlaneStore(
                2L * width * height <= heapBudgetBytes
                        ? new HeapPlane(width, new short[height][])
                        : new SpillPlane(spillFolder, width, height));
    }

    /** Puts {@code rowCount} whole rows, one after the other in {@code samples}, from {@code firstRow} down. */
    public void putRows(int firstRow, int rowCount, short[] samples) {
        for (int r = 0; r < rowCount; r++) {
            plane.putRun(0, firstRow + r, plane.width(), samples, r * plane.width());
        }
    }

    /** Puts {@code count} samples into row {@code y} from column {@code x} on, for art that lies on its side. */
    public void putRun(int x, int y, int count, short[] samples, int from) {
        plane.putRun(x, y, count, samples, from);
    }

    /** The plane, once every row has been put; whoever takes it closes it. */
    public GreyPlane finish() {
        finished = true;
        return plane;
    }

    @Override
    public void close() {
        if (!finished) {
            plane.close();
        }
    }
}
