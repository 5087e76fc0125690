package greyground.scan;

import greyground.tone.Lightness;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Measures an area of the print as a densitometer does: the mean of its light (ISO 5-4), in cells of about 1 mm. Grain lies within the
 * cells, so that a resistant mean of the cells passes over dust and scratches and isn't biased by the grain.
 */
final class FieldMeter {
    private static final double CELL = 1_000;
    private static final int FEWEST_CELLS = 5;

    /** Cells this many times the usual deviation off are spoiled (assumed; in an even field one of 500 000 is). */
    private static final double FAR = 5;

    /** Deviation in L* that any field is allowed. */
    private static final double LEAST_DEVIATION = 0.5;

    private static final double WHITE_CLIPPED = 0.9999;
    private static final double BLACK_CLIPPED = 2e-5;

    /**
     * A tone over an area of the print.
     *
     * @param lightness CIE L* of its mean light
     * @param leftOut share of its cells that dust or a scratch had spoiled
     * @param clipped share of it where the scan holds no more light or no more dark
     * @param outsideWedge whether its tone lies past the reference wedge
     */
    record Reading(double lightness, double leftOut, double clipped, boolean outsideWedge) {}

    private final Projective place;
    private final StrayLight light;
    private final PaperWhite paper;
    private final double paperLuminance;
    private final @Nullable ReferenceWedge wedge;
    private final double stepPixels;

    FieldMeter(
            Projective place,
            StrayLight light,
            PaperWhite paper,
            double paperLightness,
            @Nullable ReferenceWedge wedge,
            double stepPixels) {
        this.place = place;
        this.light = light;
        this.paper = paper;
        this.paperLuminance = Lightness.toLuminance(paperLightness);
        this.wedge = wedge;
        this.stepPixels = stepPixels;
    }

    /** Light of a small area, as luminance of a perfect white. */
    private double luminance(double signal, double x, double y) {
        double cleared = light.cleared(signal, place.x(x, y), place.y(x, y));
        double even = cleared / paper.at(x, y);
        return wedge == null ? even * paperLuminance : StrictMath.pow(10, -wedge.density(even * paper.mean()));
    }

    /** Light of wide surroundings of a place, as luminance of a perfect white; none of it taken out. */
    double ofPaper(double signal, double x, double y) {
        return signal / paper.at(x, y) * paperLuminance;
    }

    /**
     * Measures a rectangle, in micrometres.
     *
     * @param uneven whether its cells may differ as they like: sparse or broken grain, that is not dust
     */
    Reading read(double left, double top, double width, double height, boolean uneven) {
        int across = (int) Math.max(FEWEST_CELLS, Math.ceil(width / CELL));
        int down = (int) Math.max(FEWEST_CELLS, Math.ceil(height / CELL));
        return read(light::raw, left, top, width, height, across, down, stepPixels, uneven);
    }

    /** Where light comes from. */
    @FunctionalInterface
    interface Source {
        double light(double xPixels, double yPixels);
    }

    /** Measures a rectangle in a number of cells, from a map of its own. */
    Reading read(
            Source source,
            double left,
            double top,
            double width,
            double height,
            int across,
            int down,
            double step,
            boolean uneven) {
        double pixels = place.scale(left + width / 2, top + height / 2);
        int samplesX = (int) Math.max(2, Math.ceil(width / across * pixels / step));
        int samplesY = (int) Math.max(2, Math.ceil(height / down * pixels / step));
        double[] cells = new double[across * down];
        double signals = 0;
        long clipped = 0;
        for (int cell = 0; cell < cells.length; cell++) {
            int row = cell / across;
            double x0 = left + width * (cell - row * across) / across;
            double y0 = top + height * row / down;
            double sum = 0;
            for (int j = 0; j < samplesY; j++) {
                for (int i = 0; i < samplesX; i++) {
                    double x = x0 + width / across * (i + 0.5) / samplesX;
                    double y = y0 + height / down * (j + 0.5) / samplesY;
                    double value = source.light(place.x(x, y), place.y(x, y));
                    sum += value;
                    clipped += value >= WHITE_CLIPPED || value <= BLACK_CLIPPED ? 1 : 0;
                }
            }
            double signal = sum / samplesX / samplesY;
            signals += signal / cells.length;
            cells[cell] = luminance(signal, x0 + width / across / 2, y0 + height / down / 2);
        }
        double share = clipped / ((double) cells.length * samplesX * samplesY);
        boolean past =
                wedge != null && !wedge.holds(signals / paper.at(left + width / 2, top + height / 2) * paper.mean());
        return reading(cells, share, past, uneven);
    }

    /** The mean of cells without the spoiled ones. */
    static Reading reading(double[] cells, double clipped, boolean past, boolean uneven) {
        double[] tones = new double[cells.length];
        for (int i = 0; i < cells.length; i++) {
            tones[i] = Lightness.ofLuminance(Math.max(0, cells[i]));
        }
        double middle = median(tones);
        double[] away = new double[tones.length];
        double square = 0;
        for (int i = 0; i < tones.length; i++) {
            away[i] = Math.abs(tones[i] - middle);
            square += away[i] / tones.length;
        }
        // Sparse grain has many even cells and a few dark ones: the mean distance keeps those, which the median would
        // call dust.
        double wide = uneven ? Math.min(square, 2) * 1.2533 : 0;
        double deviation = Math.max(LEAST_DEVIATION, Math.max(1.4826 * median(away), wide));
        double sum = 0;
        int kept = 0;
        for (int i = 0; i < cells.length; i++) {
            if (away[i] <= FAR * deviation) {
                sum += cells[i];
                kept++;
            }
        }
        double lightness = Lightness.ofLuminance(Math.max(0, sum / kept));
        return new Reading(Math.min(100, lightness), 1 - (double) kept / cells.length, clipped, past);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
