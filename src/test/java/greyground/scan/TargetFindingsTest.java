package greyground.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.Area;
import greyground.chart.Recipe;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.fit.FitReading;
import greyground.fit.MeasuredDepth;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Size;
import greyground.scan.ScanReading.TargetReading;
import greyground.tone.Lightness;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class TargetFindingsTest {
    private static final MeasuredDepth DEPTH = new MeasuredDepth(40, 1);
    private static final List<MeasuredPatch> TONES =
            List.of(new MeasuredPatch(0, 92, 10, 10, 1), new MeasuredPatch(0.85, 16, 20, 10, 1));

    private static List<TargetReading> bars(IntToDoubleFunction lightness) {
        List<TargetReading> bars = new ArrayList<>();
        for (int width : Target.Bar.WIDTHS.subList(5, 12)) {
            bars.add(new TargetReading(
                    new Target.Bar(new Area(1000, 1000, width, 6000), true), lightness.applyAsDouble(width)));
        }
        return bars;
    }

    private static TargetFindings.Finding gauge(List<TargetReading> bars) {
        TestPlate plate = TestPlate.of(Recipe.of(Recipe.Kind.FULL, new Size(60, 80), 2, 1, 75, 180));
        return TargetFindings.barGauge(
                new ScanReading(
                        plate,
                        new Projective(1, 0, 0, 0, 1, 0, 0, 0),
                        TONES,
                        bars,
                        List.of(),
                        Optional.empty(),
                        List.of()),
                DEPTH,
                2);
    }

    /** Bars solid up to 0.7 mm and pale from 1 mm: the same numbers as the gauge's own closed form. */
    @Test
    void theGaugeIsTheLastSolidBarAndTheFirstPaleOne() {
        TargetFindings.Finding found = gauge(bars(width -> width <= 700 ? 18 : 80));
        assertEquals(FitReading.barGauge(0.7, 1, DEPTH, 2), found.reading().orElseThrow());
    }

    @Test
    void aGaugeThatNeverTurnsOrTurnsTwiceTellsNothingAndSaysWhy() {
        assertTrue(gauge(bars(width -> 18)).words().contains("lies above"));
        assertTrue(gauge(bars(width -> 85)).reading().isEmpty());
        TargetFindings.Finding muddled = gauge(bars(width -> width == 1000 ? 18 : width > 300 ? 80 : 18));
        assertTrue(muddled.reading().isEmpty());
        assertTrue(muddled.words().contains("loupe"), muddled.words());
        assertTrue(gauge(List.of()).words().contains("too coarse"));
        assertTrue(gauge(bars(width -> 90)).reading().isEmpty());
    }

    private static List<TargetReading> dots(IntToDoubleFunction lightness) {
        return Target.Dots.DIAMETERS.stream()
                .map(diameter -> new TargetReading(
                        new Target.Dots(new Area(1000, 1000, 1500, 2000), diameter, Math.max(60, 3 * diameter)),
                        lightness.applyAsDouble(diameter)))
                .toList();
    }

    @Test
    void theSmallestOpeningLiesBetweenTheLastLostAndTheFirstPrintedRow() {
        TargetFindings.Finding found = TargetFindings.smallestOpening(dots(d -> d < 28 ? 91.5 : 70 + d / 10.0), TONES);
        FitReading reading = found.reading().orElseThrow();
        assertEquals(24, reading.value(), 1e-9);
        assertEquals("20 µm lost and 28 µm held", reading.how());
        // All print: clear fields are much lighter than the smallest dots' ground.
        TargetFindings.Finding all = TargetFindings.smallestOpening(dots(d -> 60 + d / 20.0), TONES);
        assertTrue(all.words().contains("lies below"), all.words());
        TargetFindings.Finding none = TargetFindings.smallestOpening(dots(d -> 91.6), TONES);
        assertTrue(none.words().contains("lies above"), none.words());
        assertTrue(TargetFindings.smallestOpening(List.of(), TONES).reading().isEmpty());
    }

    @Test
    void aLandThatHoldsMakesItsBandPrintOtherwise() {
        List<TargetReading> holes = Target.Dots.DIAMETERS.stream()
                .map(diameter -> new TargetReading(
                        new Target.Holes(new Area(1000, 1000, 1500, 600), diameter, Math.max(60, 2 * diameter)),
                        diameter < 40 ? 28.5 : diameter < 112 ? 18 : 28.5))
                .toList();
        FitReading reading = TargetFindings.smallestLand(holes).reading().orElseThrow();
        assertEquals("28 µm lost and 40 µm held", reading.how());
    }

    /**
     * Line pairs painted half black, half clear, seen at 600 ppi: their mean light is half of both for every period, however many lines the
     * field holds, since only whole periods are read. Fields hold 4.75 to 47 periods.
     */
    @Test
    void linePairsAreReadOverWholePeriods() {
        TestPlate plate = TestPlate.of(Recipe.of(Recipe.Kind.EXPOSURE, new Size(60, 80), 2, 3, 75, 180));
        PaintedScan painted = PaintedScan.of(plate, PaintedScan::usualTone).at(600);
        for (Target target : plate.targets()) {
            if (target instanceof Target.Lines lines && lines.period() >= 200) {
                Area area = lines.area();
                painted.stained(area, 93);
                for (int x = 0; x < area.width(); x += lines.period()) {
                    int width = Math.min(lines.period() / 2, area.width() - x);
                    painted.stained(new Area(area.left() + x, area.top(), width, area.height()), 20);
                }
            }
        }
        double half = Lightness.ofLuminance((Lightness.toLuminance(93) + Lightness.toLuminance(20)) / 2);
        int read = 0;
        for (TargetReading one : ChartReaderTest.read(painted.plane(), plate).targets()) {
            if (one.target() instanceof Target.Lines lines && (lines.period() == 200 || lines.period() == 400)) {
                read++;
                assertEquals(half, one.lightness(), 0.6, lines::toString);
            }
        }
        assertTrue(read > 0);
    }

    /** Each strip of an exposure test gets its own fields and targets, all of them once. */
    @Test
    void stripsShareOutWhatWasRead() {
        TestPlate plate = TestPlate.of(Recipe.of(Recipe.Kind.EXPOSURE, new Size(100, 150), 2, 1, 75, 180));
        ScanReading reading = ChartReaderTest.read(
                PaintedScan.of(plate, PaintedScan::usualTone).at(200).plane(), plate);
        List<StripReading> strips = StripReading.of(reading);
        assertEquals(plate.strips().size(), strips.size());
        assertEquals(
                reading.patches().size(),
                strips.stream().mapToInt(strip -> strip.patches().size()).sum());
        assertEquals(
                reading.targets().size(),
                strips.stream().mapToInt(strip -> strip.targets().size()).sum());
        assertEquals(9, strips.get(0).patches().size());
        for (int i = 1; i < strips.size(); i++) {
            assertTrue(strips.get(i).patches().get(0).yMillimetres()
                    > strips.get(i - 1).patches().get(0).yMillimetres());
        }
    }
}
