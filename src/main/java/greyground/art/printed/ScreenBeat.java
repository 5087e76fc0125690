package greyground.art.printed;

/**
 * Bands that two screens of dots laid over one another show: a wave of one less a wave of the other.
 *
 * <p>Waves along rows, columns and both diagonals of the dots are looked at; finer ones are faint. Grains have no waves and beat with nothing.
 */
public final class ScreenBeat {
    private ScreenBeat() {}

    /**
     * Width of the widest bands, in millimetres.
     *
     * @param lines of one screen, lines/cm
     * @param angle of one screen, degrees
     * @param otherLines of the other
     * @param otherAngle of the other
     * @return infinite where both screens are the same
     */
    public static double millimetres(double lines, double angle, double otherLines, double otherAngle) {
        double slowest = Double.POSITIVE_INFINITY;
        for (int i = -1; i <= 1; i++) {
            for (int j = -1; j <= 1; j++) {
                for (int k = -1; k <= 1; k++) {
                    for (int m = -1; m <= 1; m++) {
                        if ((i != 0 || j != 0) && (k != 0 || m != 0)) {
                            double across = across(lines, angle, i, j) - across(otherLines, otherAngle, k, m);
                            double up = across(lines, angle, j, -i) - across(otherLines, otherAngle, m, -k);
                            slowest = Math.min(slowest, Math.sqrt(across * across + up * up));
                        }
                    }
                }
            }
        }
        return 10 / slowest;
    }

    private static double across(double lines, double angle, int along, int square) {
        double turned = StrictMath.toRadians(angle);
        return lines * (along * StrictMath.cos(turned) + square * StrictMath.sin(turned));
    }
}
