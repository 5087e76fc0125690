package greyground.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What people type, and what they are told when it can't be read. */
class TypedQuantitiesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "25mm|25",
                "2.5 cm|25",
                "1in|25.4",
                "1 IN|25.4",
                "1\"|25.4",
                "180um|0.18",
                "180 µm|0.18",
                "180μm|0.18",
                "'0,5 in'|12.7",
                ".5mm|0.5",
                "'  7mm '|7",
                "1.5m|1500",
                "3.mm|3"
            })
    void readsLengths(String text, double millimetres) {
        assertEquals(millimetres, Lengths.parseMillimetres("plate width", text), 1e-12);
        assertEquals(millimetres * 1000, Lengths.parseMicrometres("plate width", text), 1e-8);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "mm",
                "200",
                "200 furlongs",
                "1e9mm",
                "-3mm",
                "1.2.3mm",
                "12mm 5",
                "NaN",
                "9999999999mm",
                "0x10mm",
                "１２mm"
            })
    void refusesWhatIsNoLength(String text) {
        Refusal refusal = assertThrows(Refusal.class, () -> Lengths.parseMillimetres("plate width", text));
        assertTrue(refusal.getMessage().startsWith("plate width \"" + text + "\""), refusal.getMessage());
        assertTrue(refusal.getMessage().contains(": "), refusal.getMessage());
        assertEquals(Refusal.Kind.USE, refusal.kind());
    }

    @Test
    void saysWhichUnitIsMissingOrUnknown() {
        assertEquals(
                "plate width \"200\" has no unit: add mm, cm, in or µm",
                assertThrows(Refusal.class, () -> Lengths.parseMillimetres("plate width", "200"))
                        .getMessage());
        assertEquals(
                "plate width \"200 foot\" has the unknown unit \"foot\": add mm, cm, in or µm",
                assertThrows(Refusal.class, () -> Lengths.parseMillimetres("plate width", "200 foot"))
                        .getMessage());
    }

    @Test
    void aPastedPageDoesNotFillTheMessage() {
        String page = "etch\n".repeat(10_000);
        List<Consumer<String>> readers = List.of(
                text -> Lengths.parseMillimetres("x", text),
                text -> Durations.parseSeconds("x", text),
                text -> Unit.DEGREES.parse("x", text),
                text -> Unit.CELSIUS.parse("x", text),
                text -> Unit.PERCENT.parse("x", text),
                text -> Unit.DENSITY.parse("x", text),
                text -> Offset.parse("x", text),
                text -> PaperShrink.parse("x", text),
                text -> Ruling.parse("x", text),
                text -> Resolution.parse("x", text));
        for (Consumer<String> reader : readers) {
            String message =
                    assertThrows(Refusal.class, () -> reader.accept(page)).getMessage();
            assertTrue(message.length() < 250, message);
            assertFalse(message.contains("\n"));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "90 s|90",
                "90s|90",
                "12min|720",
                "1.5h|5400",
                "2:30|150",
                "1:02:30|3750",
                "1h 20min|4800",
                "2min 30s|150",
                "2 MIN|120",
                "'1,5 min'|90",
                "90:00|5400",
                "0s|0",
                "27 minutes|1620",
                "0:07.5|7.5"
            })
    void readsDurations(String text, double seconds) {
        assertEquals(seconds, Durations.parseSeconds("bite", text), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "12",
                "2:75",
                "1:75:00",
                "-5min",
                "30s 2min",
                "5min 5min",
                "5 parsec",
                "400h",
                "2:3",
                "::",
                "5min x"
            })
    void refusesWhatIsNoDuration(String text) {
        String message = assertThrows(Refusal.class, () -> Durations.parseSeconds("bite", text))
                .getMessage();
        assertTrue(message.startsWith("bite "), message);
    }

    @ParameterizedTest
    @CsvSource({
        "0,0 s",
        "7.5,7.5 s",
        "45,45 s",
        "90,90 s",
        "119.6,2 min",
        "150,2 min 30 s",
        "1620,27 min",
        "3900,1 h 5 min",
        "7200,2 h",
        "9.97,10 s"
    })
    void printsDurationsAsTheyAreSaid(double seconds, String text) {
        assertEquals(text, Durations.format(seconds));
    }

    @Test
    void printedDurationsCanBeTypedBack() {
        for (int seconds = 1; seconds < 3600; seconds += 7) {
            assertEquals(seconds, Durations.parseSeconds("bite", Durations.format(seconds)), 0.5);
        }
    }

    @Test
    void readsAngles() {
        assertEquals(45, Unit.DEGREES.parse("angle", "45"));
        assertEquals(45, Unit.DEGREES.parse("angle", "45°"));
        assertEquals(-7.5, Unit.DEGREES.parse("angle", "-7.5 deg"));
        assertThrows(Refusal.class, () -> Unit.DEGREES.parse("angle", "0.5 rad"));
        assertThrows(Refusal.class, () -> Unit.DEGREES.parse("angle", "361"));
    }

    /** 68 °F = 20 °C by definition of the scales. */
    @Test
    void readsTemperatures() {
        assertEquals(20, Unit.CELSIUS.parse("bath", "20C"));
        assertEquals(20, Unit.CELSIUS.parse("bath", "20 °C"));
        assertEquals(20, Unit.CELSIUS.parse("bath", "68F"), 1e-12);
        assertEquals(-5, Unit.CELSIUS.parse("room", "-5 c"));
        assertTrue(assertThrows(Refusal.class, () -> Unit.CELSIUS.parse("bath", "20"))
                .getMessage()
                .contains("has no unit"));
        assertThrows(Refusal.class, () -> Unit.CELSIUS.parse("bath", "300C"));
    }

    /** By its definition, D = -log10 T (functional notation of ISO 5-1:2009). */
    @Test
    void readsDensities() {
        assertEquals(1.35, Unit.DENSITY.parse("black", "9 steps"), 1e-12);
        assertEquals(1.35, Unit.DENSITY.parse("black", "4.4846 stops"), 1e-5);
        assertEquals(1.35, Unit.DENSITY.parse("black", "1,35 D"));
        assertEquals(1.35, Unit.DENSITY.parse("black", "1.35"));
        assertThrows(Refusal.class, () -> Unit.DENSITY.parse("black", "3 mm"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "60mm,80mm|60|80",
                "'60mm , 80mm'|60|80",
                "-3mm;2mm|-3|2",
                "'0,5in,1in'|12.7|25.4",
                "6cm, 80mm|60|80"
            })
    void readsOffsets(String text, double across, double down) {
        Offset offset = Offset.parse("loupe", text);
        assertEquals(across, offset.acrossMillimetres(), 1e-12);
        assertEquals(down, offset.downMillimetres(), 1e-12);
        assertEquals(offset, Offset.parse("loupe", offset.toString()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "60mm", "60,80", "60mm,80", "60mm,80mm,90mm", ",", "60mm,99m"})
    void refusesWhatIsNoOffset(String text) {
        assertThrows(Refusal.class, () -> Offset.parse("loupe", text));
    }

    @Test
    void readsPaperShrinkage() {
        assertEquals(new PaperShrink(0.7, 0.4), PaperShrink.parse("paper shrinkage", "0.7%,0.4%"));
        assertEquals(new PaperShrink(0.7, 0.4), PaperShrink.parse("paper shrinkage", "0,7 % , 0,4 %"));
        assertEquals(new PaperShrink(0.5, 0.5), PaperShrink.parse("paper shrinkage", "0.5%"));
        assertThrows(Refusal.class, () -> PaperShrink.parse("paper shrinkage", "0.7,0.4"));
        assertThrows(Refusal.class, () -> PaperShrink.parse("paper shrinkage", "70%,40%"));
    }

    @Test
    void theFilmGrowsByWhatThePaperShrinks() {
        PaperShrink shrink = new PaperShrink(0.7, 0);
        assertEquals(302.115, 300 * shrink.filmScaleAcross(), 1e-3);
        assertEquals(297.900, 300 / shrink.filmScaleAcross(), 1e-3);
        assertEquals(1, shrink.filmScaleDown());
    }

    @Test
    void readsRulingsAndResolutions() {
        assertEquals(60, Ruling.parse("ruling", "60").linesPerCentimetre());
        assertEquals(60, Ruling.parse("ruling", "60 lines/cm").linesPerCentimetre());
        assertEquals(59.0551, Ruling.parse("ruling", "150lpi").linesPerCentimetre(), 1e-4);
        assertThrows(Refusal.class, () -> Ruling.parse("ruling", "0"));
        assertEquals(1440, Resolution.parse("resolution", "1440dpi").dotsPerInch());
        assertEquals(1440, Resolution.parse("resolution", "1440").dotsPerInch());
        assertThrows(Refusal.class, () -> Resolution.parse("resolution", "12"));
    }

    /** Sheets as ISO 216:2007, tables 1 and 2, lists them. */
    @ParameterizedTest
    @CsvSource({
        "A0,841,1189",
        "A3,297,420",
        "a5,148,210",
        "A7,74,105",
        "A10,26,37",
        "B1,707,1000",
        "B5,176,250",
        "B10,31,44"
    })
    void sheetsOfTheStandardAreSizes(String name, double width, double height) {
        assertEquals(new Size(width, height), Size.parse("plate", name));
        assertEquals(new Size(height, width), Size.parse("plate", name + " landscape"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"A11", "C4", "A", "A5 portrait"})
    void noOtherSheetIsASize(String name) {
        assertThrows(Refusal.class, () -> Size.parse("plate", name));
    }
}
