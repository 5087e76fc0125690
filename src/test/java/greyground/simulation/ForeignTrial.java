package greyground.simulation;

import greyground.app.recipe.JobPlate;
import greyground.chart.Recipe;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.film.compose.GrainPatches;
import greyground.fit.FitParameter;
import greyground.fit.FitReading;
import greyground.fit.MeasuredDepth;
import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredLines;
import greyground.fit.MeasuredResponse;
import greyground.fit.PlateLesson;
import greyground.fit.SharedErrors;
import greyground.grain.Grain;
import greyground.plan.BenchConditions;
import greyground.plate.PlateProcess;
import greyground.quantity.Size;
import greyground.scan.Glare;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * A foreign shop reads its test plate and makes another plate of the same film: how far do bands about the first hold the second?
 *
 * @param shop whose physics are its own
 * @param scan of the first plate's proof
 * @param measured what was read of it
 * @param own lightness of this very plate, evenly wiped, at each level of {@code measured}
 * @param next the same of the next plate
 */
record ForeignTrial(
        ForeignShop shop, ForeignScan scan, MeasuredResponse measured, List<Double> own, List<Double> next) {
    static final Grain GRAIN = new Grain.Stochastic(180, 1);

    private static final double GAUGE_ERROR = 1.2;
    private static final double LOUPE_ERROR = 3;
    private static final double LINES_ERROR = 0.5;

    private static final TestPlate CHART = TestPlate.of(
            Recipe.of(Recipe.Kind.FULL, new Size(100, 120), 2, 1, 75, GrainPatches.spacingMicrometres(GRAIN)));

    /** The film of every foreign shop. */
    static final class Positive {
        static final JobPlate PLATE = HiddenWorkshop.of(1).plate(GRAIN, SimulatedShop.DOTS_PER_INCH);
        static final ForeignFilm FILM = ForeignFilm.of(PLATE.patches());

        private Positive() {}
    }

    static ForeignTrial of(long seed) {
        return of(seed, (shop, plate, random) -> ForeignScan.of(shop, plate, Positive.FILM, CHART, random));
    }

    /** Through a whole scan, not its fields' mean light alone. */
    static ForeignTrial scanned(long seed) {
        return of(
                seed,
                (shop, plate, random) ->
                        ForeignProof.of(shop, plate, Positive.FILM, Positive.PLATE.patches(), CHART, random));
    }

    /** How a shop reads its plate. */
    @FunctionalInterface
    private interface Reading {
        ForeignScan of(ForeignShop shop, ForeignShop.Plate plate, Random random);
    }

    private static ForeignTrial of(long seed, Reading reading) {
        ForeignShop shop = ForeignShop.of(seed);
        Random random = new Random(seed * 32_452_843 + 7);
        ForeignShop.Plate first = shop.plate(random);
        ForeignScan scan = reading.of(shop, first, random);
        MeasuredResponse measured = MeasuredResponse.of("foreign " + seed, scan.fields());
        return new ForeignTrial(
                shop, scan, measured, tones(shop, first, measured), tones(shop, shop.plate(random), measured));
    }

    private static List<Double> tones(ForeignShop shop, ForeignShop.Plate plate, MeasuredResponse measured) {
        return measured.levels().stream()
                .map(level -> PaintedPrint.lightness(
                        shop.reflectance(Positive.FILM.level((int) Math.round(1000 * level.coverage())), plate)))
                .toList();
    }

    /** Levels at which a band of that half-width about what was read holds the truth. */
    int held(List<Double> truth, ToDoubleFunction<MeasuredLevel> halfWidth) {
        int held = 0;
        for (int i = 0; i < truth.size(); i++) {
            MeasuredLevel level = measured.levels().get(i);
            held += Math.abs(truth.get(i) - level.lightness()) <= halfWidth.applyAsDouble(level) ? 1 : 0;
        }
        return held;
    }

    /** What such a shop can believe of its errors. */
    SharedErrors errors() {
        SharedErrors.ToneScale scale = switch (scan.scale()) {
            case UNSTATED -> SharedErrors.ToneScale.UNSTATED;
            case STATED -> SharedErrors.ToneScale.STATED;
            case WEDGE -> SharedErrors.ToneScale.WEDGE;
        };
        double untold = scan.seen()
                .filter(Glare::isSure)
                .map(glare -> SharedErrors.glareSeen(scale, glare.share(), glare.error()))
                .orElse(SharedErrors.GLARE_UNTOLD);
        return new SharedErrors(
                scale,
                Double.isNaN(scan.glareTold()) ? untold : SharedErrors.GLARE_TOLD,
                SharedErrors.PAPER_MEASURED,
                GrainPatches.spacingMicrometres(GRAIN));
    }

    /** What the plate teaches: with the bar gauge read in every second shop, and the undercut seen under a loupe in every fourth. */
    PlateLesson lesson(double widestPixelMicrometres) {
        Random random = new Random(shop.seed * 86_028_121 + 3);
        Workshop believed = Workshop.assumed()
                .with("paper.whiteDensity", Figure.assumed(shop.paperDensity, "as its densitometer says"));
        MeasuredDepth gauge = new MeasuredDepth(shop.depth + GAUGE_ERROR * random.nextGaussian(), GAUGE_ERROR);
        List<FitReading> readings = new ArrayList<>();
        double widened = 2 * shop.depth / 1000 / shop.etchFactor;
        if (shop.seed % 2 == 0) {
            double critical = Math.sqrt(8 * shop.padRadiusMillimetres * shop.depth / 1000) - widened;
            List<Integer> bars = Target.Bar.WIDTHS;
            int at = 0;
            while (at < bars.size() - 2 && bars.get(at + 1) / 1000.0 < critical) {
                at++;
            }
            readings.add(FitReading.barGauge(bars.get(at) / 1000.0, bars.get(at + 1) / 1000.0, gauge, 2));
        }
        if (shop.seed % 4 == 0) {
            double seen = Math.max(4, 1000 * widened + LOUPE_ERROR * random.nextGaussian());
            double factor = Math.max(0.75, Math.min(6.5, 2 * gauge.micrometres() / seen));
            readings.add(new FitReading(
                    FitParameter.ETCH_FACTOR, factor, factor * LOUPE_ERROR / seen, "undercut under a loupe"));
        }
        List<MeasuredLines> lines = new ArrayList<>();
        scan.lines().forEach((period, lightness) -> lines.add(new MeasuredLines(period, lightness, LINES_ERROR)));
        return PlateLesson.of(
                BenchConditions.ofDepth(
                        believed, new PlateProcess.EtchedFilm(), believed.usualDepthMicrometres(), true),
                gauge,
                Positive.PLATE.patches(),
                widestPixelMicrometres,
                measured,
                lines,
                readings,
                errors());
    }
}
