package greyground.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.fit.MeasuredLines;
import greyground.plate.FilmPatch;
import greyground.quantity.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LinePatchTest {
    @ParameterizedTest
    @CsvSource({"40,17.64", "60,17.64", "80,17.64", "280,17.64", "400,17.64", "400,35.28", "40,35.28"})
    void blackTakesHalfAndPairsHaveTheirPeriod(int period, double pitch) {
        FilmPatch patch = LinePatch.of(period, pitch);
        int edges = 0;
        for (int x = 0; x < patch.width(); x++) {
            edges += patch.black(x, 0) && !patch.black((x + patch.width() - 1) % patch.width(), 0) ? 1 : 0;
            for (int y = 1; y < patch.height(); y++) {
                assertEquals(patch.black(x, 0), patch.black(x, y));
            }
        }
        double drawn = Math.max(period, 2 * pitch);
        assertEquals(drawn, patch.width() * pitch / edges, 0.04 * drawn, "period");
        assertTrue(Math.abs(patch.coverage() - 0.5) <= 0.5 * edges / patch.width() + 1e-9, patch.coverage() + "");
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(Refusal.class, () -> new MeasuredLines(0, 50, 1));
        assertThrows(Refusal.class, () -> new MeasuredLines(200, 101, 1));
        assertThrows(Refusal.class, () -> new MeasuredLines(200, 50, 0));
    }
}
