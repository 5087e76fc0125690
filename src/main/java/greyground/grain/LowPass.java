package greyground.grain;

/** A Gaussian mean over a square that wraps round. Owned by one thread; reused. */
final class LowPass {
    private final int side;
    private final float[] between;
    private final float[] padded;
    private float[] weights = new float[0];
    private double made = -1;

    LowPass(int side) {
        this.side = side;
        this.between = new float[side * side];
        this.padded = new float[3 * side];
    }

    /** Blurs {@code grid} in place; {@code deviation} in cells. */
    void blur(float[] grid, double deviation) {
        prepare(deviation);
        int reach = weights.length - 1;
        for (int y = 0; y < side; y++) {
            int row = y * side;
            float w0 = weights[0];
            for (int x = 0; x < side; x++) {
                between[row + x] = w0 * grid[row + x];
            }
            for (int k = 1; k <= reach; k++) {
                int up = Math.floorMod(y - k, side) * side;
                int down = Math.floorMod(y + k, side) * side;
                float w = weights[k];
                for (int x = 0; x < side; x++) {
                    between[row + x] += w * (grid[up + x] + grid[down + x]);
                }
            }
        }
        for (int y = 0; y < side; y++) {
            int row = y * side;
            for (int x = -reach; x < side + reach; x++) {
                padded[x + reach] = between[row + (x < 0 ? x + side : x >= side ? x - side : x)];
            }
            float w0 = weights[0];
            for (int x = 0; x < side; x++) {
                grid[row + x] = w0 * padded[x + reach];
            }
            for (int k = 1; k <= reach; k++) {
                float w = weights[k];
                for (int x = 0; x < side; x++) {
                    grid[row + x] += w * (padded[x + reach - k] + padded[x + reach + k]);
                }
            }
        }
    }

    private void prepare(double deviation) {
        if (deviation == made) {
            return;
        }
        made = deviation;
        int reach = Math.max(1, Math.min(side - 1, (int) Math.ceil(2.7 * deviation)));
        weights = new float[reach + 1];
        double sum = 0;
        for (int k = 0; k <= reach; k++) {
            double w = StrictMath.exp(-k * k / (2 * deviation * deviation));
            weights[k] = (float) w;
            sum += k == 0 ? w : 2 * w;
        }
        for (int k = 0; k <= reach; k++) {
            weights[k] = (float) (weights[k] / sum);
        }
    }
}
