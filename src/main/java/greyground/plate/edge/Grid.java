package greyground.plate.edge;

import greyground.quantity.Refusal;
import java.util.stream.IntStream;

/**
 * The raster on which a patch of plate is computed, row by row from the top left.
 *
 * @param width pixels across, at least 1
 * @param height pixels down, at least 1; the area is at most 2^28 pixels
 * @param pitchMicrometres centre-to-centre distance of pixels, 0.05 to 1000
 * @param rim what lies past the edge
 */
public record Grid(int width, int height, double pitchMicrometres, Rim rim) {
    private static final long MOST_PIXELS = 1L << 28;

    /** Smaller patches are computed sooner by one core than shared among several (measured here). */
    private static final int LEAST_SHARED = 1 << 17;

    public Grid {
        if (width < 1 || height < 1 || (long) width * height > MOST_PIXELS) {
            throw Refusal.use("a patch of plate is " + width + " x " + height + " pixels; it must have 1 to "
                    + MOST_PIXELS + ": look at a smaller patch");
        }
        Refusal.checkRange("pixel pitch", pitchMicrometres, 0.05, 1000, "µm", "give the film printer's own pitch");
    }

    /** Pixels in all. */
    public int area() {
        return width * height;
    }

    /**
     * Numbers of strips of rows or columns, each of which one thread computes. Neither how many threads there are nor their order may change
     * a result.
     *
     * @param lines rows or columns of the patch
     * @param each of them in a strip
     */
    IntStream strips(int lines, int each) {
        IntStream strips = IntStream.range(0, (lines + each - 1) / each);
        return area() < LEAST_SHARED ? strips : strips.parallel();
    }

    /** Refuses a plane that does not have one sample for each pixel. */
    public void check(String what, int samples) {
        if (samples != area()) {
            throw Refusal.use(what + " has " + samples + " samples; the patch of " + width + " x " + height
                    + " pixels needs " + area());
        }
    }
}
