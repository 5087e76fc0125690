package greyground.art.line;

import greyground.raster.ContourDepth;
import greyground.raster.GreyPlane;
import java.util.Arrays;

/**
 * How wide a drawing's strokes are and how soft their edges, in pixels, looked at in places spread over the art.
 *
 * @param widths of strokes, one for each pixel of their middle lines, rising; those of {@value #WIDEST} pixels and more are left out
 * @param edgePixels from ink to paper, on average; 0 where there is no edge
 */
@SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
public record Strokes(float[] widths, double edgePixels) {
    /** Strokes of fewer pixels have edges that are guessed (assumed). */
    public static final double FEWEST_PIXELS = 3;

    /** Edges that take more of the width of a usual stroke are soft (assumed). */
    private static final double SOFT_SHARE = 0.75;

    /** Edges that take more pixels are tones (assumed: text blurred by 4 pixels has 9.5, a wash drawing 14, photographs 20 and more). */
    private static final double MOST_EDGE_PIXELS = 12;

    private static final int WIDEST = 48;
    private static final int SIDE = 192;
    private static final int PLACES = 8;

    /**
     * Looks through a plane.
     *
     * @param threshold the lightest grey code that is ink
     * @param span grey codes from ink to paper
     */
    public static Strokes in(GreyPlane plane, int threshold, double span) {
        int wide = Math.min(SIDE, plane.width());
        int high = Math.min(SIDE, plane.height());
        int across = Math.min(PLACES, (plane.width() + SIDE - 1) / SIDE);
        int down = Math.min(PLACES, (plane.height() + SIDE - 1) / SIDE);
        float[] found = new float[across * down * wide * high];
        int count = 0;
        long between = 0;
        long edge = 0;
        float[] ink = new float[wide * high];
        short[] codes = new short[wide * high];
        for (int place = 0; place < across * down; place++) {
            int left = spread(place % across, across, plane.width() - wide);
            int top = spread(place / across, down, plane.height() - high);
            for (int y = 0; y < high; y++) {
                plane.readRun(left, top + y, wide, codes, y * wide);
            }
            for (int i = 0; i < ink.length; i++) {
                ink[i] = threshold - (codes[i] & 0xFFFF);
            }
            float[] depth = ContourDepth.pixels(ink, wide, high, WIDEST / 2);
            for (int y = 1; y + 1 < high; y++) {
                for (int x = 1; x + 1 < wide; x++) {
                    int at = y * wide + x;
                    edge += Math.abs(depth[at]) < 0.5 ? 1 : 0;
                    between += Math.abs(ink[at]) < span / 4 ? 1 : 0;
                    float middle = ContourDepth.middle(depth, wide, at);
                    if (middle >= 0 && 2 * middle < WIDEST) {
                        found[count++] = 2 * middle;
                    }
                }
            }
        }
        float[] widths = Arrays.copyOf(found, count);
        Arrays.sort(widths);
        return new Strokes(widths, edge == 0 ? 0 : 2.0 * between / edge);
    }

    private static int spread(int place, int places, int room) {
        return places == 1 ? room / 2 : (int) ((long) room * place / (places - 1));
    }

    /** Width of a usual stroke, half of all being thinner; 0 where there is none. */
    public double median() {
        return widths.length == 0 ? 0 : widths[widths.length / 2];
    }

    /** Share of the strokes' length that is thinner than a width. */
    public double thinnerThan(double pixels) {
        int thin = 0;
        while (thin < widths.length && widths[thin] < pixels) {
            thin++;
        }
        return widths.length == 0 ? 0 : (double) thin / widths.length;
    }

    /** Whether there is more between ink and paper than edges. */
    public boolean tonal() {
        return edgePixels > MOST_EDGE_PIXELS;
    }

    public boolean coarse() {
        return widths.length > 0 && median() < FEWEST_PIXELS;
    }

    public boolean soft() {
        return !tonal() && !coarse() && widths.length > 0 && edgePixels > SOFT_SHARE * median();
    }
}
