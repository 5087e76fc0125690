package greyground.art.touch;

import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;

/**
 * A page as if its paper were one tone in one light. What the paper sends back is found where there is no drawing: a grey closing (Serra 1982, from
 * memory) passes over all that is darker and narrower than a square, and of what is left {@link PaperLight} is the light and the rest are stains. The art
 * is divided by both, since light on paper is a factor, and multiplied by the lightest of the light.
 *
 * <p>Drawing wider than the square can't be told from a stain, unless it is darker than half the paper: that is kept as drawing (assumed).
 */
public final class EvenPaper implements Touch {
    /** Cells to the square: as many as follow a stain's edge (found by trial). */
    private static final int CELLS = 12;

    /** Cells along the longer side, so that a narrow square costs no more memory. */
    private static final int MOST_CELLS = 1200;

    private static final double DARKEST_STAIN = 0.5;

    /** A darker paper has no tone that division could bring back. */
    private static final double LEAST_LIGHT = 0.001;

    /** L* by which a pale tone may go unsaid (assumed). */
    private static final double SEEN = 2;

    private final Cells cells;
    private final double[] factors;
    private final Found found;

    /**
     * What was evened out.
     *
     * @param lightRatio of the lightest place's light to the darkest's
     * @param stainedShare of the art taken for stains that are seen
     * @param deepestStain in L*, 0 where there is none
     */
    public record Found(double lightRatio, double stainedShare, double deepestStain) {}

    private EvenPaper(Cells cells, double[] factors, Found found) {
        this.cells = cells;
        this.factors = factors;
        this.found = found;
    }

    /**
     * Looks through a page.
     *
     * @param width of the square, as a share of the page's longer side; what is darker than paper and wider is taken for a stain
     * @param threads at least 1
     * @return empty where the width is 0
     */
    public static Optional<EvenPaper> of(GreyPlane page, double width, int threads, Progress progress)
            throws IOException {
        if (width == 0) {
            return Optional.empty();
        }
        int longer = Math.max(page.width(), page.height());
        double square = width * longer;
        int side = Math.max((int) (square / CELLS), (longer + MOST_CELLS - 1) / MOST_CELLS);
        Cells cells = new Cells(page.width(), page.height(), Math.max(1, side));
        double[] lightest = cells.gathered(
                page,
                (row, most, first) -> {
                    for (int x = 0; x < row.length; x++) {
                        // The mean of three, so that the paper's noise doesn't count for light.
                        int sum = (row[Math.max(0, x - 1)] & 0xFFFF)
                                + (row[x] & 0xFFFF)
                                + (row[Math.min(row.length - 1, x + 1)] & 0xFFFF);
                        int cell = first + x / cells.side();
                        most[cell] = Math.max(most[cell], Math.max(LEAST_LIGHT, sum / 3.0 / GreyPlane.WHITE));
                    }
                },
                threads,
                progress);
        int reach = Math.max(1, (int) Math.rint(square / cells.side() / 2));
        return Optional.of(of(cells, lightest, reach));
    }

    private static EvenPaper of(Cells cells, double[] lightest, int reach) {
        int across = cells.across();
        double[] light = PaperLight.of(closed(lightest, across, reach), across);
        double most = Arrays.stream(light).max().orElseThrow();
        // Of what the light leaves, not of the page: at the art's rim a closing of what falls off is too light.
        double[] stains = lightest;
        for (int i = 0; i < stains.length; i++) {
            stains[i] /= light[i];
        }
        stains = closed(stains, across, reach);
        double full = Lightness.ofLuminance(most);
        double deepest = 0;
        int seen = 0;
        for (int i = 0; i < stains.length; i++) {
            if (stains[i] < DARKEST_STAIN) {
                stains[i] = 1;
            }
            double depth = full - Lightness.ofLuminance(most * stains[i]);
            if (depth > SEEN) {
                seen++;
                deepest = Math.max(deepest, depth);
            }
        }
        double[] factors = new double[stains.length];
        for (int i = 0; i < factors.length; i++) {
            factors[i] = most / (light[i] * stains[i]);
        }
        return new EvenPaper(
                cells,
                factors,
                new Found(most / Arrays.stream(light).min().orElseThrow(), (double) seen / stains.length, deepest));
    }

    /** A grey closing by a square of {@code 2 reach + 1} cells: the lightest around each, then of these the darkest. */
    static double[] closed(double[] cells, int across, int reach) {
        return negative(lightest(negative(lightest(cells, across, reach)), across, reach));
    }

    private static double[] negative(double[] cells) {
        return Arrays.stream(cells).map(cell -> -cell).toArray();
    }

    private static double[] lightest(double[] cells, int across, int reach) {
        int down = cells.length / across;
        double[] rows = new double[cells.length];
        for (int y = 0; y < down; y++) {
            line(cells, y * across, 1, across, reach, rows);
        }
        double[] most = new double[cells.length];
        for (int x = 0; x < across; x++) {
            line(rows, x, across, down, reach, most);
        }
        return most;
    }

    private static void line(double[] of, int start, int step, int size, int reach, double[] into) {
        for (int i = 0; i < size; i++) {
            double most = of[start + i * step];
            for (int near = Math.max(0, i - reach); near <= Math.min(size - 1, i + reach); near++) {
                most = Math.max(most, of[start + near * step]);
            }
            into[start + i * step] = most;
        }
    }

    public Found found() {
        return found;
    }

    @Override
    public int reach() {
        return 0;
    }

    @Override
    public short[] touched(short[] window, int width, int firstRow, int count) {
        short[] touched = new short[count * width];
        for (int y = 0; y < count; y++) {
            Cells.Place row = cells.row(firstRow + y);
            for (int x = 0; x < width; x++) {
                double even = (window[y * width + x] & 0xFFFF) * cells.between(factors, cells.column(x), row);
                touched[y * width + x] = (short) (int) Math.min(GreyPlane.WHITE, even + 0.5);
            }
        }
        return touched;
    }
}
