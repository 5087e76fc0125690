package greyground.grain;

/**
 * The cells of a halftone on its tile, and an order of blackening that gives each its even share.
 *
 * <p>Were pixels blackened by the height of the wave alone, dots that lie alike on the pixels would gain theirs together; where a
 * ruling nearly fits the film's pixels such dots stand side by side, and a flat tone would show bands. So within each cell pixels are
 * ranked, and neighbouring cells take their next pixel at turns that are dealt out.
 */
final class ScreenCells {
    // Steps of the plane's most even additive sequence (powers of the plastic number; from memory).
    private static final double STEP_ACROSS = 0.7548776662466927;
    private static final double STEP_DOWN = 0.5698402909980532;
    private static final int TIES = 4096;

    private final int side;
    private final int across;
    private final int down;
    private final int columns;
    private final int rows;
    private final long shift;

    /**
     * The cells round every dot of a screen, {@code across^2 + down^2} of them on the tile.
     *
     * <p>Cells are counted in whole waves (i, j); a tile further on it is the same cell. The lattice of such steps has a basis
     * {@code (columns, 0), (shift, rows)} with {@code columns * rows} cells, which names each cell once.
     */
    ScreenCells(HalftoneGeometry geometry) {
        side = geometry.side();
        across = geometry.wavesAcross();
        down = geometry.wavesDown();
        // Greatest common divisor g = p down - q across, by Euclid's algorithm.
        long a = down;
        long b = -(long) across;
        long p = 1;
        long q = 0;
        long nextP = 0;
        long nextQ = 1;
        while (b != 0) {
            long times = a / b;
            long rest = a - times * b;
            a = b;
            b = rest;
            long keptP = nextP;
            nextP = p - times * nextP;
            p = keptP;
            long keptQ = nextQ;
            nextQ = q - times * nextQ;
            q = keptQ;
        }
        long sign = a < 0 ? -1 : 1;
        rows = (int) Math.abs(a);
        columns = (int) (((long) across * across + (long) down * down) / rows);
        shift = sign * (p * across + q * down);
    }

    int count() {
        return columns * rows;
    }

    /** The cell of a pixel of the tile, 0 to count. */
    int cell(int x, int y) {
        long i = Math.floorDiv(2 * ((long) across * x + (long) down * y) + side, 2L * side);
        long j = Math.floorDiv(2 * ((long) down * x - (long) across * y) + side, 2L * side);
        long turns = Math.floorDiv(j, rows);
        return (int) (j - turns * rows) * columns + Math.floorMod(i - turns * shift, columns);
    }

    /**
     * Orders the tile's pixels.
     *
     * @param height at which each pixel would blacken by the wave alone, 0 to 1
     */
    int[] order(float[] height) {
        int[] cells = new int[height.length];
        int[] size = new int[count()];
        for (int place = 0; place < cells.length; place++) {
            cells[place] = cell(place % side, place / side);
            size[cells[place]]++;
        }
        int[] turn = BlackeningOrder.of(height, place -> dealt(cells[place]));
        int[] place = new int[turn.length];
        for (int i = 0; i < turn.length; i++) {
            place[turn[i]] = i;
        }
        float[] share = new float[height.length];
        int[] ranked = new int[size.length];
        for (int next : place) {
            int cell = cells[next];
            share[next] = (ranked[cell]++ + (dealt(cell) + 0.5f) / TIES) / size[cell];
        }
        return BlackeningOrder.of(share, at -> dealt(cells[at]));
    }

    private int dealt(int cell) {
        int row = cell / columns;
        double at = cell % columns * STEP_ACROSS + row * STEP_DOWN;
        return (int) ((at - Math.floor(at)) * TIES);
    }
}
