package greyground.wedge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.PlateConditions;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The fit on a plate in closed form; the virtual plate itself is in {@link PlateFitIT}. */
class PlateFitTest {
    private static final double[] COVERAGES = InventedPlate.COVERAGES;
    private static final Set<FitParameter> FOUR = EnumSet.of(
            FitParameter.EDGE_SHIFT, FitParameter.PAD_RADIUS, FitParameter.INK_SATURATION, FitParameter.OPTICAL_GAIN);

    private static PlateFit fit(PlateConditions hidden, Set<FitParameter> asked, List<FitReading> readings, long seed) {
        FitModel model = SimplePlate.at(COVERAGES);
        List<MeasuredLevel> levels = HiddenShop.read(COVERAGES, model.lightness(hidden), 0.6, new Random(seed));
        return PlateFit.of(HiddenShop.BELIEVED, model, levels, readings, asked);
    }

    /** Intervals must hold the hidden value in at least nine cases of ten. */
    @Test
    void intervalsHoldTheHiddenNumbers() {
        int inside = 0;
        int determined = 0;
        for (long seed = 1; seed <= 150; seed++) {
            PlateConditions hidden = HiddenShop.hidden(FOUR, new Random(1000 + seed));
            for (FittedFigure figure : fit(hidden, FOUR, List.of(), seed).figures()) {
                if (figure instanceof FittedFigure.Determined found) {
                    determined++;
                    double truth = found.parameter().of(hidden);
                    inside += truth >= found.low() && truth <= found.high() ? 1 : 0;
                }
            }
        }
        assertTrue(determined > 400, determined + " determined of 600");
        assertTrue(inside >= 0.9 * determined, inside + " of " + determined);
    }

    /** Where all four are determined; the rest hold a number that was left open at a wrong value. */
    @Test
    void noiselessReadingsGiveTheHiddenNumbersBack() {
        int whole = 0;
        for (long seed = 1; seed <= 10; seed++) {
            PlateConditions hidden = HiddenShop.hidden(FOUR, new Random(seed));
            FitModel model = SimplePlate.at(COVERAGES);
            double[] lightness = model.lightness(hidden);
            List<MeasuredLevel> levels = new ArrayList<>();
            for (int i = 0; i < lightness.length; i++) {
                levels.add(new MeasuredLevel(COVERAGES[i], lightness[i], 3, 0, 30));
            }
            PlateFit fit = PlateFit.of(HiddenShop.BELIEVED, model, levels, List.of(), FOUR);
            if (fit.changes(path -> "assumed").size() < FOUR.size()) {
                continue;
            }
            whole++;
            assertTrue(fit.misfit() < 0.05, "misfit " + fit.misfit());
            for (FittedFigure figure : fit.figures()) {
                if (figure instanceof FittedFigure.Determined found) {
                    double truth = found.parameter().of(hidden);
                    double off = found.parameter().coordinate(found.value())
                            - found.parameter().coordinate(truth);
                    assertEquals(0, off, 0.005 * found.parameter().range(), found.words());
                }
            }
        }
        assertTrue(whole >= 7, whole + " of 10");
    }

    @Test
    void whatNothingDependsOnStaysAndIsSaidToStay() {
        Set<FitParameter> asked = EnumSet.of(FitParameter.INK_SATURATION, FitParameter.SMALLEST_LAND);
        PlateFit fit = fit(HiddenShop.BELIEVED, asked, List.of(), 1);
        FittedFigure.Undetermined land = assertInstanceOf(
                FittedFigure.Undetermined.class,
                fit.figure(FitParameter.SMALLEST_LAND).orElseThrow());
        assertEquals(6, land.before());
        assertTrue(land.words().contains("nothing that was measured depends on it"), land.words());
        assertEquals(6, FitParameter.SMALLEST_LAND.of(fit.conditions()));
        assertEquals(1, fit.changes(path -> "assumed").size());
    }

    /** This plate sees only the sum of edge shift and undercut: knowing neither, it may claim neither closely. */
    @Test
    void numbersThatReplaceEachOtherAreNotClaimed() {
        Set<FitParameter> both = EnumSet.of(FitParameter.EDGE_SHIFT, FitParameter.ETCH_FACTOR);
        for (long seed = 1; seed <= 20; seed++) {
            PlateConditions hidden = HiddenShop.hidden(both, new Random(seed));
            PlateFit fit = fit(hidden, both, List.of(), seed);
            List<FittedFigure> open = fit.figures().stream()
                    .filter(FittedFigure.Undetermined.class::isInstance)
                    .toList();
            assertFalse(open.isEmpty(), "seed " + seed);
            assertFalse(open.get(0).words().contains("nothing that was measured"), "seed " + seed);
            for (FittedFigure figure : fit.figures()) {
                if (figure instanceof FittedFigure.Determined found) {
                    double truth = found.parameter().of(hidden);
                    assertTrue(truth >= found.low() && truth <= found.high(), "seed " + seed + " " + found.words());
                }
            }
        }
    }

    /** An undercut seen under a loupe parts the two. */
    @Test
    void aDirectReadingTellsThemApart() {
        Set<FitParameter> both = EnumSet.of(FitParameter.EDGE_SHIFT, FitParameter.ETCH_FACTOR);
        PlateConditions hidden =
                FitParameter.EDGE_SHIFT.with(FitParameter.ETCH_FACTOR.with(HiddenShop.BELIEVED, 1.4), -3);
        FitReading loupe = FitReading.undercut(60, 60 + 2 * 35 / 1.4, 35, 4);
        PlateFit fit = fit(hidden, both, List.of(loupe), 3);
        for (FittedFigure figure : fit.figures()) {
            FittedFigure.Determined found = assertInstanceOf(FittedFigure.Determined.class, figure, figure.words());
            double truth = found.parameter().of(hidden);
            assertTrue(truth >= found.low() && truth <= found.high(), found.words());
        }
        assertTrue(fit.correlation(FitParameter.EDGE_SHIFT, FitParameter.ETCH_FACTOR)
                        .orElseThrow()
                > 0.5);
    }

    @Test
    void orderOfReadingsChangesNothing() {
        FitModel model = SimplePlate.at(COVERAGES);
        PlateConditions hidden = HiddenShop.hidden(FOUR, new Random(5));
        List<MeasuredLevel> levels = HiddenShop.read(COVERAGES, model.lightness(hidden), 3, new Random(5));
        PlateFit fit =
                PlateFit.of(HiddenShop.BELIEVED, model, levels, List.of(), EnumSet.of(FitParameter.INK_SATURATION));
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < levels.size(); i++) {
            order.add(i);
        }
        Collections.shuffle(order, new Random(2));
        FitModel mixed =
                SimplePlate.at(order.stream().mapToDouble(i -> COVERAGES[i]).toArray());
        PlateFit other = PlateFit.of(
                HiddenShop.BELIEVED,
                mixed,
                order.stream().map(levels::get).toList(),
                List.of(),
                EnumSet.of(FitParameter.INK_SATURATION));
        FittedFigure.Determined one = (FittedFigure.Determined) fit.figures().get(0);
        FittedFigure.Determined two = (FittedFigure.Determined) other.figures().get(0);
        assertEquals(one.value(), two.value(), 1e-6);
        assertEquals(one.standardError(), two.standardError(), 1e-6);
    }

    /** r = w^2 / 8h: a critical width of 0.5 mm at 20 um is 1.5625 mm (arithmetic). */
    @Test
    void aBarGaugeAloneGivesTheRadius() {
        MeasuredDepth depth = MeasuredDepth.of(19, 21, 20, 20);
        FitReading gauge = FitReading.barGauge(0.4, 0.625, depth);
        assertEquals(1.5625, gauge.value(), 1e-12);
        PlateFit fit = PlateFit.of(
                HiddenShop.BELIEVED,
                SimplePlate.at(new double[0]),
                List.of(),
                List.of(gauge, FitReading.barGauge(0.41, 0.6, depth)),
                EnumSet.of(FitParameter.PAD_RADIUS));
        assertEquals(0, fit.changes(path -> "assumed").size(), "one degree of freedom has t = 12.7: too little");
        assertEquals(0, depth.standardError() - Math.sqrt(2.0 / 3 / 4), 1e-12);
    }

    @Test
    void changesNamePathsValuesAndProvenance() {
        PlateFit fit = fit(HiddenShop.BELIEVED, FOUR, List.of(), 7);
        for (FigureChange change : fit.changes(Map.of("ink.saturationDensity", "measured 2026-01-01")::get)) {
            if (change.path().equals("ink.saturationDensity")) {
                assertEquals("measured 2026-01-01", change.beforeProvenance());
                assertEquals(1.7, change.before());
                assertEquals(1.7, change.after(), 0.2);
                assertTrue(change.words().startsWith("ink.saturationDensity: 1.7 (measured 2026-01-01) becomes"));
            }
        }
    }

    @Test
    void nothingToFitIsRefused() {
        FitModel model = SimplePlate.at(COVERAGES);
        assertThrows(Refusal.class, () -> PlateFit.of(HiddenShop.BELIEVED, model, List.of(), List.of(), FOUR));
        assertThrows(Refusal.class, () -> FitReading.barGauge(0.5, 0.4, new MeasuredDepth(20, 1)));
        assertThrows(Refusal.class, () -> FitReading.target(FitParameter.SMALLEST_LAND, 0, 10));
    }
}
