package greyground.plan;

import greyground.quantity.Refusal;

/** Small sums about size: paper that shrinks, a ruler that measures wrong, a film laid askew, a film that swells. */
public final class TrueSize {
    /** A film whose 100 mm ruler is out by more than this is printed again: 0.2 mm in 100 (common practice). */
    public static final double RULER_TOLERANCE = 0.002;

    private TrueSize() {}

    /** Print's length when dry, from the plate's: L (1 - s). */
    public static double dryPrint(double plateMillimetres, double shrinkPercent) {
        return plateMillimetres * (1 - shrinkPercent / 100);
    }

    /** Plate's length for a wanted dry print: L / (1 - s). */
    public static double plateForPrint(double printMillimetres, double shrinkPercent) {
        return printMillimetres / (1 - shrinkPercent / 100);
    }

    /** Expansion in per cent from a growth over a length. */
    public static double expansionPercent(double growth, double length) {
        return growth / length * 100;
    }

    /** Scale of a film from its ruler: measured over meant. Use {@link #checkRuler} before relying on it. */
    public static double rulerScale(double measuredMillimetres, double meantMillimetres) {
        return measuredMillimetres / meantMillimetres;
    }

    /** Whether a scale, measured over meant, lies within the tolerance of a ruler. */
    public static boolean isTrue(double scale) {
        // A ruler read at the very limit must not fail on the last bit of a division.
        return Math.abs(scale - 1) <= RULER_TOLERANCE + 1e-9;
    }

    /** Refuses a film whose ruler is out by more than 0.2 %. */
    public static double checkRuler(double measuredMillimetres, double meantMillimetres) {
        double scale = rulerScale(measuredMillimetres, meantMillimetres);
        if (!isTrue(scale)) {
            double room = meantMillimetres * RULER_TOLERANCE;
            throw Refusal.use(
                    "film's ruler measures " + Refusal.plain(measuredMillimetres) + " mm; it must lie between "
                            + Refusal.plain(meantMillimetres - room) + " and " + Refusal.plain(meantMillimetres + room)
                            + " mm: print at 100 %, with no fitting to the page");
        }
        return scale;
    }

    /** Sideways error in millimetres at the end of a film turned by an angle: theta L. */
    public static double rotationError(double degrees, double lengthMillimetres) {
        return Math.toRadians(degrees) * lengthMillimetres;
    }

    /**
     * Growth in millimetres of a polyester film: 18 um/m per kelvin and 10 um/m per per cent of humidity (from memory).
     */
    public static double filmGrowth(double lengthMillimetres, double kelvin, double humidityPercent) {
        return lengthMillimetres * (18e-6 * kelvin + 10e-6 * humidityPercent);
    }

    /** Errors that have nothing to do with each other, taken together: root of the sum of squares. */
    public static double together(double... errors) {
        double sum = 0;
        for (double error : errors) {
            sum += error * error;
        }
        return Math.sqrt(sum);
    }
}
