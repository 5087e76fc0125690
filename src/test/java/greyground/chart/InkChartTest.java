package greyground.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.InkChart.PlateTones;
import greyground.film.sheet.ChartFile;
import greyground.film.sheet.InkChartFile;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InkChartTest {
    private static final PlateTones TONES =
            new PlateTones(List.of(20, 60, 120, 200, 300, 420, 560, 720), 350, List.of(100, 250, 450, 680), 880);

    private static InkChart chart(int inks, double width, double height, int seed) {
        Recipe recipe = Recipe.of(Recipe.Kind.INKS, new Size(width, height), 2, seed, 75, 180);
        return InkChart.of(recipe, Collections.nCopies(inks, TONES), inks - 1);
    }

    private static String refusal(Runnable act) {
        String words = String.valueOf(assertThrows(Refusal.class, act::run).getMessage());
        assertEquals(1, words.lines().count());
        return words;
    }

    /** 2^N full tones three times, N ramps of eight twice, pairs at half twice, four greys; all of 8 mm, none on another or on a code. */
    @ParameterizedTest
    @CsvSource({"2, 80, 100, 50", "3, 100, 120, 82", "4, 120, 150, 128", "5, 150, 180, 200", "6, 180, 220, 322"})
    void everyFieldHasItsPlace(int inks, double width, double height, int fields) {
        InkChart chart = chart(inks, width, height, 1);
        assertEquals(fields, chart.patches().size());
        Map<InkPatch.Role, Integer> counts = new HashMap<>();
        chart.patches().forEach(patch -> counts.merge(patch.role(), 1, Integer::sum));
        IntStream.range(0, 1 << inks).forEach(plates -> assertEquals(3, counts.get(new InkPatch.Full(plates))));
        for (int plate = 0; plate < inks; plate++) {
            for (int step = 0; step < InkChart.RAMP; step++) {
                assertEquals(2, counts.get(new InkPatch.Ramp(plate, step)));
            }
        }
        assertEquals(2, counts.get(new InkPatch.Half(3)));
        assertEquals(1, counts.get(new InkPatch.Grey(3)));
        List<Area> taken = new ArrayList<>(chart.codes());
        for (InkPatch patch : chart.patches()) {
            assertTrue(patch.area().width() >= 8000 && patch.area().height() >= 8000, patch.toString());
            assertTrue(taken.stream().noneMatch(patch.area()::meets), patch.toString());
            taken.add(patch.area());
        }
    }

    @Test
    void everyPlateHasTheSameCellsAndOneCarriesTheCodes() {
        InkChart chart = chart(3, 100, 120, 1);
        for (int plate = 0; plate < 3; plate++) {
            TestPlate own = chart.plate(plate);
            assertEquals(plate == 2 ? 4 : 0, own.codes().size());
            for (int i = 0; i < chart.patches().size(); i++) {
                InkPatch patch = chart.patches().get(i);
                assertEquals(patch.area(), own.patches().get(i).area());
                boolean printed = own.patches().get(i).coveragePerMille() > 0;
                int bit = plate;
                boolean wished = patch.role() instanceof InkPatch.Full full
                        ? (full.plates() >> bit & 1) != 0
                        : patch.role() instanceof InkPatch.Ramp ramp
                                ? ramp.plate() == plate
                                : patch.role() instanceof InkPatch.Grey
                                        || patch.role() instanceof InkPatch.Half half
                                                && (half.plates() >> bit & 1) != 0;
                assertEquals(wished, printed, patch.toString());
            }
        }
        assertEquals(chart.id(), chart.print().id());
        assertEquals(chart.plate(2).codes(), chart.print().codes());
    }

    /** Another seed deals otherwise; the same the same. */
    @Test
    void theSeedDealsTheFields() {
        assertEquals(chart(3, 100, 120, 1), chart(3, 100, 120, 1));
        assertNotEquals(chart(3, 100, 120, 1).id(), chart(3, 100, 120, 2).id());
        List<InkPatch.Role> one =
                chart(3, 100, 120, 1).patches().stream().map(InkPatch::role).toList();
        List<InkPatch.Role> other =
                chart(3, 100, 120, 2).patches().stream().map(InkPatch::role).toList();
        assertTrue(IntStream.range(0, one.size())
                        .filter(i -> one.get(i).equals(other.get(i)))
                        .count()
                < one.size() / 4);
    }

    @Test
    void itsFileGivesItBackAndNoOther() {
        InkChart chart = chart(3, 100, 120, 1);
        String text = InkChartFile.text(chart);
        assertEquals(chart, InkChartFile.read(text));
        assertTrue(refusal(() -> InkChartFile.read(text.replaceFirst("\"half\" ?: ?350", "\"half\": 360")))
                .contains("but its tones make it"));
        assertTrue(refusal(() -> InkChartFile.read(text.replaceFirst("\"full\" ?: ?880", "\"full\": 700")))
                .contains("they must rise"));
        assertTrue(refusal(() -> ChartFile.read(text)).contains("add --out INKS.json"));
        String grey = ChartFile.text(TestPlate.of(Recipe.of(Recipe.Kind.STRIP, new Size(110, 40), 2, 1, 75, 180)));
        assertTrue(refusal(() -> InkChartFile.read(grey)).contains("is of a test plate in one ink"));
    }

    @Test
    void whatCannotBeIsRefused() {
        assertTrue(refusal(() -> chart(3, 60, 80, 1)).contains("too little for the 82 fields of 3 inks"));
        assertTrue(refusal(() -> chart(7, 300, 300, 1)).contains("number of test plates is 7"));
        for (int full : new int[] {720, 1001}) {
            refusal(() -> new PlateTones(TONES.ramp(), 350, TONES.greys(), full));
        }
        refusal(() -> new PlateTones(List.of(1, 2, 3), 350, TONES.greys(), 880));
        refusal(() -> new PlateTones(TONES.ramp(), 0, TONES.greys(), 880));
        refusal(() -> new PlateTones(List.of(20, 60, 120, 200, 300, 300, 560, 720), 350, TONES.greys(), 880));
    }
}
