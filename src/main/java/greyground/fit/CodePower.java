package greyground.fit;

/**
 * The power by which a scanner's codes follow light, as the plate's own physics have it: what ink, paper and the half that lines cover
 * make of light and dark, on whatever plate explains the print ({@link PlateLesson}).
 *
 * @param share of the power that codes were read with, above 0; 1 where they were read rightly
 * @param standardError of that
 */
public record CodePower(double share, double standardError) {
    /** That of sRGB, whose curve lies close to it (common practice). */
    private static final double SRGB = 2.2;

    /** What plates of another form than the model's do to it, of itself (seen on foreign shops: docs/calibration.md). */
    private static final double FORM = 0.07;

    private static final double NORMAL_95 = 1.96;

    /** Of a fit's own estimate, whose error knows nothing of other forms of plate. */
    static CodePower of(double share, double fitError) {
        return new CodePower(share, StrictMath.hypot(fitError, FORM * share));
    }

    /** Whether it is likelier than not that codes were read with a wrong power. */
    public boolean isDoubtful() {
        return Math.abs(share - 1) > standardError;
    }

    /** The codes' power, were they read as sRGB. */
    public double power() {
        return SRGB * share;
    }

    /** Half of its 95 % interval. */
    public double half95() {
        return NORMAL_95 * SRGB * standardError;
    }
}
