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
        int pixels = side * side;
        // A wave from all least dots at once; a pixel waits at most once, so the ring never overflows.
        int[] ring = new int[pixels];
        boolean[] waits = new boolean[pixels];
        int tail = 0;
        for (int site = 0; site < sites; site++) {
            for (int k = 0; k < first.least(); k++) {
                int pixel = first.pixel(site, k);
                joined[pixel] = coverage[pixel];
                waits[pixel] = true;
                ring[tail++] = pixel;
            }
        }
        int waiting = tail;
        for (int head = 0; waiting > 0; head = head + 1 == pixels ? 0 : head + 1) {
            int pixel = ring[head];
            waiting--;
            waits[pixel] = false;
            for (int way = 0; way < 4; way++) {
                int next = beside(pixel, way, side, pixels);
                float value = Math.max(coverage[next], joined[pixel]);
                if (inside[next] && value < joined[next]) {
                    joined[next] = value;
                    if (!waits[next]) {
                        waits[next] = true;
                        waiting++;
                        tail = tail == pixels ? 0 : tail;
                        ring[tail++] = next;
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

    /** The pixel to the left (0), right, above or below (3). */
    private static int beside(int pixel, int way, int side, int pixels) {
        if (way < 2) {
            int column = pixel % side;
            return way == 0
                    ? (column == 0 ? pixel + side - 1 : pixel - 1)
                    : (column == side - 1 ? pixel - side + 1 : pixel + 1);
        }
        return way == 2
                ? (pixel < side ? pixel + pixels - side : pixel - side)
                : (pixel + side >= pixels ? pixel + side - pixels : pixel + side);
    }
}
