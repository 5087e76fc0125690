package greyground.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.app.chart.WedgeWork;
import greyground.app.files.KeptFiles;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.fit.FitParameter;
import greyground.fit.MeasuredResponse;
import greyground.grain.Grain;
import greyground.raster.Progress;
import greyground.scan.ChartReader;
import greyground.scan.ScanChoices;
import greyground.scan.ScanReading;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The calibration loop in invented workshops of hidden numbers. The same as {@code greyground.bench.CalibrationStudy} runs hundreds of
 * times (docs/calibration.md), in a few cases. The bounds are the project's aims.
 */
class SimulatedShopIT {
    private static final int READ = 24;
    private static final int SHOPS = 2;

    @TempDir
    private static Path folder;

    /** The right chart in every case, and half of all fields within 0.7 L* of how they were printed. */
    @Test
    void scansOfTheRightPlateAreFoundAndReadTrue() throws Exception {
        List<Double> errors = new ArrayList<>();
        List<Integer> rounds = Sweep.rounds(READ);
        for (int round : rounds) {
            long seed = 500 + round;
            Random random = new Random(seed);
            double[] size = seed % 3 == 0 ? new double[] {100, 30} : new double[] {60, 80};
            Recipe.Kind kind = seed % 3 == 0 ? Recipe.Kind.STRIP : Recipe.Kind.FULL;
            Grain grain = new Grain.Stochastic(seed % 2 == 0 ? 180 : 220, 1);
            double ppi = new double[] {300, 300, 400, 600}[(int) (seed % 4)];
            SimulatedShop.Case given = SimulatedShop.of(seed, seed % SHOPS, grain, kind, size, Scanner.of(ppi, random))
                    .made();
            ReadingTrial trial = ReadingTrial.of(given);
            assertTrue(trial.found(), "seed " + seed + ": " + trial.refusal());
            // A tenth of a field's side at the least: else rims are read.
            assertTrue(trial.placeError() < 300, "seed " + seed + " is placed " + trial.placeError() + " um off");
            errors.addAll(trial.errors());
        }
        assertTrue(errors.size() > 90 * rounds.size(), errors.size() + " fields");
        assertTrue(Spread.of(errors).median() <= 0.7, Spread.of(errors).toString());
    }

    /** Same size and kind, other seed: every field stands elsewhere, so taking it would teach nonsense. */
    @Test
    void anotherPlatesChartIsNotTaken() throws Exception {
        SimulatedShop shop = SimulatedShop.of(
                7,
                1,
                new Grain.Stochastic(180, 1),
                Recipe.Kind.FULL,
                new double[] {60, 80},
                Scanner.of(300, new Random(7)));
        ReadingTrial trial = ReadingTrial.of(shop.made(), shop.anotherChart());
        assertFalse(trial.found());
        assertEquals(1, trial.refusal().lines().count(), trial.refusal());
    }

    static List<Long> workshops() {
        return Sweep.of(List.of(1000L, 3000L));
    }

    /**
     * Workshops that differ from the assumed one by more than 8 L* somewhere; a plate through the measured curve prints every attainable
     * tone within 2 L*. Shop 3000 holds a coarser dot and bites deeper under its edges; 1000 has a weak ink and little optical gain.
     */
    @ParameterizedTest
    @MethodSource("workshops")
    void thePlateAfterTheTestPrintsAsWished(long workshop) throws Exception {
        CalibrationTrial trial =
                CalibrationTrial.of(workshop, new Grain.Stochastic(180, 1), new double[] {60, 80}, 1, workshop == 1000);
        assertTrue(
                CalibrationTrial.worst(trial.uncalibrated()) > 8,
                trial.uncalibrated().toString());
        assertTrue(
                CalibrationTrial.worst(trial.calibrated()) <= 2,
                trial.calibrated().toString());
        if (trial.lesson().isPresent()) {
            CalibrationTally tally = new CalibrationTally();
            tally.add(trial.lesson().get(), trial.given().shop().shop());
            // The bar gauge was read, so the pad's radius is claimed whatever else is.
            assertTrue(
                    tally.counts().get(FitParameter.PAD_RADIUS)[1] == 1,
                    trial.lesson().get().figures().toString());
            assertTrue(
                    tally.held() >= 0.9 * tally.determined(),
                    trial.lesson().get().figures().toString());
        }
    }

    /** Film bits of the command's own PDF, bitten whole with hidden numbers: no painted print in between. */
    @Test
    void theFilmsOwnBitsAreReadBack() throws Exception {
        Path pdf = folder.resolve("test.pdf");
        WedgeWork.of(
                        Map.of("kind", "full", "plate", "60x80mm", "resolution", "720", "grain", "260um"),
                        Optional.empty(),
                        Workshop.assumed(),
                        "2026-03-31")
                .make(pdf, Progress.NONE);
        HiddenWorkshop shop = HiddenWorkshop.of(12);
        Canvas canvas = BittenFilm.read(pdf).print(shop.truth(), 40, 36);
        TestPlate chart = KeptFiles.chart(pdf);
        Scanner scanner = Scanner.of(300, new Random(4));
        SimulatedScan scan = scanner.scan(
                canvas, chart.recipe().widthMicrometres(), chart.recipe().heightMicrometres(), new Random(4));
        ScanReading reading = ChartReader.read(
                scan.plane(),
                chart,
                new ScanChoices(
                        List.of(),
                        List.of(),
                        Optional.of(scanner.flare()),
                        PaintedPrint.lightness(
                                Math.pow(10, -shop.truth().paper().density()))),
                Progress.NONE);
        assertEquals(
                chart.patches().size(),
                reading.patches().size(),
                reading.notes().toString());
        MeasuredResponse measured = MeasuredResponse.of("bitten film", reading.patches());
        // The same plates as even tones, each of its own piece of grain.
        ShopTones tones = new ShopTones(shop.truth(), shop.plate(new Grain.Stochastic(260, 1), 720), 36);
        List<Double> errors = new ArrayList<>();
        measured.levels().forEach(level -> errors.add(level.lightness() - tones.lightness(level.coverage())));
        assertTrue(Spread.of(errors).median() <= 0.7, errors.toString());
    }
}
