package greyground.simulation;

import greyground.chart.Levels;
import greyground.chart.Recipe;
import greyground.chart.Target;
import greyground.film.compose.GrainPatches;
import greyground.fit.FitParameter;
import greyground.fit.FitReading;
import greyground.fit.MeasuredLines;
import greyground.fit.MeasuredResponse;
import greyground.fit.PlateLesson;
import greyground.fit.SharedErrors;
import greyground.grain.Grain;
import greyground.plate.PrintableRange;
import greyground.plate.VirtualResponse;
import greyground.scan.ScanReading;
import greyground.scan.ScanReading.TargetReading;
import greyground.tone.ResponseInverse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The whole loop in one hidden workshop: a test plate is printed, scanned and read; its response makes a curve and its numbers a lesson;
 * the next plate is printed through the curve.
 *
 * @param reading of the scan
 * @param measured the response that the curve is made from
 * @param lesson the numbers, if they were asked for
 * @param lessonSeconds what they took
 * @param calibrated printed less wished lightness of each attainable target, through the measured curve
 * @param uncalibrated the same through the curve that the unmeasured workshop predicts
 * @param range what this workshop can truly print
 */
record CalibrationTrial(
        SimulatedShop.Case given,
        ReadingTrial reading,
        MeasuredResponse measured,
        Optional<PlateLesson> lesson,
        double lessonSeconds,
        List<Double> calibrated,
        List<Double> uncalibrated,
        PrintableRange range) {
    private static final int TARGETS = 11;
    private static final double PIXELS_PER_SPACING = 40;
    private static final double LINES_ERROR = 0.5;
    private static final double LOUPE_ERROR = 3;
    private static final double OPENING = 60;

    private static final Map<String, ResponseInverse> PREDICTED = new ConcurrentHashMap<>();

    /**
     * Runs one.
     *
     * @param workshop its seed
     * @param aids 0 for a print alone; 1 with the bar gauge read by eye; 2 with the undercut seen under a loupe as well
     */
    static CalibrationTrial of(long workshop, Grain grain, double[] size, int aids, boolean learning) throws Exception {
        Random random = new Random(workshop * 6_700_417 + 3);
        double ppi = random.nextBoolean() ? 300 : 400;
        SimulatedShop shop =
                SimulatedShop.of(workshop, workshop, grain, Recipe.Kind.FULL, size, Scanner.of(ppi, random));
        SimulatedShop.Case given = shop.made();
        ReadingTrial trial = ReadingTrial.of(given);
        ScanReading reading = trial.reading().orElseThrow(() -> new IllegalStateException(trial.refusal()));
        MeasuredResponse measured = MeasuredResponse.of("test plate", reading.patches());
        Optional<PlateLesson> lesson = Optional.empty();
        long start = System.nanoTime();
        if (learning) {
            lesson = Optional.of(PlateLesson.of(
                    shop.shop().belief(),
                    shop.shop().gauge(),
                    shop.shop().plate(grain, SimulatedShop.DOTS_PER_INCH).patches(),
                    Math.max(2.2, GrainPatches.spacingMicrometres(grain) / PIXELS_PER_SPACING),
                    measured,
                    lines(reading),
                    aids(shop.shop(), aids, random),
                    // Its scanner's coding is known, its glare told and its paper measured.
                    new SharedErrors(
                            SharedErrors.ToneScale.STATED,
                            SharedErrors.GLARE_TOLD,
                            SharedErrors.PAPER_MEASURED,
                            GrainPatches.spacingMicrometres(grain))));
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        ResponseInverse taught = new ResponseInverse(measured);
        ResponseInverse predicted = PREDICTED.computeIfAbsent(
                shop.shop().believed().paper().whiteDensity().value() + " " + grain,
                key -> new ResponseInverse(VirtualResponse.of(
                        shop.shop()
                                .plate(grain, SimulatedShop.DOTS_PER_INCH)
                                .plate(shop.shop().belief()),
                        shop.shop().plate(grain, SimulatedShop.DOTS_PER_INCH).patches())));
        PrintableRange range = range(shop);
        List<Double> after = new ArrayList<>();
        List<Double> before = new ArrayList<>();
        for (int i = 0; i < TARGETS; i++) {
            double wish = range.lightest() + (range.darkest() - range.lightest()) * i / (TARGETS - 1);
            after.add(shop.tones().lightness(taught.coverage(wish)) - wish);
            before.add(shop.tones().lightness(predicted.coverage(wish)) - wish);
        }
        return new CalibrationTrial(given, trial, measured, lesson, seconds, after, before, range);
    }

    /** From the plate's own tone to the darkest level of the test plate. */
    private static PrintableRange range(SimulatedShop shop) {
        double bare = shop.tones().lightness(0);
        double darkest = bare;
        for (int level : Levels.WEDGE) {
            darkest = Math.min(darkest, shop.tones().lightness(level / 1000.0));
        }
        return new PrintableRange(bare, bare, darkest);
    }

    static double worst(List<Double> misses) {
        return misses.stream().mapToDouble(Math::abs).max().orElse(Double.NaN);
    }

    /** One tone for each period, of the upright and the lying field. */
    private static List<MeasuredLines> lines(ScanReading reading) {
        Map<Integer, List<Double>> read = new TreeMap<>();
        for (TargetReading target : reading.targets()) {
            if (target.target() instanceof Target.Lines lines) {
                read.computeIfAbsent(lines.period(), key -> new ArrayList<>()).add(target.lightness());
            }
        }
        List<MeasuredLines> all = new ArrayList<>();
        read.forEach((period, tones) -> all.add(new MeasuredLines(
                period, tones.stream().mapToDouble(one -> one).average().orElseThrow(), LINES_ERROR)));
        return all;
    }

    private static List<FitReading> aids(HiddenWorkshop shop, int aids, Random random) {
        List<FitReading> all = new ArrayList<>();
        if (aids >= 1) {
            double critical =
                    Math.sqrt(8 * shop.secret().wipe().padRadiusMillimetres().value() * shop.depthMicrometres() / 1000);
            double widened = 2
                    * shop.depthMicrometres()
                    / 1000
                    / shop.secret().bath().etchFactor().value();
            List<Integer> bars = Target.Bar.WIDTHS;
            int at = 0;
            while (at < bars.size() - 2 && bars.get(at + 1) / 1000.0 + widened < critical) {
                at++;
            }
            all.add(FitReading.barGauge(
                    bars.get(at) / 1000.0,
                    bars.get(at + 1) / 1000.0,
                    shop.gauge(),
                    shop.believed().bath().etchFactor().value()));
        }
        if (aids >= 2) {
            double widening = 2
                    * shop.depthMicrometres()
                    / shop.secret().bath().etchFactor().value();
            double seen = OPENING + widening + LOUPE_ERROR * random.nextGaussian();
            // An opening widens by the undercut on both sides.
            double factor = 2 * shop.gauge().micrometres() / (seen - OPENING);
            double error = factor * LOUPE_ERROR / (seen - OPENING);
            all.add(new FitReading(FitParameter.ETCH_FACTOR, factor, error, "undercut under a loupe"));
        }
        return all;
    }
}
