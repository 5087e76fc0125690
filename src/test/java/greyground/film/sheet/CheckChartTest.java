package greyground.film.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.CheckPlate;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CheckChartTest {
    private static CheckPlate check() {
        List<CheckPlate.Tone> tones = new ArrayList<>();
        for (int i = 0; i <= 12; i++) {
            tones.add(new CheckPlate.Tone(
                    71 * i, 94.8 - 6.61 * i, i % 2 == 0 ? Optional.empty() : Optional.of(0.0613 * i)));
        }
        return CheckPlate.of(Recipe.of(Recipe.Kind.CHECK, new Size(60, 80), 2, 3, 75, 180), tones);
    }

    @Test
    void aChartFileHoldsTheTonesAndGivesThePlateBack() {
        CheckPlate check = check();
        String text = ChartFile.text(check);
        CheckPlate read = ChartFile.readCheck(text).orElseThrow();
        assertEquals(check.plate(), read.plate());
        for (int i = 0; i < check.tones().size(); i++) {
            assertEquals(check.tones().get(i).lightness(), read.tones().get(i).lightness(), 1e-9);
            assertEquals(
                    check.tones().get(i).predictedCoverage().orElse(-1.0),
                    read.tones().get(i).predictedCoverage().orElse(-1.0),
                    1e-9);
        }
        assertEquals(check.plate(), ChartFile.read(text));
    }

    @Test
    void otherPlatesHoldNone() {
        TestPlate full = TestPlate.of(Recipe.of(Recipe.Kind.FULL, new Size(60, 80), 2, 3, 75, 180));
        String text = ChartFile.text(full);
        assertTrue(ChartFile.readCheck(text).isEmpty());
        assertTrue(!text.contains("printsAtLightness"));
    }

    @Test
    void whatIsNewerOrChangedIsRefused() {
        String text = ChartFile.text(check());
        for (String changed : List.of(
                text.replace("\"version\" : 1", "\"version\" : 2").replace("\"version\": 1", "\"version\": 2"),
                text.replaceFirst("(printsAtLightness[\\s\\S]*?\"coveragePercent\"\\s*:\\s*)7\\.1", "$17.2"),
                text.replaceFirst("(printsAtLightness[\\s\\S]*?\"lightness\"\\s*:\\s*)[0-9.]+", "$1\"much\""),
                text.replaceFirst("(printsAtLightness[\\s\\S]*?\"lightness\"\\s*:\\s*)[0-9.]+", "$1140"))) {
            assertTrue(!changed.equals(text));
            assertThrows(Refusal.class, () -> ChartFile.readCheck(changed), changed.substring(0, 120));
        }
    }
}
