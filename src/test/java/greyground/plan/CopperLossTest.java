package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plan.ExposurePlan.Line;
import greyground.plate.PlateProcess;
import greyground.plate.ToneTerms;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** By hand: copper weighs 8.96 g/cm3, so that a plate of 200 x 250 mm loses 0.448 g for each micrometre of mean depth. */
class CopperLossTest {
    private static final CopperLoss LOSS = new CopperLoss(0.4, 0.7, 40);
    private static final PlanRequest REQUEST =
            BenchOrderTest.request(new PlateProcess.EtchedFilm()).losing(LOSS);

    @Test
    void copperWeighsAreaTimesDepthTimesDensity() {
        assertEquals(5.376, CopperLoss.grams(600, 0.4 * 25), 1e-3);
        assertEquals(0.448, CopperLoss.grams(500, 1), 1e-12);
        assertEquals(28, CopperLoss.meanMicrometres(500, 28 * 0.448), 1e-9);
    }

    @Test
    void whatGoesUnderTheEdgesGrowsWithTheSquareOfTheDepth() {
        // Mean depth 0.4 h + 0.0075 h2: 28 um at 40, 11 at 20, 1 um alike at 1.
        assertEquals(28, LOSS.takenAt(40) * 40, 1e-9);
        assertEquals(11, LOSS.takenAt(20) * 20, 1e-9);
        // At 80 um 32 + 48 would be 80: all of it, and no more than all beyond.
        assertEquals(1, LOSS.takenAt(80), 1e-9);
        assertEquals(1, LOSS.takenAt(120), 1e-9);
        for (double depth : new double[] {0.5, 20, 40, 79, 100}) {
            assertEquals(depth, LOSS.depthFor(LOSS.takenAt(depth) * depth), 1e-9);
        }
        assertEquals(30, new CopperLoss(0.5, 0.5, 40).depthFor(15), 1e-9);
        assertEquals(Double.POSITIVE_INFINITY, CopperLoss.NONE.depthFor(1));
    }

    @Test
    void partsOfThePlateAddUpAndTheRestIsClearFilm() {
        List<ToneTerms> levels = List.of(level(0, 0, 0), level(0.5, 0.4, 30), level(1, 1, 40));
        CopperLoss loss = CopperLoss.of(levels, 40, Map.of(0.5, 0.25, 0.75, 0.5));
        // 0.25 x 0.4 + 0.5 x 0.7; (0.25 x 30 + 0.5 x 35) / 40
        assertEquals(0.45, loss.bareShare(), 1e-12);
        assertEquals(0.625, loss.takenShare(), 1e-12);
    }

    private static ToneTerms level(double coverage, double open, double depth) {
        return new ToneTerms(coverage, open, open, 1 - open, depth, 0, 0, 0, 0, 0, 0, 50, 0);
    }

    @Test
    void thePlanCountsUndercutAndTellsWhatTheBathDoesNext() {
        ExposurePlan plan = BenchOrder.plan(Workshop.assumed(), REQUEST);
        assertEquals("40.00 %", value(plan, "bare, of the plate"));
        assertEquals("70.00 %", value(plan, "taken, of plate x depth"));
        // k = 500 cm2 x 0.7 x 8.96e-4 / 2 L = 0.1568 g/L a micrometre. x = 2 x 0.1568 x 20 / 100 = 0.06272, so that
        // h = 100 / 0.1568 (1 - exp(-0.06272)) = 38.77 um: 12.16 g, 6.08 g/L.
        assertEquals("39 \u00b5m", value(plan, "depth expected"));
        assertEquals("12.2 g", value(plan, "copper dissolved"));
        assertEquals("6.1 g/L", value(plan, "copper in bath, after"));
        // 20 / 0.9392 = 21.29, to the half minute; 50 / 6.08 = 8.2 plates.
        assertEquals("21.5 min", value(plan, "bite of the next alike"));
        assertEquals("8 plates", value(plan, "till times double"));
    }

    @Test
    void aPlanTellsItsLossAgain() {
        ExposurePlan plan = BenchOrder.plan(Workshop.assumed(), REQUEST);
        assertEquals(LOSS, BenchOrder.loss(plan, 40).orElseThrow());
        ExposurePlan unetched =
                BenchOrder.plan(Workshop.assumed(), BenchOrderTest.request(new PlateProcess.UnetchedFilm()));
        assertTrue(BenchOrder.loss(unetched, 40).isEmpty());
    }

    private static String value(ExposurePlan plan, String label) {
        return plan.steps().stream()
                .flatMap(step -> step.lines().stream())
                .filter(line -> line.label().equals(label))
                .map(Line::value)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aWeightIsComparedAndTeachesNothingButTheBathsCopper() {
        // At 30 um measured, 0.4 x 30 + 0.0075 x 900 = 18.75 um: 8.4 g. The scale says half as much again.
        CopperWeight weight = CopperWeight.of(Workshop.assumed(), REQUEST, 12.6, OptionalDouble.of(30));
        assertEquals(8.4, weight.computedGrams(), 1e-9);
        assertEquals(1.5, weight.ratio(), 1e-9);
        assertEquals(12.6 / 0.448, weight.meanDepthMicrometres(), 1e-9);
        assertEquals(6.3, weight.copperGramsPerLitre(), 1e-9);
        String said = String.join(" ", weight.step(Workshop.assumed(), REQUEST).advice());
        assertTrue(said.contains("no etch factor is taken from it"), said);
        // Without a depth it may be the depth: 28.125 = 0.4 h + 0.0075 h2 at 40.1.
        CopperWeight alone = CopperWeight.of(Workshop.assumed(), REQUEST, 16.8, OptionalDouble.empty());
        assertEquals(
                16.8 / 0.448, 0.4 * alone.depthForWeight() + 0.0075 * StrictMath.pow(alone.depthForWeight(), 2), 1e-9);
        assertTrue(String.join(" ", alone.step(Workshop.assumed(), REQUEST).advice())
                .contains("so would one of another undercut"));
    }

    @Test
    void anotherPlatesWeightIsRefused() {
        Workshop shop = Workshop.assumed()
                .with("bath.copperGramsPerLitre", Figure.measured(10, LocalDate.of(2026, 3, 4), "log"));
        // 500 cm2 a millimetre deep all over are 448 g.
        assertThrows(Refusal.class, () -> CopperWeight.of(shop, REQUEST, 449, OptionalDouble.empty()));
        assertThrows(Refusal.class, () -> CopperWeight.of(shop, REQUEST, 0, OptionalDouble.empty()));
    }
}
