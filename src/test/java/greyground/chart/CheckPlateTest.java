package greyground.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.fit.CheckResult;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.tone.PlateResponse;
import greyground.tone.ResponseInverse;
import greyground.tone.UsableCoverage;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CheckPlateTest {
    private static final Recipe RECIPE = Recipe.of(Recipe.Kind.CHECK, new Size(80, 100), 2, 3, 75, 180);

    /** An invented plate: paper at L* 95, a black of L* 15 at its turning point of 90 %, {@code bend} its dot gain. */
    private record Bent(double bend) implements PlateResponse {
        @Override
        public double lightness(double coverage) {
            return coverage > 0.9 ? 15 + 300 * (coverage - 0.9) : 95 - 80 * StrictMath.pow(coverage / 0.9, bend);
        }

        @Override
        public UsableCoverage usable() {
            return new UsableCoverage(0, 0.9);
        }

        @Override
        public String name() {
            return "bent " + bend;
        }
    }

    private static final Bent MEASURED = new Bent(0.6);
    private static final Bent PREDICTED = new Bent(0.8);
    private static final CheckPlate CHECK = CheckPlate.of(RECIPE, CheckPlate.tones(MEASURED, Optional.of(PREDICTED)));

    @Test
    void tonesLieAtEvenStepsAndStateWhatTheirCoveragePrints() {
        List<CheckPlate.Tone> tones = CHECK.tones();
        assertEquals(CheckPlate.TONES + 1, tones.size());
        assertEquals(0, tones.get(0).coveragePerMille());
        double step = 80.0 / CheckPlate.TONES;
        for (int i = 0; i < tones.size(); i++) {
            CheckPlate.Tone tone = tones.get(i);
            assertEquals(MEASURED.lightness(tone.coveragePerMille() / 1000.0), tone.lightness(), 0);
            // A tenth of a percent of coverage is at most half an L* here.
            assertEquals(95 - step * i, tone.lightness(), 0.5);
        }
        assertEquals(900, tones.get(tones.size() - 1).coveragePerMille());
    }

    @Test
    void everyToneStandsFourTimesAndTheCodeTellsPlatesApart() {
        assertTrue(CHECK.plate().fewestRepeats() >= 4);
        Map<Integer, Integer> count = new HashMap<>();
        CHECK.plate().patches().forEach(patch -> count.merge(patch.coveragePerMille(), 1, Integer::sum));
        assertEquals(CheckPlate.TONES + 1, count.size());
        CheckPlate other = CheckPlate.of(RECIPE, CheckPlate.tones(PREDICTED, Optional.empty()));
        assertFalse(CHECK.plate().id().equals(other.plate().id()));
        assertEquals(RECIPE, CodeText.read(CHECK.plate().codeText()).recipe());
        assertThrows(Refusal.class, () -> TestPlate.ofCode(CHECK.plate().codeText()));
    }

    private static List<MeasuredPatch> read(CheckPlate check, PlateResponse truth, double deviation, long seed) {
        Random random = new Random(seed);
        List<MeasuredPatch> patches = new ArrayList<>();
        for (LevelPatch patch : check.plate().patches()) {
            double lightness = truth.lightness(patch.coverage()) + deviation * random.nextGaussian();
            patches.add(new MeasuredPatch(patch.coverage(), Math.min(100, lightness), 1, 1, 1));
        }
        return patches;
    }

    @Test
    void aCalibrationThatHoldsIsSaidTo() {
        CheckResult result = CheckResult.of(CHECK, read(CHECK, MEASURED, 0.4, 1));
        assertEquals("within 1 L* everywhere", result.verdict());
        assertTrue(result.rootMeanSquare() < 0.4, "" + result.rootMeanSquare());
        long held = result.lines().stream()
                .filter(line -> Math.abs(line.off()) <= line.half95())
                .count();
        // Thirteen 95 % intervals: fewer than ten holding happens once in some 500 plates.
        assertTrue(held >= 10, held + " of " + result.lines().size());
    }

    @Test
    void plantedFaultsAreFoundWhereTheyLie() {
        List<MeasuredPatch> patches = new ArrayList<>();
        for (MeasuredPatch patch : read(CHECK, MEASURED, 0.2, 2)) {
            double fault = patch.coverage() > 0.7 ? 1.4 : patch.coverage() == 0 ? -2.6 : 0;
            patches.add(new MeasuredPatch(patch.coverage(), patch.lightness() + fault, 1, 1, 1));
        }
        CheckResult result = CheckResult.of(CHECK, patches);
        int dark = (int) CHECK.tones().stream()
                .filter(tone -> tone.coveragePerMille() > 700)
                .count();
        assertEquals(2, dark);
        assertTrue(
                result.verdict()
                        .matches("1 of 13 tones are off by more than 2 L\\*; bare paper prints 2\\.[4-8] L\\* too dark;"
                                + " the darkest 2 print 1\\.[2-6] L\\* too light"),
                result.verdict());
        assertEquals(0, result.worst().coverage());
    }

    /** Science sheet, section 11: s 0.02 of four readings gives a half width of 0.0318245. */
    @Test
    void intervalsAreStudents() {
        double off = 0.02 * Math.sqrt(3.0 / 4);
        List<MeasuredPatch> patches = new ArrayList<>();
        for (CheckPlate.Tone tone : CHECK.tones().subList(0, 2)) {
            for (int i = 0; i < 4; i++) {
                double lightness = tone.lightness() + (i % 2 == 0 ? off : -off);
                patches.add(new MeasuredPatch(tone.coveragePerMille() / 1000.0, lightness, 1, 1, 1));
            }
        }
        CheckResult.Line line = CheckResult.of(CHECK, patches).lines().get(0);
        assertEquals(0.02, line.spread(), 1e-9);
        assertEquals(0.0318245, line.half95(), 1e-6);
        assertEquals(0, line.off(), 1e-9);
    }

    /** What a film through the predicted response would have printed is known here: the true response at its coverage. */
    @Test
    void theFilmBeforeIsToldFromTheSamePlate() {
        CheckResult result = CheckResult.of(CHECK, read(CHECK, MEASURED, 0, 3));
        ResponseInverse predicted = new ResponseInverse(PREDICTED);
        int told = 0;
        for (CheckResult.Line line : result.lines()) {
            OptionalDouble before = line.before();
            if (before.isPresent()) {
                double printed = MEASURED.lightness(predicted.coverage(line.stated()));
                assertEquals(printed - line.stated(), before.getAsDouble(), 0.7);
                told++;
            }
        }
        assertTrue(told >= 10, "" + told);
        assertTrue(result.rootMeanSquareBefore().orElseThrow() > 5);
        CheckPlate uncalibrated = CheckPlate.of(RECIPE, CheckPlate.tones(PREDICTED, Optional.empty()));
        assertTrue(CheckResult.of(uncalibrated, read(uncalibrated, MEASURED, 0, 3))
                .rootMeanSquareBefore()
                .isEmpty());
    }

    @Test
    void fieldsOfAnotherPlateAreRefused() {
        List<MeasuredPatch> foreign = List.of(new MeasuredPatch(0.123, 50, 1, 1, 1));
        assertThrows(Refusal.class, () -> CheckResult.of(CHECK, foreign));
        assertThrows(Refusal.class, () -> CheckResult.of(CHECK, List.of()));
    }
}
