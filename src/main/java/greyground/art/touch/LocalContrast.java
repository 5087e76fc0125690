package greyground.art.touch;

import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;
import greyground.tone.ToneCurve;
import java.io.IOException;

/**
 * Contrast of what is small, raised or lowered without haloes at edges: L' = base + (1 + amount) (L - base), where the base follows edges and
 * smooths what lies between. The base is the guided filter of He K., Sun J. and Tang X. 2013, IEEE TPAMI 35(6), with the art as its own
 * guide, its two coefficients found on a plane made smaller and enlarged straight, as He and Sun 2015, arXiv 1505.00996 (both from memory).
 */
public final class LocalContrast implements Touch {
    /** Radius on the plate: what is smaller counts as small (assumed). */
    public static final double RADIUS_MICROMETRES = 2000;

    /** Variance in L*² below which differences are detail: those of about 4 L* and less (assumed). */
    static final double EPSILON = 16;

    /** Pixels of the smaller plane to the radius: as many as leave the haloes what they are (found by trial). */
    private static final int RADIUS_PIXELS = 16;

    private final double amount;
    private final float[] lightness;
    private final double white;
    private final double dark;
    private final Cells cells;
    private final double[] slopes;
    private final double[] offsets;

    private LocalContrast(double amount, ArtRange range, Cells cells, double[][] coefficients) {
        this.amount = amount;
        this.white = range.white();
        this.dark = Lightness.ofLuminance(range.relativeBlack());
        this.lightness = lightness(range);
        this.cells = cells;
        this.slopes = coefficients[0];
        this.offsets = coefficients[1];
    }

    private static float[] lightness(ArtRange range) {
        float[] lightness = new float[ToneCurve.CODES];
        for (int grey = 0; grey < lightness.length; grey++) {
            lightness[grey] = (float) Lightness.ofLuminance(grey / range.white() / GreyPlane.WHITE);
        }
        return lightness;
    }

    /**
     * Looks through a plane for its base.
     *
     * @param amount added to the contrast of what is small; below 0 takes away
     * @param pitchMicrometres of an art pixel on the plate
     * @param threads at least 1
     */
    public static LocalContrast of(
            GreyPlane plane, double amount, double pitchMicrometres, ArtRange range, int threads, Progress progress)
            throws IOException {
        double radius = Math.max(1, RADIUS_MICROMETRES / pitchMicrometres);
        int side = Math.max(1, (int) (radius / RADIUS_PIXELS));
        Cells cells = new Cells(plane.width(), plane.height(), side);
        float[] lightness = lightness(range);
        double[] small = cells.gathered(
                plane,
                (row, sums, first) -> {
                    for (int x = 0; x < row.length; x++) {
                        sums[first + x / side] += lightness[row[x] & 0xFFFF];
                    }
                },
                threads,
                progress);
        for (int i = 0; i < small.length; i++) {
            small[i] /= cells.pixels(i % cells.across(), i / cells.across());
        }
        int pixels = Math.max(1, (int) Math.rint(radius / side));
        return new LocalContrast(
                amount, range, cells, coefficients(small, cells.across(), cells.down(), pixels, EPSILON));
    }

    /** The guided filter's mean slope and offset for every pixel of a plane of L*; windows cut at the border count their own pixels. */
    static double[][] coefficients(double[] lightness, int across, int down, int radius, double epsilon) {
        double[] squares = new double[lightness.length];
        for (int i = 0; i < squares.length; i++) {
            squares[i] = lightness[i] * lightness[i];
        }
        double[] means = means(lightness, across, down, radius);
        double[] slopes = means(squares, across, down, radius);
        double[] offsets = new double[lightness.length];
        for (int i = 0; i < offsets.length; i++) {
            double variance = Math.max(0, slopes[i] - means[i] * means[i]);
            slopes[i] = variance / (variance + epsilon);
            offsets[i] = (1 - slopes[i]) * means[i];
        }
        return new double[][] {means(slopes, across, down, radius), means(offsets, across, down, radius)};
    }

    /** Mean over a square about every pixel, by sums that grow and shrink. */
    private static double[] means(double[] of, int across, int down, int radius) {
        double[] rows = new double[of.length];
        for (int y = 0; y < down; y++) {
            line(of, y * across, 1, across, radius, rows);
        }
        double[] means = new double[of.length];
        for (int x = 0; x < across; x++) {
            line(rows, x, across, down, radius, means);
        }
        return means;
    }

    private static void line(double[] of, int start, int step, int size, int radius, double[] into) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < Math.min(radius, size); i++) {
            sum += of[start + i * step];
            count++;
        }
        for (int i = 0; i < size; i++) {
            if (i + radius < size) {
                sum += of[start + (i + radius) * step];
                count++;
            }
            if (i - radius - 1 >= 0) {
                sum -= of[start + (i - radius - 1) * step];
                count--;
            }
            into[start + i * step] = sum / count;
        }
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
                Cells.Place column = cells.column(x);
                double here = lightness[window[y * width + x] & 0xFFFF];
                double base = cells.between(slopes, column, row) * here + cells.between(offsets, column, row);
                double wished = here + amount * (here - base);
                double held = Math.max(Math.min(here, dark), Math.min(Math.max(here, 100), wished));
                touched[y * width + x] = (short)
                        (int) Math.min(GreyPlane.WHITE, Lightness.toLuminance(held) * white * GreyPlane.WHITE + 0.5);
            }
        }
        return touched;
    }
}
