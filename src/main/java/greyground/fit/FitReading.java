package greyground.fit;

import greyground.quantity.Refusal;

/**
 * A direct reading of one number, from a target of its own beside the tones: closed forms, no virtual plate.
 *
 * @param parameter which number
 * @param value read, within its allowed range
 * @param standardError of the value, above 0
 * @param how the reading in a few words
 */
public record FitReading(FitParameter parameter, double value, double standardError, String how) {
    /** Of an even distribution of width 1: 1 / sqrt(12). */
    private static final double EVEN = 1 / Math.sqrt(12);

    public FitReading {
        parameter.allowed().check("reading of the " + parameter.words(), value);
        if (!(standardError > 0) || !Double.isFinite(standardError)) {
            throw Refusal.use("error of the " + parameter.words() + " is " + standardError
                    + "; it must be above 0: say how far apart the target's sizes are");
        }
    }

    /**
     * Radius of the pad from a bar gauge, {@code r = w^2 / 8h}, with {@code w} a bar's bitten width: as drawn, and {@code 2h / F} wider by
     * the undercut on both sides, on whose lips the pad rests. The critical width lies somewhere between the widest bar that printed
     * solid and the narrowest that printed pale, evenly likely in its logarithm; the errors of depth and etch factor add.
     *
     * @param widestSolidMillimetres as drawn, above 0
     * @param narrowestPaleMillimetres as drawn, above that
     * @param depth of the bite where the gauge lies
     * @param etchFactor of the workshop's bath, depth over undercut, 0.5 to 10; as unsure as a lesson takes it to be
     *     ({@link LessonNumbers#belief})
     */
    public static FitReading barGauge(
            double widestSolidMillimetres, double narrowestPaleMillimetres, MeasuredDepth depth, double etchFactor) {
        checkBracket("bar", widestSolidMillimetres, narrowestPaleMillimetres, "mm");
        Refusal.checkRange("etch factor", etchFactor, 0.5, 10, "", "1 to 2 in a still tray, 1.5 to 3.5 sprayed");
        double deep = depth.micrometres() / 1000;
        double widened = 2 * deep / etchFactor;
        double solid = widestSolidMillimetres + widened;
        double pale = narrowestPaleMillimetres + widened;
        double radius = solid * pale / (8 * deep);
        double width = EVEN * StrictMath.log(pale / solid);
        // d ln r / d ln F, but for its sign; a deeper bite is wider too.
        double byFactor = widened / solid + widened / pale;
        double byDepth = byFactor - 1;
        double errors = StrictMath.hypot(
                byDepth * depth.standardError() / depth.micrometres(),
                byFactor * LessonNumbers.belief(FitParameter.ETCH_FACTOR));
        double share = StrictMath.hypot(2 * width, errors);
        return new FitReading(
                FitParameter.PAD_RADIUS,
                radius,
                radius * share,
                "bar gauge, " + Refusal.plain(widestSolidMillimetres) + " mm solid and "
                        + Refusal.plain(narrowestPaleMillimetres) + " mm pale at "
                        + Refusal.plain(depth.micrometres()) + " µm");
    }

    /**
     * Smallest opening or land from a row of targets: it lies evenly between the widest that failed and the narrowest that held.
     *
     * @param parameter {@link FitParameter#SMALLEST_OPENING} or {@link FitParameter#SMALLEST_LAND}
     */
    public static FitReading target(
            FitParameter parameter, double widestLostMicrometres, double narrowestHeldMicrometres) {
        checkBracket(parameter.words() + " target", widestLostMicrometres, narrowestHeldMicrometres, "µm");
        return new FitReading(
                parameter,
                (widestLostMicrometres + narrowestHeldMicrometres) / 2,
                EVEN * (narrowestHeldMicrometres - widestLostMicrometres),
                Refusal.plain(widestLostMicrometres) + " µm lost and " + Refusal.plain(narrowestHeldMicrometres)
                        + " µm held");
    }

    private static void checkBracket(String what, double low, double high, String unit) {
        if (!(low > 0) || !(high > low) || !Double.isFinite(high)) {
            throw Refusal.use(what + " widths are " + Refusal.plain(low) + " and " + Refusal.plain(high) + " " + unit
                    + "; the second must be the wider and both above 0: give the two neighbours in the row");
        }
    }
}
