package greyground.raster;

import java.nio.file.Path;

/**
 * Turns a plane clockwise: by quarters exactly, then by a small angle to straighten it.
 *
 * <p>Straightening keeps the plane's size; each pixel is interpolated from 4 x 4 neighbours by cubic convolution (Keys 1981,
 * a = -1/2), and what comes in from outside is the nearest pixel of the edge.
 */
public final class TurnedPlane {
    private static final int ROWS_PER_BAND = 64;

    private TurnedPlane() {}

    /**
     * Returns the turned plane, or {@code plane} itself where nothing is to do. The result is closed by the caller; the
     * original is closed once it is no longer needed.
     *
     * @param quarterTurns clockwise, 0 to 3
     * @param degrees clockwise, -45 to 45
     */
    public static GreyPlane of(
            GreyPlane plane, int quarterTurns, double degrees, int threads, long heapBudgetBytes, Path spillFolder)
            throws Exception {
        GreyPlane turned = plane;
        if (quarterTurns % 2 == 1) {
            turned = replaced(plane, lying(plane, quarterTurns == 1, threads, heapBudgetBytes, spillFolder));
        } else if (quarterTurns == 2) {
            turned = replaced(plane, upsideDown(plane, threads, heapBudgetBytes, spillFolder));
        }
        if (degrees == 0) {
            return turned;
        }
        return replaced(turned, straightened(turned, degrees, threads, heapBudgetBytes, spillFolder));
    }

    private static GreyPlane replaced(GreyPlane old, GreyPlane made) {
        old.close();
        return made;
    }

    private static GreyPlane upsideDown(GreyPlane plane, int threads, long heapBudgetBytes, Path spillFolder)
            throws Exception {
        int width = plane.width();
        int height = plane.height();
        return made(width, height, threads, heapBudgetBytes, spillFolder, () -> {
            short[] row = new short[width];
            return (y, into, at) -> {
                plane.readRow(height - 1 - y, row);
                for (int x = 0; x < width; x++) {
                    into[at + x] = row[width - 1 - x];
                }
            };
        });
    }

    /** Writes blocks of columns, so that each row of the original is read once. */
    private static GreyPlane lying(
            GreyPlane plane, boolean clockwise, int threads, long heapBudgetBytes, Path spillFolder) throws Exception {
        int width = plane.width();
        int height = plane.height();
        try (PlaneStore store =
                PlaneStore.open(/* width= */ height, /* height= */ width, heapBudgetBytes, spillFolder)) {
            Bands.<Integer>inOrder(
                    height,
                    ROWS_PER_BAND,
                    threads,
                    () -> {
                        short[] row = new short[width];
                        short[] block = new short[width * ROWS_PER_BAND];
                        return (first, count) -> {
                            for (int r = 0; r < count; r++) {
                                plane.readRow(first + r, row);
                                int place = clockwise ? count - 1 - r : r;
                                for (int x = 0; x < width; x++) {
                                    block[x * count + place] = row[x];
                                }
                            }
                            int left = clockwise ? height - first - count : first;
                            for (int x = 0; x < width; x++) {
                                store.putRun(left, clockwise ? x : width - 1 - x, count, block, x * count);
                            }
                            return count;
                        };
                    },
                    (first, count, done) -> {},
                    Progress.NONE);
            return store.finish();
        }
    }

    private static GreyPlane straightened(
            GreyPlane plane, double degrees, int threads, long heapBudgetBytes, Path spillFolder) throws Exception {
        int width = plane.width();
        int height = plane.height();
        double sine = StrictMath.sin(StrictMath.toRadians(degrees));
        double cosine = StrictMath.cos(StrictMath.toRadians(degrees));
        double middleX = (width - 1) / 2.0;
        double middleY = (height - 1) / 2.0;
        return made(width, height, threads, heapBudgetBytes, spillFolder, () -> {
            RowCache rows = new RowCache(plane);
            return (y, into, at) -> {
                for (int x = 0; x < width; x++) {
                    double fromX = middleX + cosine * (x - middleX) + sine * (y - middleY);
                    double fromY = middleY - sine * (x - middleX) + cosine * (y - middleY);
                    into[at + x] = cubic(rows, fromX, fromY);
                }
            };
        });
    }

    private static short cubic(RowCache rows, double x, double y) {
        int left = (int) Math.floor(x);
        int top = (int) Math.floor(y);
        double sum = 0;
        for (int j = -1; j <= 2; j++) {
            short[] row = rows.row(Math.max(0, Math.min(rows.plane.height() - 1, top + j)));
            double line = 0;
            for (int i = -1; i <= 2; i++) {
                int column = Math.max(0, Math.min(rows.plane.width() - 1, left + i));
                line += keys(x - left - i) * (row[column] & 0xFFFF);
            }
            sum += keys(y - top - j) * line;
        }
        return (short) Math.max(0, Math.min(GreyPlane.WHITE, Math.round(sum)));
    }

    /** Cubic convolution kernel with a = -1/2 (Keys 1981, eq. 15, from memory). */
    private static double keys(double distance) {
        double d = Math.abs(distance);
        if (d < 1) {
            return (1.5 * d - 2.5) * d * d + 1;
        }
        return d < 2 ? ((-0.5 * d + 2.5) * d - 4) * d + 2 : 0;
    }

    /** Fills one row of the turned plane. */
    @FunctionalInterface
    private interface RowFiller {
        void fill(int y, short[] into, int at);
    }

    private static GreyPlane made(
            int width,
            int height,
            int threads,
            long heapBudgetBytes,
            Path spillFolder,
            java.util.function.Supplier<RowFiller> fillers)
            throws Exception {
        try (PlaneStore store = PlaneStore.open(width, height, heapBudgetBytes, spillFolder)) {
            Bands.<Integer>inOrder(
                    height,
                    ROWS_PER_BAND,
                    threads,
                    () -> {
                        RowFiller filler = fillers.get();
                        short[] band = new short[width * ROWS_PER_BAND];
                        return (first, count) -> {
                            for (int r = 0; r < count; r++) {
                                filler.fill(first + r, band, r * width);
                            }
                            store.putRows(first, count, band);
                            return count;
                        };
                    },
                    (first, count, done) -> {},
                    Progress.NONE);
            return store.finish();
        }
    }

    /** The rows last read, by one thread: a slanted row of output touches many rows of the plane, the next almost the same. */
    private static final class RowCache {
        private static final long BYTES = 64L << 20;

        private final GreyPlane plane;
        private final int slots;
        private final short[][] rows;
        private final int[] held;

        RowCache(GreyPlane plane) {
            this.plane = plane;
            this.slots = (int) Math.max(8, Math.min(plane.height(), BYTES / 2 / plane.width()));
            this.rows = new short[slots][];
            this.held = new int[slots];
        }

        short[] row(int y) {
            int slot = y % slots;
            if (rows[slot] == null) {
                rows[slot] = new short[plane.width()];
                held[slot] = -1;
            }
            if (held[slot] != y) {
                plane.readRow(y, rows[slot]);
                held[slot] = y;
            }
            return rows[slot];
        }
    }
}
