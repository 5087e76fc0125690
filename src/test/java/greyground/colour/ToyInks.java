package greyground.colour;

/**
 * Invented paper and inks in linear sRGB: yellow, magenta, cyan and black over paper, each uneven film being a share of the area, n 1.7. Check
 * values that use them were computed apart from the program.
 */
final class ToyInks {
    static final double[] PAPER = {.86, .84, .78};
    static final double GAIN = 1.7;
    private static final double[][] OVER_PAPER = {{.95, .78, .12}, {.62, .10, .28}, {.09, .40, .62}, {.03, .03, .035}};

    private ToyInks() {}

    /** Full tone of an ink on the paper, 0 to 3. */
    static double[] full(int ink) {
        return alone(ink, 1);
    }

    /** What a plate prints alone that lays its full tone on a share of the area. */
    static double[] alone(int ink, double share) {
        double[] light = new double[3];
        for (int band = 0; band < 3; band++) {
            double root = StrictMath.pow(OVER_PAPER[ink][band], 1 / GAIN);
            light[band] = PAPER[band] * StrictMath.pow(1 - share * (1 - root), GAIN);
        }
        return light;
    }
}
