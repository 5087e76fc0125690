package greyground.plate.edge;

/**
 * Distance to the edge of open copper, or of resist, finer than a pixel: the edge lies where the dose crosses the hardening
 * dose, found between pixel centres by interpolating not the dose but the place on a blurred edge that it tells. Parabolas stand on the set's pixels and on every such
 * crossing of a row or a column, so that the envelope ({@link LineEnvelope}) is the distance to the curve through them.
 *
 * <p>A straight edge along the raster is met exactly. On a slanted one the nearest point that a row or the place's own
 * column cuts may lie a pixel along the edge, which overstates distances by up to 0.4 pixel and by less than 0.1 on average; counting
 * whole pixels instead would be 0.15 pixel out on average.
 */
public final class EdgeDistance {
    private static final int BLOCK = 16;
    private static final double ROUNDING_PIXELS = 1e-3;

    private final boolean[] mask;
    private final boolean marked;
    private final DoseEdge edge;
    private final Grid grid;

    private EdgeDistance(boolean[] mask, boolean marked, DoseEdge edge, Grid grid) {
        this.mask = mask;
        this.marked = marked;
        this.edge = edge;
        this.grid = grid;
    }

    /**
     * Measures from every place to a set.
     *
     * @param mask marks each pixel
     * @param marked the mark of the set
     * @param edge sets the set's edge wherever it is light that parts two pixels; elsewhere (a grain of ground, a narrow part that
     *     development shut or lost) the edge runs midway between them
     * @return micrometres, 0 in the set, positive infinity everywhere if it is empty
     */
    public static float[] micrometres(boolean[] mask, boolean marked, DoseEdge edge, Grid grid) {
        EdgeDistance edges = new EdgeDistance(mask, marked, edge, grid);
        float[] plane = new float[mask.length];
        edges.rows(plane);
        edges.columns(plane);
        double pitch = grid.pitchMicrometres();
        for (int i = 0; i < plane.length; i++) {
            plane[i] = mask[i] == marked ? 0 : (float) (pitch * Math.sqrt(plane[i]));
        }
        return plane;
    }

    /**
     * The same where only small distances matter.
     *
     * @param mostMicrometres distances up to this are told; longer ones may be positive infinity
     */
    public static float[] micrometres(
            boolean[] mask, boolean marked, DoseEdge edge, Grid grid, double mostMicrometres) {
        double pitch = grid.pitchMicrometres();
        double reach = mostMicrometres / pitch;
        if (reach > NearEdge.MOST_REACH) {
            return micrometres(mask, marked, edge, grid);
        }
        float[] plane = NearEdge.squaredPixels(mask, marked, edge, grid, reach + ROUNDING_PIXELS);
        for (int i = 0; i < plane.length; i++) {
            float squared = plane[i];
            // The root is slow, and most places lie in the set or far from it.
            if (squared != 0 && squared != Float.POSITIVE_INFINITY) {
                plane[i] = (float) (pitch * Math.sqrt(squared));
            }
        }
        return plane;
    }

    private void rows(float[] plane) {
        int width = grid.width();
        grid.strips(grid.height(), BLOCK).forEach(block -> {
            LineEnvelope envelope = new LineEnvelope(width + 1);
            float[] line = new float[width];
            float[] out = new float[width + 1];
            int end = Math.min(grid.height(), (block + 1) * BLOCK);
            for (int y = block * BLOCK; y < end; y++) {
                for (int x = 0; x < width; x++) {
                    line[x] = mask[y * width + x] == marked ? 0 : Float.POSITIVE_INFINITY;
                }
                measure(envelope, line, 0, out, y * width, 1, width);
                System.arraycopy(line, 0, plane, y * width, width);
            }
        });
    }

    private void columns(float[] plane) {
        int width = grid.width();
        int height = grid.height();
        grid.strips(width, BLOCK).forEach(block -> {
            LineEnvelope envelope = new LineEnvelope(height + 1);
            int left = block * BLOCK;
            int count = Math.min(width - left, BLOCK);
            float[] lines = new float[count * height];
            float[] out = new float[height + 1];
            for (int y = 0; y < height; y++) {
                for (int i = 0; i < count; i++) {
                    lines[i * height + y] = plane[y * width + left + i];
                }
            }
            for (int i = 0; i < count; i++) {
                measure(envelope, lines, i * height, out, left + i, width, height);
            }
            for (int y = 0; y < height; y++) {
                for (int i = 0; i < count; i++) {
                    plane[y * width + left + i] = lines[i * height + y];
                }
            }
        });
    }

    /** One line: its samples and the crossings between them; {@code first + k * stride} is the plane's place of sample k. */
    private void measure(
            LineEnvelope envelope, float[] line, int from, float[] out, int first, int stride, int length) {
        boolean wrapped = grid.rim() == Rim.WRAPPED;
        int start = wrapped ? LineEnvelope.least(line, from, length) : 0;
        int count = wrapped ? length + 1 : length;
        envelope.clear();
        boolean any = false;
        int at = start;
        for (int k = 0; k < count; k++) {
            float sample = line[from + at];
            if (sample != Float.POSITIVE_INFINITY) {
                envelope.add(k, sample);
                any = true;
            }
            int next = at + 1 == length ? 0 : at + 1;
            if (k + 1 < count) {
                int here = first + at * stride;
                int there = first + next * stride;
                if (mask[here] != mask[there]) {
                    envelope.add(k + edge.crossing(here, there), 0);
                    any = true;
                }
            }
            at = next;
        }
        if (!any) {
            return;
        }
        envelope.fill(out, 0, length, 1);
        System.arraycopy(out, 0, line, from + start, length - start);
        System.arraycopy(out, length - start, line, from, start);
    }
}
