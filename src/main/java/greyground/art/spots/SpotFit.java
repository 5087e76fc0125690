package greyground.art.spots;

/**
 * A soft disc on sloping ground, fitted to the pixels around a place by least squares: how much lighter it is, and how far the pixels
 * stray from the fit. Grain, texture and edges stray far; a speck on even or sloping ground does not.
 */
final class SpotFit {
    /** Radii, in pixels, each a fifth larger than the one before. */
    static final double[] RADII = {1, 1.2, 1.4, 1.7, 2, 2.4, 2.8};

    /** Pixels around the disc that the fit sees (assumed). */
    private static final double AROUND = 3;

    static final int REACH = (int) Math.ceil(RADII[RADII.length - 1] + AROUND);

    /** What the disc's own noise is never less than, in L*: what grain and file leave on any picture (assumed). */
    private static final double LEAST_NOISE = 1;

    private static final SpotFit[] ALL = all();

    private final int[] across;
    private final int[] down;
    private final double[] disc;
    private final double discMean;
    private final double discSquares;
    private final double slopeSquares;
    private final double radius;

    private SpotFit(double radius) {
        this.radius = radius;
        int reach = (int) Math.ceil(radius + AROUND);
        int count = 0;
        int[] columns = new int[(2 * reach + 1) * (2 * reach + 1)];
        int[] rows = new int[columns.length];
        for (int y = -reach; y <= reach; y++) {
            for (int x = -reach; x <= reach; x++) {
                if (x * x + y * y <= (radius + AROUND) * (radius + AROUND)) {
                    columns[count] = x;
                    rows[count] = y;
                    count++;
                }
            }
        }
        this.across = java.util.Arrays.copyOf(columns, count);
        this.down = java.util.Arrays.copyOf(rows, count);
        this.disc = new double[count];
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < count; i++) {
            double distance = Math.sqrt(across[i] * across[i] + down[i] * down[i]);
            disc[i] = Math.max(0, Math.min(1, radius - distance + 0.5));
            sum += disc[i];
            squares += across[i] * across[i];
        }
        this.discMean = sum / count;
        this.slopeSquares = squares;
        double about = 0;
        for (double each : disc) {
            about += (each - discMean) * (each - discMean);
        }
        this.discSquares = about;
    }

    private static SpotFit[] all() {
        SpotFit[] fits = new SpotFit[RADII.length];
        for (int i = 0; i < fits.length; i++) {
            fits[i] = new SpotFit(RADII[i]);
        }
        return fits;
    }

    /**
     * A fit.
     *
     * @param amount how much lighter the disc is, in L*
     * @param score that over how far the pixels stray, less for the smallest, of which grain makes the most
     * @param radius of the disc
     */
    record Found(double amount, double score, double radius) {
        static final Found NOTHING = new Found(0, 0, 0);
    }

    /** The best disc at a pixel that has {@link #REACH} others on every side. */
    static Found at(float[] plane, int width, int x, int y) {
        Found best = Found.NOTHING;
        for (SpotFit fit : ALL) {
            Found found = fit.fitted(plane, width, y * width + x);
            if (found.score() > best.score()) {
                best = found;
            }
        }
        return best;
    }

    /** Disc and slopes are orthogonal once the disc's mean is taken off, since both are even about the middle. */
    private Found fitted(float[] plane, int width, int middle) {
        double ground = plane[middle];
        double sum = 0;
        double squares = 0;
        double right = 0;
        double below = 0;
        double along = 0;
        for (int i = 0; i < disc.length; i++) {
            double value = plane[middle + down[i] * width + across[i]] - ground;
            sum += value;
            squares += value * value;
            right += value * across[i];
            below += value * down[i];
            along += value * (disc[i] - discMean);
        }
        double amount = along / discSquares;
        double left =
                squares - sum * sum / disc.length - (right * right + below * below) / slopeSquares - along * amount;
        double stray = Math.max(0, left) / (disc.length - 4);
        double score = Math.abs(amount) / Math.sqrt(LEAST_NOISE * LEAST_NOISE + stray);
        return new Found(amount, score * Math.min(1, Math.sqrt(radius / 1.7)), radius);
    }
}
