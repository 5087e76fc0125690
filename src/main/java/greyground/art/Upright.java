package greyground.art;

import greyground.art.page.Page;
import greyground.raster.PlaneStore;

/**
 * Puts bands of stored rows into a plane the right way up, by TIFF 6.0's eight orientations. Each thread may put its own
 * bands at once.
 */
final class Upright {
    private final int orientation;
    private final int width;
    private final int height;
    private final PlaneStore store;
    private final ThreadLocal<short[]> spare = ThreadLocal.withInitial(() -> new short[0]);

    Upright(Page page, PlaneStore store) {
        this.orientation = page.orientation();
        this.width = page.samples().width();
        this.height = page.samples().height();
        this.store = store;
    }

    /** Puts {@code rowCount} stored rows from {@code firstRow} down; {@code light} may be used as scratch. */
    void put(int firstRow, int rowCount, short[] light) {
        switch (orientation) {
            case 2 -> {
                mirrorRows(rowCount, light);
                store.putRows(firstRow, rowCount, light);
            }
            case 3 -> {
                // Half a turn reverses the whole band.
                reverse(light, 0, rowCount * width);
                store.putRows(height - firstRow - rowCount, rowCount, light);
            }
            case 4 -> {
                reverse(light, 0, rowCount * width);
                mirrorRows(rowCount, light);
                store.putRows(height - firstRow - rowCount, rowCount, light);
            }
            case 5, 6, 7, 8 -> putColumns(firstRow, rowCount, light);
            default -> store.putRows(firstRow, rowCount, light);
        }
    }

    private void mirrorRows(int rowCount, short[] light) {
        for (int r = 0; r < rowCount; r++) {
            reverse(light, r * width, (r + 1) * width);
        }
    }

    private static void reverse(short[] light, int from, int to) {
        for (int a = from, b = to - 1; a < b; a++, b--) {
            short kept = light[a];
            light[a] = light[b];
            light[b] = kept;
        }
    }

    /** Stored column x becomes row x, or for 7 and 8 the row as far from the end; for 6 and 7 it runs backward. */
    private void putColumns(int firstRow, int rowCount, short[] light) {
        short[] run = spare.get();
        if (run.length < rowCount) {
            run = new short[rowCount];
            spare.set(run);
        }
        boolean backward = orientation == 6 || orientation == 7;
        boolean upward = orientation == 7 || orientation == 8;
        int at = backward ? height - firstRow - rowCount : firstRow;
        for (int x = 0; x < width; x++) {
            for (int r = 0; r < rowCount; r++) {
                run[backward ? rowCount - 1 - r : r] = light[r * width + x];
            }
            store.putRun(at, upward ? width - 1 - x : x, rowCount, run, 0);
        }
    }
}
