package greyground.art.printed;

import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;

/**
 * A scanned print without its dots: every pixel becomes the mean of the dot cell that lies around it, a square one period wide that stands as the
 * screen does.
 *
 * <p>Such a mean holds nothing of the screen's waves nor of their multiples, for along each of the screen's two ways it is sin(pi f p)/(pi f p), f
 * the wave and p the period; so a part of what it takes off can be given back without a dot (one step of Van Cittert 1931, from memory). Light is averaged, not lightness: dots and paper mix in the eye as light does (Murray and
 * Davies 1936). Beyond the art's edge the art is mirrored.
 *
 * @param art as it was scanned; whoever opened it closes it
 * @param screens to take out, 1 to 4
 */
public record CellMeans(GreyPlane art, List<PrintedScreen> screens) {
    /** A scan of fewer pixels to a dot shows no dots but their beats. */
    public static final double LEAST_PERIOD_PIXELS = 3;

    private static final int ROWS = 128;

    /**
     * Part of what the mean took off that is given back: steps become a tenth narrower (150 instead of 165 um at 54 lines/cm) and ring by less than
     * 2 %, measured on Ghostscript's screens.
     */
    private static final float GIVEN_BACK = 0.38f;

    /** Parts of a pixel, each way, by which a cell's rim is measured: a part in a thousand of a cell of three pixels. */
    private static final int PARTS = 64;

    public CellMeans {
        screens = List.copyOf(screens);
        Refusal.checkRange("screens to take out", screens.size(), 1, 4, "", "a print in colours has four");
        for (PrintedScreen screen : screens) {
            if (screen.periodPixels() < LEAST_PERIOD_PIXELS) {
                throw Refusal.use("the print's dots are " + Refusal.plain(screen.periodPixels())
                        + " pixels apart in this scan; at least " + Refusal.plain(LEAST_PERIOD_PIXELS)
                        + " are needed to take them out: scan it finer");
            }
        }
    }

    /**
     * Makes the rows and hands them on from the top, row after row in one array.
     *
     * @param threads at least 1
     * @param taker of the bands, on the calling thread
     */
    public void rows(int threads, Bands.Taker<short[]> taker, Progress progress) throws IOException {
        float[][] means =
                screens.stream().map(CellMeans::cell).reduce(CellMeans::spread).orElseThrow();
        float[][] weights = givenBack(means);
        Bands.inOrder(art.height(), ROWS, threads, () -> new Worker(weights), taker, progress);
    }

    /** The mean, and a part of what it took off: {@code m + a (m - m m)}, m a mean after a mean. What it holds nothing of it gains nothing of. */
    private static float[][] givenBack(float[][] mean) {
        float[][] twice = spread(mean, mean);
        int reach = (twice.length - mean.length) / 2;
        float[][] weights = new float[twice.length][twice.length];
        for (int y = 0; y < weights.length; y++) {
            for (int x = 0; x < weights.length; x++) {
                weights[y][x] = -GIVEN_BACK * twice[y][x];
            }
        }
        for (int y = 0; y < mean.length; y++) {
            for (int x = 0; x < mean.length; x++) {
                weights[y + reach][x + reach] += (1 + GIVEN_BACK) * mean[y][x];
            }
        }
        return weights;
    }

    /** Shares of the pixels around one in the cell that has it in the middle; they sum to 1. */
    static float[][] cell(PrintedScreen screen) {
        double period = screen.periodPixels();
        double cosine = screen.across() * period;
        double sine = screen.down() * period;
        int reach = (int) Math.ceil(period * (cosine + sine) / 2 - 0.5);
        int side = 2 * reach + 1;
        long[][] inside = new long[side][side];
        long all = 0;
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                for (int part = 0; part < PARTS * PARTS; part++) {
                    double right = x - reach + (part % PARTS + 0.5) / PARTS - 0.5;
                    double below = y - reach + (Math.floorDiv(part, PARTS) + 0.5) / PARTS - 0.5;
                    if (Math.abs(right * cosine + below * sine) <= period / 2
                            && Math.abs(below * cosine - right * sine) <= period / 2) {
                        inside[y][x]++;
                    }
                }
                all += inside[y][x];
            }
        }
        float[][] weights = new float[side][side];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                weights[y][x] = (float) ((double) inside[y][x] / all);
            }
        }
        return weights;
    }

    /** One mean after the other is one mean over a wider place. */
    private static float[][] spread(float[][] first, float[][] then) {
        int side = first.length + then.length - 1;
        float[][] both = new float[side][side];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                double sum = 0;
                for (int v = Math.max(0, y - then.length + 1); v <= Math.min(y, first.length - 1); v++) {
                    for (int u = Math.max(0, x - then.length + 1); u <= Math.min(x, first.length - 1); u++) {
                        sum += (double) first[v][u] * then[y - v][x - u];
                    }
                }
                both[y][x] = (float) sum;
            }
        }
        return both;
    }

    /** Owned by one thread. */
    private final class Worker implements Bands.Maker<short[]> {
        private final float[][] weights;
        private final int reach;
        private final short[] codes = new short[art.width()];
        private final float[] shifted = new float[art.width()];

        Worker(float[][] weights) {
            this.weights = weights;
            this.reach = weights.length / 2;
        }

        @Override
        public short[] make(int firstRow, int rowCount) {
            int width = art.width();
            float[][] rows = new float[rowCount + 2 * reach][];
            for (int y = 0; y < rows.length; y++) {
                rows[y] = mirrored(firstRow + y - reach);
            }
            short[] band = new short[Math.multiplyExact(rowCount, width)];
            float[] sums = new float[width];
            for (int y = 0; y < rowCount; y++) {
                Arrays.fill(sums, 0);
                for (int down = 0; down < weights.length; down++) {
                    for (int across = 0; across < weights.length; across++) {
                        add(weights[down][across], rows[y + down], across, sums);
                    }
                }
                for (int x = 0; x < width; x++) {
                    band[y * width + x] = (short) Math.max(0, Math.min(GreyPlane.WHITE, (int) Math.rint(sums[x])));
                }
            }
            return band;
        }

        private void add(float weight, float[] row, int from, float[] sums) {
            if (weight == 0) {
                return;
            }
            // Copied first: a loop over two arrays at one place is done eight places at a time.
            System.arraycopy(row, from, shifted, 0, shifted.length);
            for (int x = 0; x < sums.length; x++) {
                sums[x] += weight * shifted[x];
            }
        }

        private float[] mirrored(int y) {
            art.readRow(inside(y, art.height()), codes);
            float[] row = new float[art.width() + 2 * reach];
            for (int x = 0; x < row.length; x++) {
                row[x] = codes[inside(x - reach, art.width())] & 0xFFFF;
            }
            return row;
        }

        private static int inside(int at, int size) {
            int turned = Math.floorMod(at, 2 * size);
            return turned < size ? turned : 2 * size - 1 - turned;
        }
    }
}
