package greyground.fit;

import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.PlateConditions;
import greyground.quantity.Refusal;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;

/**
 * A number of the virtual plate that a test plate may teach.
 *
 * <p>The allowed ranges are plausible ones, assumed, and lie within what the workshop's file takes. Numbers that can't be
 * negative and span a decade are fitted by their logarithm, so their error is a share.
 */
@SuppressWarnings("ImmutableEnumChecker") // how a number is read and changed holds nothing that changes
public enum FitParameter {
    /**
     * Edge shift on the way to the resist. Exposure shifts edges too; a print can't tell the two apart, so all of it is booked as
     * the film printer's spot growth at the exposure that was given.
     */
    EDGE_SHIFT(
            "filmPrinter.spotGrowthMicrometres",
            "edge shift",
            "µm",
            -30,
            50,
            false,
            FitParameter::spotGrowth,
            FitParameter::withSpotGrowth),
    /** Depth over undercut. */
    ETCH_FACTOR(
            "bath.etchFactor",
            "etch factor",
            "",
            0.7,
            7,
            true,
            was -> bath(was).etchFactor(),
            (was, value) -> was.withWells(bath(was).withEtchFactor(value))),
    /** Radius of the wiping pad. */
    PAD_RADIUS(
            "wipe.padRadiusMillimetres",
            "wiping pad radius",
            "mm",
            0.15,
            15,
            true,
            was -> was.wipe().padRadiusMillimetres(),
            (was, value) -> was.withWipe(was.wipe().withPadRadius(value))),
    /** Ink that wiping leaves everywhere. */
    PLATE_TONE(
            "wipe.plateToneMicrometres",
            "plate tone",
            "µm",
            0.02,
            1.5,
            false,
            was -> was.wipe().plateToneMicrometres(),
            (was, value) -> was.withWipe(was.wipe().withPlateTone(Math.max(0, value)))),
    /** How soon an ink film is dense, m. */
    INK_STRENGTH(
            "ink.strengthPerMicrometre",
            "ink strength m",
            "per µm",
            0.02,
            1,
            true,
            was -> was.ink().densityPerMicrometre(),
            (was, value) -> was.withInk(was.ink().withDensityPerMicrometre(value))),
    /** Density of a very thick ink film over the paper, D-infinity. */
    INK_SATURATION(
            "ink.saturationDensity",
            "greatest ink density",
            "",
            0.7,
            2.5,
            false,
            was -> was.ink().greatestDensity(),
            (was, value) -> was.withInk(was.ink().withGreatestDensity(value))),
    /** Spread of light in the paper, n of Yule and Nielsen. */
    OPTICAL_GAIN(
            "ink.yuleNielsenFactor",
            "optical gain n",
            "",
            1.1,
            3,
            false,
            was -> was.paper().opticalGain(),
            (was, value) -> was.withPaper(was.paper().withOpticalGain(value))),
    /** Width below which an opening doesn't wash out. */
    SMALLEST_OPENING(
            "resist.smallestOpeningMicrometres",
            "smallest opening",
            "µm",
            5,
            150,
            true,
            was -> was.resist().smallestOpeningMicrometres(),
            (was, value) ->
                    was.withResist(was.resist().withSmallest(value, was.resist().smallestLandMicrometres()))),
    /** Width below which hardened film washes away. */
    SMALLEST_LAND(
            "resist.smallestLandMicrometres",
            "smallest land",
            "µm",
            5,
            150,
            true,
            was -> was.resist().smallestLandMicrometres(),
            (was, value) ->
                    was.withResist(was.resist().withSmallest(was.resist().smallestOpeningMicrometres(), value)));

    private final String path;
    private final String words;
    private final String unit;
    private final double least;
    private final double most;
    private final boolean logarithmic;
    private final ToDoubleFunction<PlateConditions> present;
    private final BiFunction<PlateConditions, Double, PlateConditions> changed;

    FitParameter(
            String path,
            String words,
            String unit,
            double least,
            double most,
            boolean logarithmic,
            ToDoubleFunction<PlateConditions> present,
            BiFunction<PlateConditions, Double, PlateConditions> changed) {
        this.path = path;
        this.words = words;
        this.unit = unit;
        this.least = least;
        this.most = most;
        this.logarithmic = logarithmic;
        this.present = present;
        this.changed = changed;
    }

    private static Bath bath(PlateConditions conditions) {
        if (conditions.wells() instanceof Bath bath) {
            return bath;
        }
        throw Refusal.use(
                "etch factor is asked of a plate that is not bitten; it must be a bitten plate: leave it out");
    }

    private static double spotGrowth(PlateConditions conditions) {
        return conditions.exposures().stream()
                .filter(one -> one.sheet() == Exposure.Sheet.POSITIVE)
                .mapToDouble(one -> one.film().spotGrowthMicrometres())
                .findFirst()
                .orElse(0);
    }

    private static PlateConditions withSpotGrowth(PlateConditions was, double value) {
        return was.withExposures(was.exposures().stream()
                .map(one -> one.sheet() == Exposure.Sheet.POSITIVE
                        ? one.withFilm(one.film().withSpotGrowth(value))
                        : one)
                .toList());
    }

    /** Its value in a plate's conditions. */
    public double of(PlateConditions conditions) {
        return present.applyAsDouble(conditions);
    }

    /** The conditions with another value. */
    PlateConditions with(PlateConditions was, double value) {
        return changed.apply(was, value);
    }

    /** Where the workshop keeps it. */
    public String path() {
        return path;
    }

    /** What a printmaker calls it. */
    public String words() {
        return words;
    }

    /** Unit as printed; empty for a pure number. */
    public String unit() {
        return unit;
    }

    /** Least value a fit may give. */
    public double least() {
        return least;
    }

    /** Greatest value a fit may give. */
    public double most() {
        return most;
    }

    /** Value to the coordinate in which it is fitted. */
    double coordinate(double value) {
        return logarithmic ? StrictMath.log(value) : value;
    }

    /** The coordinate's value. */
    double value(double coordinate) {
        return logarithmic ? StrictMath.exp(coordinate) : coordinate;
    }

    /** Width of the allowed range in that coordinate. */
    double range() {
        return coordinate(most) - coordinate(least);
    }

    /** Derivative of the value by its coordinate. */
    double slope(double value) {
        return logarithmic ? value : 1;
    }
}
