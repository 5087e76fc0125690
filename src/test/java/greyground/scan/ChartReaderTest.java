package greyground.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.Area;
import greyground.chart.CheckPlate;
import greyground.chart.Recipe;
import greyground.chart.Recipe.Kind;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Painted scans of invented prints: the truth is what was painted. */
class ChartReaderTest {
    private static final TestPlate FULL = TestPlate.of(Recipe.of(Kind.FULL, new Size(60, 80), 2, 1, 75, 180));
    private static final TestPlate STRIP = TestPlate.of(Recipe.of(Kind.STRIP, new Size(100, 30), 1, 2, 75, 180));
    private static final TestPlate EXPOSURE = TestPlate.of(Recipe.of(Kind.EXPOSURE, new Size(60, 80), 2, 3, 75, 180));
    private static final TestPlate CHECK = CheckPlate.of(
                    Recipe.of(Kind.CHECK, new Size(60, 80), 2, 4, 75, 180),
                    Stream.of(0, 60, 150, 300, 450, 600, 750, 850, 900)
                            .map(level ->
                                    new CheckPlate.Tone(level, PaintedScan.usualTone(level / 1000.0), Optional.empty()))
                            .toList())
            .plate();
    static final ScanChoices PLAIN = new ScanChoices(List.of(), List.of(), Optional.of(0.0), 95);

    /** A place is right to 0.1 mm, as asked for in the plan of the work. */
    private static final double CLOSE_MICROMETRES = 100;

    private static PaintedScan painted(TestPlate plate) {
        return PaintedScan.of(plate, PaintedScan::usualTone);
    }

    static ScanReading read(GreyPlane scan, TestPlate plate) {
        return ChartReader.read(scan, plate, PLAIN, Progress.NONE);
    }

    static Stream<Arguments> scans() {
        return Stream.of(
                Arguments.of("as it hangs", FULL, painted(FULL)),
                Arguments.of("a third round", FULL, painted(FULL).turned(123)),
                Arguments.of(
                        "on its corner, coarse", FULL, painted(FULL).turned(45).at(170)),
                Arguments.of("mirrored", FULL, painted(FULL).mirrored().turned(10)),
                Arguments.of(
                        "upside down, fine", FULL, painted(FULL).turned(180).at(600)),
                Arguments.of(
                        "bent, in failing light",
                        FULL,
                        painted(FULL).bent(2, 0, 0, 3, -2, 1, 0, -2).lit((u, v) -> 1 - 0.2 * u - 0.1 * v * v)),
                Arguments.of(
                        "8 bits, noisy",
                        FULL,
                        painted(FULL).turned(-7).kept(256).noisy(0.005)),
                Arguments.of("strip", STRIP, painted(STRIP).turned(80)),
                Arguments.of(
                        "strip, bent",
                        STRIP,
                        painted(STRIP).bent(1, 0, 0, 1, 0, 0, 0, 1).turned(-30)),
                Arguments.of("check plate", CHECK, painted(CHECK).turned(170)),
                Arguments.of("exposure", EXPOSURE, painted(EXPOSURE).turned(20)),
                Arguments.of(
                        "exposure, mirrored",
                        EXPOSURE,
                        painted(EXPOSURE).mirrored().turned(200)));
    }

    /** The law of reading: place within 0.1 mm at all corners, each field's tone within 0.3 L* of what was painted. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("scans")
    void placeAndTonesAreWhatWasPainted(String name, TestPlate plate, PaintedScan painted) {
        ScanReading reading = read(painted.plane(), plate);
        Projective truth = painted.place();
        for (double x : new double[] {0, plate.recipe().widthMicrometres()}) {
            for (double y : new double[] {0, plate.recipe().heightMicrometres()}) {
                double away = Math.hypot(
                        reading.place().x(x, y) - truth.x(x, y), reading.place().y(x, y) - truth.y(x, y));
                assertTrue(away / truth.scale(x, y) < CLOSE_MICROMETRES, away / truth.scale(x, y) + " um off");
            }
        }
        assertEquals(plate.patches().size(), reading.patches().size(), reading.notes()::toString);
        for (MeasuredPatch patch : reading.patches()) {
            assertEquals(PaintedScan.usualTone(patch.coverage()), patch.lightness(), 0.3);
        }
    }

    @Test
    void mirroredAndUpsideDownAreSaid() {
        String mirrored = read(painted(STRIP).mirrored().plane(), STRIP).notes().toString();
        assertTrue(mirrored.contains("mirrored"), mirrored);
        assertFalse(mirrored.contains("upside down"), mirrored);
        String turned = read(painted(STRIP).turned(180).plane(), STRIP).notes().toString();
        assertTrue(turned.contains("upside down"), turned);
        assertFalse(turned.contains("mirrored"), turned);
    }

    /** A hair across a field moves its tone by less than 0.2 L*: ISO 5-4 asks for the field's own light. */
    @Test
    void aHairIsPassedOver() {
        Area field = FULL.patches().stream()
                .filter(patch -> patch.coveragePerMille() == 300)
                .findFirst()
                .orElseThrow()
                .area();
        Area hair = new Area(field.left(), field.top() + field.height() / 2 - 50, field.width(), 100);
        ScanReading reading = read(painted(FULL).stained(hair, 10).plane(), FULL);
        MeasuredPatch patch = reading.patches().stream()
                .filter(one -> field.left() < 1000 * one.xMillimetres()
                        && 1000 * one.xMillimetres() < field.right()
                        && field.top() < 1000 * one.yMillimetres()
                        && 1000 * one.yMillimetres() < field.bottom())
                .findFirst()
                .orElseThrow();
        assertEquals(PaintedScan.usualTone(0.3), patch.lightness(), 0.2);
    }

    @Test
    void aCoveredCornerLosesItsFieldsAndNothingElse() {
        ScanReading reading =
                read(painted(FULL).stained(new Area(0, 0, 26_000, 36_000), 95).plane(), FULL);
        assertTrue(reading.patches().size() < FULL.patches().size());
        assertTrue(reading.notes().toString().contains("left out"), reading.notes()::toString);
        assertTrue(reading.notes().toString().contains("1 of 4 codes"), reading.notes()::toString);
    }

    static Stream<Arguments> refused() {
        TestPlate other = TestPlate.of(Recipe.of(Kind.FULL, new Size(60, 80), 2, 9, 75, 180));
        return Stream.of(
                Arguments.of("blank", ArrayPlane.of(1500, 1100, (x, y) -> 55_000 + (x * 31 + y * 17) % 500)),
                Arguments.of("no test plate", ArrayPlane.of(1500, 1100, (x, y) ->
                        (int) (32_000 + 20_000 * Math.sin(x * 0.02) * Math.cos(y * 0.03)))),
                Arguments.of(other.id(), painted(other).plane()),
                Arguments.of("strip", painted(STRIP).plane()),
                Arguments.of(
                        "at the print's left",
                        painted(FULL).moved(-30, 0).margin(0).plane()),
                Arguments.of(
                        "at the print's bottom",
                        painted(FULL).moved(0, 25).margin(0).plane()),
                Arguments.of(
                        "two charts",
                        besides(painted(FULL).plane(), painted(STRIP).plane())),
                Arguments.of(
                        "a second print",
                        besides(painted(FULL).plane(), painted(FULL).turned(180).plane())),
                Arguments.of("pixels to the inch", painted(FULL).at(120).plane()),
                Arguments.of(
                        "covered",
                        painted(FULL)
                                .stained(new Area(0, 0, 41_000, 79_900), 95)
                                .plane()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("refused")
    void whatIsNotOneWholePrintIsRefusedInWords(String word, GreyPlane scan) {
        Refusal refusal = assertThrows(Refusal.class, () -> read(scan, FULL));
        assertTrue(refusal.getMessage().contains(word), refusal.getMessage());
        assertEquals(Refusal.Kind.FAILURE, refusal.kind());
        assertFalse(refusal.getMessage().contains("\n"));
    }

    private static GreyPlane besides(GreyPlane one, GreyPlane other) {
        short[] row = new short[Math.max(one.width(), other.width())];
        int height = Math.max(one.height(), other.height());
        int width = one.width() + other.width();
        short[] all = new short[width * height];
        java.util.Arrays.fill(all, (short) 52_000);
        for (int y = 0; y < height; y++) {
            if (y < one.height()) {
                one.readRow(y, row);
                System.arraycopy(row, 0, all, y * width, one.width());
            }
            if (y < other.height()) {
                other.readRow(y, row);
                System.arraycopy(row, 0, all, y * width + one.width(), other.width());
            }
        }
        return new ArrayPlane(width, height, all);
    }

    /** Corners half a millimetre off are mended; without codes they are taken as they are. */
    @Test
    void cornersGivenByHandAreMendedOrTakenAsGiven() {
        PaintedScan painted = painted(FULL).turned(5);
        double off = 0.5 * 300 / 25.4;
        List<Double> corners = painted.corners().stream().map(one -> one + off).toList();
        ScanChoices byHand = new ScanChoices(corners, List.of(), Optional.of(0.0), 95);
        ScanReading mended = ChartReader.read(painted.plane(), FULL, byHand, Progress.NONE);
        assertEquals(painted.place().x(0, 0), mended.place().x(0, 0), 1);
        assertTrue(mended.notes().toString().contains("moved onto"), mended.notes()::toString);

        PaintedScan bare = painted(STRIP);
        STRIP.codes().forEach(code -> bare.stained(code.area(), 93));
        ScanReading taken = ChartReader.read(
                bare.plane(), STRIP, new ScanChoices(bare.corners(), List.of(), Optional.of(0.0), 95), Progress.NONE);
        assertTrue(taken.notes().toString().contains("used as given"), taken.notes()::toString);
        for (MeasuredPatch patch : taken.patches()) {
            assertEquals(PaintedScan.usualTone(patch.coverage()), patch.lightness(), 0.3);
        }
        List<Double> twisted = List.of(0.0, 0.0, 500.0, 0.0, 0.0, 500.0, 500.0, 500.0);
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> ChartReader.read(
                        painted.plane(),
                        FULL,
                        new ScanChoices(twisted, List.of(), Optional.of(0.0), 95),
                        Progress.NONE));
        assertTrue(refusal.getMessage().contains("clockwise"), refusal.getMessage());
    }

    /** Where a scan is cut at the platemark, clear fields stand for paper and the words say so. */
    @Test
    void aScanWithoutPaperSaysSo() {
        ScanReading reading = read(painted(FULL).margin(0.1).plane(), FULL);
        assertTrue(reading.notes().toString().contains("no bare paper"), reading.notes()::toString);
        assertTrue(reading.paper().isEmpty());
        assertFalse(read(painted(FULL).plane(), FULL).paper().isEmpty());
    }

    /** Light that falls off from the middle leaves the paper at the corners darker than clear fields; it is paper all the same. */
    @Test
    void paperInFallingLightIsStillPaper() {
        PaintedScan dim = painted(EXPOSURE)
                .lit((u, v) -> 1 - 0.5 * ((u - 0.5) * (u - 0.5) + (v - 0.5) * (v - 0.5)))
                .at(200);
        ScanReading reading = read(dim.plane(), EXPOSURE);
        assertFalse(reading.paper().isEmpty(), reading.notes()::toString);
        for (MeasuredPatch patch : reading.patches()) {
            assertEquals(PaintedScan.usualTone(patch.coverage()), patch.lightness(), 0.3);
        }
    }

    @Test
    void clippingIsSaid() {
        ScanReading reading = read(painted(FULL).lit((u, v) -> 1.4).plane(), FULL);
        assertTrue(reading.notes().toString().contains("clipped"), reading.notes()::toString);
    }
}
