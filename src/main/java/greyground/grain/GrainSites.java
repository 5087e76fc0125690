package greyground.grain;

/**
 * Where dots and lands will stand: equal numbers of each, scattered over a tile that wraps round at its edges.
 *
 * <p>Every site pushes away every other at short range, sites of one kind push away their own kind and draw the other at
 * longer range; some steps down that energy leave a disordered checkerboard. Dots then have lands about them and lands
 * have dots, so both ends of the tone scale are served alike, and near half coverage the necks between neighbours open
 * and close at right angles. The arrangement is our own; that point patterns without long-wave fluctuation make quiet
 * halftones is Ulichney 1988 (from memory, unverified).
 *
 * <p>Only additions, multiplications, square roots and {@code StrictMath} are used, so a seed gives the same sites on
 * every machine.
 */
final class GrainSites {
    // Reach of the force between kinds and of the push between all, in spacings, their strength, and how the descent
    // steps: a few settings tried, this one kept for little long-wave power among the dots. Thirty steps save time and
    // are not the bottom of the energy; sixty were little quieter on the one seed compared.
    private static final double KIND_REACH = 0.55;
    private static final double ALL_REACH = 0.33;
    private static final double ALL_STRENGTH = 0.8;
    private static final double RANGE = 1.65;
    private static final int STEPS = 30;
    private static final double STEP = 0.12;
    private static final double MOMENTUM = 0.6;
    private static final int STEPS_PER_LIST = 5;
    private static final int TABLE = 1024;

    /** Sites of each kind. */
    final int count;

    /** Pixels along the tile's side. */
    final double side;

    /** Places in pixels, dots first, then lands; each in [0, side). */
    final double[] x;

    final double[] y;

    private GrainSites(int count, double side) {
        this.count = count;
        this.side = side;
        this.x = new double[2 * count];
        this.y = new double[2 * count];
    }

    /** Scatters {@code count} dots and as many lands over a square tile of {@code side} pixels and lets them settle. */
    static GrainSites relaxed(int count, double side, long seed) {
        GrainSites sites = new GrainSites(count, side);
        sites.scatter(seed);
        sites.relax();
        return sites;
    }

    /** The output function of SplitMix64 (Steele, Lea and Flood 2014, from memory) on {@code seed} and a counter. */
    static long hash(long seed, long counter) {
        long z = seed + counter * 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    private static double unit(long hash) {
        return (hash >>> 11) * 0x1.0p-53;
    }

    /** A few sites in every square of a coarse grid: random, but without thick and thin regions. */
    private void scatter(long seed) {
        int squares = Math.max(1, (int) (Math.sqrt(count) / 2));
        double square = side / squares;
        long total = (long) squares * squares;
        for (int kind = 0; kind < 2; kind++) {
            for (int i = 0; i < count; i++) {
                long cell = i * total / count;
                int site = kind * count + i;
                long row = cell / squares;
                x[site] = square * (cell % squares + unit(hash(seed, 4L * site + 1)));
                y[site] = square * (row + unit(hash(seed, 4L * site + 2)));
            }
        }
    }

    private void relax() {
        double spacing = side / Math.sqrt(count);
        double range = RANGE * spacing;
        float[] like = new float[TABLE + 2];
        float[] unlike = new float[TABLE + 2];
        // Force over distance, by the square of the distance, so that the loop needs no root and no exponential.
        for (int i = 0; i <= TABLE; i++) {
            double r2 = RANGE * RANGE * i / TABLE;
            double kind = StrictMath.exp(-r2 / (2 * KIND_REACH * KIND_REACH)) / (KIND_REACH * KIND_REACH)
                    - StrictMath.exp(-RANGE * RANGE / (2 * KIND_REACH * KIND_REACH)) / (KIND_REACH * KIND_REACH);
            double all = ALL_STRENGTH * StrictMath.exp(-r2 / (2 * ALL_REACH * ALL_REACH)) / (ALL_REACH * ALL_REACH);
            like[i] = (float) (STEP * (all + kind));
            unlike[i] = (float) (STEP * (all - kind));
        }
        int sites = 2 * count;
        double[] moveX = new double[sites];
        double[] moveY = new double[sites];
        float perIndex = (float) (TABLE / (range * range));
        double half = side / 2;
        double limit = 0.12 * spacing;
        Neighbours neighbours = new Neighbours(sites);
        for (int step = 0; step < STEPS; step++) {
            if (step % STEPS_PER_LIST == 0) {
                neighbours.find(x, y, side, range * 1.15);
            }
            int[] list = neighbours.list();
            for (int a = 0; a < sites; a++) {
                double ax = x[a];
                double ay = y[a];
                boolean dot = a < count;
                double forceX = 0;
                double forceY = 0;
                for (int n = neighbours.first(a); n < neighbours.first(a + 1); n++) {
                    int b = list[n];
                    double dx = ax - x[b];
                    double dy = ay - y[b];
                    dx = dx > half ? dx - side : dx < -half ? dx + side : dx;
                    dy = dy > half ? dy - side : dy < -half ? dy + side : dy;
                    int index = (int) ((float) (dx * dx + dy * dy) * perIndex);
                    if (index < TABLE) {
                        float force = (b < count) == dot ? like[index] : unlike[index];
                        forceX += force * dx;
                        forceY += force * dy;
                    }
                }
                moveX[a] = clamp(MOMENTUM * moveX[a] + forceX, limit);
                moveY[a] = clamp(MOMENTUM * moveY[a] + forceY, limit);
            }
            for (int a = 0; a < sites; a++) {
                x[a] = wrap(x[a] + moveX[a]);
                y[a] = wrap(y[a] + moveY[a]);
            }
        }
    }

    private double wrap(double value) {
        double wrapped = value < 0 ? value + side : value >= side ? value - side : value;
        return wrapped >= side ? 0 : wrapped;
    }

    private static double clamp(double value, double limit) {
        return value > limit ? limit : value < -limit ? -limit : value;
    }
}
