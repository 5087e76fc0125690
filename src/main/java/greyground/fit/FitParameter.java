package greyground.fit;

import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.PlateConditions;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
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
            range(-30, 50, Unit.MICROMETRES),
            false,
            FitParameter::spotGrowth,
            FitParameter::withSpotGrowth),
    /** Depth over undercut. */
    ETCH_FACTOR(
            "bath.etchFactor",
            "etch factor",
            range(0.7, 7, Unit.RATIO),
            true,
            was -> bath(was).etchFactor(),
            (was, value) -> was.withWells(bath(was).withEtchFactor(value))),
    /** Radius of the wiping pad. */
    PAD_RADIUS(
            "wipe.padRadiusMillimetres",
            "wiping pad radius",
            range(0.15, 15, Unit.MILLIMETRES),
            true,
            was -> was.wipe().padRadiusMillimetres(),
            (was, value) -> was.withWipe(was.wipe().withPadRadius(value))),
    /** Ink that wiping leaves everywhere. */
    PLATE_TONE(
            "wipe.plateToneMicrometres",
            "plate tone",
            range(0.02, 1.5, Unit.MICROMETRES),
            false,
            was -> was.wipe().plateToneMicrometres(),
            (was, value) -> was.withWipe(was.wipe().withPlateTone(Math.max(0, value)))),
    /** How soon an ink film is dense, m. */
    INK_STRENGTH(
            "ink.strengthPerMicrometre",
            "ink strength m",
            range(0.02, 1, Unit.PER_MICROMETRE),
            true,
            was -> was.ink().densityPerMicrometre(),
            (was, value) -> was.withInk(was.ink().withDensityPerMicrometre(value))),
    /** Density of a very thick ink film over the paper, D-infinity. */
    INK_SATURATION(
            "ink.saturationDensity",
            "greatest ink density",
            range(0.7, 2.5, Unit.RATIO),
            false,
            was -> was.ink().greatestDensity(),
            (was, value) -> was.withInk(was.ink().withGreatestDensity(value))),
    /** Spread of light in the paper, n of Yule and Nielsen. */
    OPTICAL_GAIN(
            "ink.yuleNielsenFactor",
            "optical gain n",
            range(1.1, 3, Unit.RATIO),
            false,
            was -> was.paper().opticalGain(),
            (was, value) -> was.withPaper(was.paper().withOpticalGain(value))),
    /** Width below which an opening doesn't wash out. */
    SMALLEST_OPENING(
            "resist.smallestOpeningMicrometres",
            "smallest opening",
            range(5, 150, Unit.MICROMETRES),
            true,
            was -> was.resist().smallestOpeningMicrometres(),
            (was, value) ->
                    was.withResist(was.resist().withSmallest(value, was.resist().smallestLandMicrometres()))),
    /** Width below which hardened film washes away. */
    SMALLEST_LAND(
            "resist.smallestLandMicrometres",
            "smallest land",
            range(5, 150, Unit.MICROMETRES),
            true,
            was -> was.resist().smallestLandMicrometres(),
            (was, value) ->
                    was.withResist(was.resist().withSmallest(was.resist().smallestOpeningMicrometres(), value)));

    private final String path;
    private final String words;
    private final Range allowed;
    private final boolean logarithmic;
    private final ToDoubleFunction<PlateConditions> present;
    private final BiFunction<PlateConditions, Double, PlateConditions> changed;

    FitParameter(
            String path,
            String words,
            Range allowed,
            boolean logarithmic,
            ToDoubleFunction<PlateConditions> present,
            BiFunction<PlateConditions, Double, PlateConditions> changed) {
        this.path = path;
        this.words = words;
        this.allowed = allowed;
        this.logarithmic = logarithmic;
        this.present = present;
        this.changed = changed;
    }

    private static Range range(double least, double most, Unit unit) {
        return new Range(least, most, unit, "read the target again, or leave it out");
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

    public double of(PlateConditions conditions) {
        return present.applyAsDouble(conditions);
    }

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

    /** The values that a fit or a reading may give. */
    public Range allowed() {
        return allowed;
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
        return coordinate(allowed.most()) - coordinate(allowed.least());
    }

    /** Derivative of the value by its coordinate. */
    double slope(double value) {
        return logarithmic ? value : 1;
    }
}
