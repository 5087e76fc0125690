package greyground.art.spots;

/**
 * A hole of a field filled from its rim. The harmonic fill is Laplace's equation, five points, and agrees with the rim; the biharmonic one
 * (Damelin & Hoang, arXiv 1707.06567) is the Laplacian twice, thirteen points, and also goes on with the rim's slope. Past the field's
 * own edge its mirror image goes on.
 *
 * <p>Solved by conjugate gradients (Hestenes & Stiefel 1952), since either matrix is symmetric and positive definite; in a fixed order, so
 * that every machine gets the same bits.
 */
final class SmoothFill {
    private static final double SMALLEST = 1e-12;

    /** For each pixel of the hole; exact arithmetic would need one. */
    private static final int MOST_STEPS = 4;

    private final int width;
    private final int height;
    private final boolean[] hole;
    private final boolean twice;
    private final double[] between;

    /**
     * Fills holes of this shape.
     *
     * @param hole pixels of a window, row after row; where the window ends within the field two of its pixels lie around the hole
     * @param twice biharmonic
     */
    SmoothFill(int width, int height, boolean[] hole, boolean twice) {
        this.width = width;
        this.height = height;
        this.hole = hole;
        this.twice = twice;
        this.between = new double[twice ? hole.length : 0];
    }

    /** Fills the hole in place; the pixels around it are left. What stands in it is where the search begins. */
    void fill(double[] field) {
        double[] residual = new double[field.length];
        applied(field, residual);
        double[] way = new double[field.length];
        double error = 0;
        int holes = 0;
        for (int i = 0; i < field.length; i++) {
            residual[i] = hole[i] ? -residual[i] : 0;
            way[i] = residual[i];
            error += residual[i] * residual[i];
            holes += hole[i] ? 1 : 0;
        }
        double enough = Math.max(SMALLEST * SMALLEST, error * SMALLEST * SMALLEST);
        double[] image = new double[field.length];
        for (int step = 0; step < MOST_STEPS * holes && error > enough; step++) {
            applied(way, image);
            double along = 0;
            for (int i = 0; i < field.length; i++) {
                if (hole[i]) {
                    along += way[i] * image[i];
                }
            }
            double length = error / along;
            double next = 0;
            for (int i = 0; i < field.length; i++) {
                if (hole[i]) {
                    field[i] += length * way[i];
                    residual[i] -= length * image[i];
                    next += residual[i] * residual[i];
                }
            }
            for (int i = 0; i < field.length; i++) {
                way[i] = residual[i] + next / error * way[i];
            }
            error = next;
        }
    }

    private void applied(double[] field, double[] into) {
        if (twice) {
            laplacian(field, between);
            laplacian(between, into);
        } else {
            laplacian(field, into);
        }
    }

    /** Four times each pixel less its neighbours; of a pixel past the edge, itself. */
    private void laplacian(double[] field, double[] into) {
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int at = y * width + x;
                double here = field[at];
                double sum = 0;
                sum += x > 0 ? here - field[at - 1] : 0;
                sum += x < width - 1 ? here - field[at + 1] : 0;
                sum += y > 0 ? here - field[at - width] : 0;
                sum += y < height - 1 ? here - field[at + width] : 0;
                into[at] = sum;
            }
        }
    }
}
