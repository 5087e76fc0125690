package greyground.grain;

import java.util.ArrayList;
import java.util.List;

/** The fewest film pixels that hold a disc of a given diameter: what a dot or a land is born with. */
final class LeastDot {
    private static final int PHASES = 12;

    // Across and down from the dot's own pixel.
    private final List<int[]> offsets;

    private LeastDot(List<int[]> offsets) {
        this.offsets = offsets;
    }

    /**
     * Tries the disc at many places within a pixel and keeps the one that touches fewest.
     *
     * @param diameter of the disc in pixels, above 0
     */
    static LeastDot holding(double diameter) {
        List<int[]> best = List.of();
        for (int j = 0; j <= PHASES; j++) {
            for (int i = j; i <= PHASES; i++) {
                List<int[]> touched = touched(0.5 * i / PHASES, 0.5 * j / PHASES, diameter / 2);
                best = best.isEmpty() || touched.size() < best.size() ? touched : best;
            }
        }
        return new LeastDot(best);
    }

    /** The pixels whose unit square shares area with a disc about a place. */
    private static List<int[]> touched(double centreX, double centreY, double radius) {
        int reach = (int) Math.ceil(radius) + 1;
        List<int[]> touched = new ArrayList<>();
        for (int y = -reach; y <= reach; y++) {
            for (int x = -reach; x <= reach; x++) {
                double ax = Math.max(0, Math.abs(x - centreX) - 0.5);
                double ay = Math.max(0, Math.abs(y - centreY) - 0.5);
                if (ax * ax + ay * ay < radius * radius * (1 - 1e-9)) {
                    touched.add(new int[] {x, y});
                }
            }
        }
        return touched;
    }

    int pixels() {
        return offsets.size();
    }

    /**
     * The pixels of a tile that the dot of a site takes, in one of eight poses by chance, so that no direction is favoured: mirrored in
     * x (1), in y (2), axes swapped (4).
     *
     * @param x of the dot's own pixel, in a tile of {@code side} that wraps
     */
    int[] at(double x, double y, int side, long seed, int site) {
        int pose = (int) (GrainSites.hash(~seed, site) >>> 61);
        boolean swapped = (pose & 4) != 0;
        int[] pixels = new int[offsets.size()];
        for (int k = 0; k < pixels.length; k++) {
            int across = mirror(offsets.get(k)[0], pose & 1);
            int down = mirror(offsets.get(k)[1], pose & 2);
            int column = (int) x + (swapped ? down : across);
            int row = (int) y + (swapped ? across : down);
            pixels[k] = Math.floorMod(row, side) * side + Math.floorMod(column, side);
        }
        return pixels;
    }

    private static int mirror(int value, int flag) {
        return flag == 0 ? value : -value;
    }
}
