package greyground.plate.split;

import greyground.plate.Film;
import java.util.function.DoubleUnaryOperator;

/**
 * One way to share the light between screen and image, and what the plate then prints. Doses are behind no film, in units of
 * the dose that just hardens this resist; densities are of the positive, absolute, in the lamp's light.
 *
 * @param screenDose through the screen film
 * @param imageDose through the positive
 * @param screenBlack share of the screen film that is black
 * @param edgeBlurMicrometres softness of the screen's edges as they reach the resist, a standard deviation
 * @param bare lightness of paper where nothing opened, absolute L*
 * @param lightest lightness under clear film
 * @param darkest least lightness that the film's own densities reach
 * @param lightGap the most lightness that one {@link #FILM_STEP} of density jumps over, or what clear film loses against
 *     bare paper, whichever is more
 * @param startDensity density at which tone sets in
 * @param darkestDensity least density that prints the darkest tone to half a unit: the black that the film needs
 * @param turningDensity density past which the blacks print paler; positive infinity where they don't, up to the film's black
 * @param tenthMoreLight lightness that the middle density gains when both exposures are a tenth longer
 */
public record ExposureSplit(
        double screenDose,
        double imageDose,
        double screenBlack,
        double edgeBlurMicrometres,
        double bare,
        double lightest,
        double darkest,
        double lightGap,
        double startDensity,
        double darkestDensity,
        double turningDensity,
        double tenthMoreLight) {
    /** To this a film's density can be trusted: ink on clear film adds to about 0.02 (common practice, no source). */
    public static final double FILM_STEP = 0.02;

    private static final double DARKEST_TO = 0.5;
    private static final int STRIDES = 4;

    /** Lightness from clear film to the darkest tone. */
    public double range() {
        return lightest - darkest;
    }

    /**
     * Judges a split.
     *
     * @param film of the positive: the densities it can reach
     */
    static ExposureSplit of(
            DoubleExposure doses, double screenBlack, double edgeBlurMicrometres, CriticalTones tones, Film film) {
        DoubleUnaryOperator lightness = density -> lightness(doses, tones, density);
        double clear = film.clearDensity();
        double stride = FILM_STEP / STRIDES;
        int strides = (int) Math.floor((film.blackDensity() - clear) / stride);
        double[] tone = new double[strides + 1];
        int darkest = 0;
        for (int i = 0; i <= strides; i++) {
            tone[i] = lightness.applyAsDouble(clear + i * stride);
            darkest = tone[i] < tone[darkest] ? i : darkest;
        }
        double gap = tones.bare() - tone[0];
        int reached = darkest;
        double palest = tone[darkest];
        for (int i = 0; i <= strides; i++) {
            gap = i + STRIDES <= darkest ? Math.max(gap, tone[i] - tone[i + STRIDES]) : gap;
            reached = i < reached && tone[i] <= tone[darkest] + DARKEST_TO ? i : reached;
            palest = i > darkest ? Math.max(palest, tone[i]) : palest;
        }
        double start = Math.max(clear, doses.imageDensityFor(tones.opening()));
        double middle = (start + clear + reached * stride) / 2;
        DoubleExposure more = new DoubleExposure(1.1 * doses.screenDose(), 1.1 * doses.imageDose());
        return new ExposureSplit(
                doses.screenDose(),
                doses.imageDose(),
                screenBlack,
                edgeBlurMicrometres,
                tones.bare(),
                tone[0],
                tone[darkest],
                gap,
                start,
                clear + reached * stride,
                palest > tone[darkest] + DARKEST_TO ? clear + darkest * stride : Double.POSITIVE_INFINITY,
                lightness(more, tones, middle) - lightness.applyAsDouble(middle));
    }

    private static double lightness(DoubleExposure doses, CriticalTones tones, double imageDensity) {
        return tones.lightness(Math.max(0, doses.criticalScreenTransmission(imageDensity)));
    }
}
