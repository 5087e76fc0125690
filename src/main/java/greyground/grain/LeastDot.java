package greyground.grain;

/** The fewest film pixels that hold a disc of a given diameter: what a dot or a land is born with. */
final class LeastDot {
    private static final int PHASES = 12;

    // Of its pixels, relative to the dot's own pixel.
    private final int[] columns;
    private final int[] rows;

    private LeastDot(int[] columns, int[] rows) {
        this.columns = columns;
        this.rows = rows;
    }

    /**
     * Tries the disc at many places within a pixel and keeps the one that touches fewest.
     *
     * @param diameter of the disc in pixels, above 0
     */
    static LeastDot holding(double diameter) {
        double radius = diameter / 2;
        int reach = (int) Math.ceil(radius) + 1;
        int best = Integer.MAX_VALUE;
        double bestX = 0;
        double bestY = 0;
        for (int j = 0; j <= PHASES; j++) {
            for (int i = j; i <= PHASES; i++) {
                double cx = 0.5 * i / PHASES;
                double cy = 0.5 * j / PHASES;
                int pixels = count(cx, cy, radius, reach);
                if (pixels < best) {
                    best = pixels;
                    bestX = cx;
                    bestY = cy;
                }
            }
        }
        int[] xs = new int[best];
        int[] ys = new int[best];
        int filled = 0;
        for (int y = -reach; y <= reach; y++) {
            for (int x = -reach; x <= reach; x++) {
                if (touches(x - bestX, y - bestY, radius)) {
                    xs[filled] = x;
                    ys[filled++] = y;
                }
            }
        }
        return new LeastDot(xs, ys);
    }

    /** How many pixels it has. */
    int pixels() {
        return columns.length;
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
        int[] pixels = new int[columns.length];
        for (int k = 0; k < pixels.length; k++) {
            int across = mirror(columns[k], pose & 1);
            int down = mirror(rows[k], pose & 2);
            int column = (int) x + (swapped ? down : across);
            int row = (int) y + (swapped ? across : down);
            pixels[k] = Math.floorMod(row, side) * side + Math.floorMod(column, side);
        }
        return pixels;
    }

    private static int mirror(int value, int flag) {
        return flag == 0 ? value : -value;
    }

    private static int count(double cx, double cy, double radius, int reach) {
        int pixels = 0;
        for (int y = -reach; y <= reach; y++) {
            for (int x = -reach; x <= reach; x++) {
                pixels += touches(x - cx, y - cy, radius) ? 1 : 0;
            }
        }
        return pixels;
    }

    /** Whether the unit square centred at (x, y) shares area with the disc about the origin. */
    private static boolean touches(double x, double y, double radius) {
        double ax = Math.max(0, Math.abs(x) - 0.5);
        double ay = Math.max(0, Math.abs(y) - 0.5);
        return ax * ax + ay * ay < radius * radius * (1 - 1e-9);
    }
}
