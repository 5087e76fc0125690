package greyground.grain;

import java.util.Arrays;

/**
 * Holds back pixels that would turn black before anything joins them to a dot, so that no tone has specks: the coverage
 * of a pixel becomes the least, over all ways to it from a least dot through pixels side by side, of the greatest
 * coverage on the way (grey reconstruction by erosion, Vincent 1993, from memory).
 */
final class UnbrokenDots {
    private static final float NEVER = 2;

    private UnbrokenDots() {}

    /**
     * @param coverage of each pixel of a square tile that wraps; replaced where {@code inside}
     * @param inside where dots may be
     * @param first what each site takes first; its least dots are where every dot begins
     * @param most coverage of what no way leads to
     */
    static void join(float[] coverage, boolean[] inside, int side, FirstPixels first, int sites, float most) {
        float[] joined = new float[coverage.length];
        Arrays.fill(joined, NEVER);
        for (int site = 0; site < sites; site++) {
            for (int k = 0; k < first.least(); k++) {
                int pixel = first.pixel(site, k);
                joined[pixel] = coverage[pixel];
            }
        }
        int pixels = side * side;
        boolean changed = true;
        for (boolean forward = true; changed; forward = !forward) {
            changed = false;
            for (int k = 0; k < pixels; k++) {
                int pixel = forward ? k : pixels - 1 - k;
                if (inside[pixel] && joined[pixel] > coverage[pixel]) {
                    float way = nearest(joined, pixel, side, pixels);
                    float value = Math.max(coverage[pixel], way);
                    if (value < joined[pixel]) {
                        joined[pixel] = value;
                        changed = true;
                    }
                }
            }
        }
        for (int pixel = 0; pixel < pixels; pixel++) {
            if (inside[pixel]) {
                coverage[pixel] = Math.min(joined[pixel], most);
            }
        }
    }

    /** The least value of the four pixels beside one. */
    private static float nearest(float[] values, int pixel, int side, int pixels) {
        int column = pixel % side;
        float left = values[column == 0 ? pixel + side - 1 : pixel - 1];
        float right = values[column == side - 1 ? pixel - side + 1 : pixel + 1];
        float above = values[pixel < side ? pixel + pixels - side : pixel - side];
        float below = values[pixel + side >= pixels ? pixel + side - pixels : pixel + side];
        return Math.min(Math.min(left, right), Math.min(above, below));
    }
}
