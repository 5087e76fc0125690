package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.sight.LiveView;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ViewportTest {
    private static final Viewport.Area PLATE = new Viewport.Area(0, 0, 210, 148);

    @ParameterizedTest
    @CsvSource({"900,600", "600,900", "1,1", "3000,50"})
    void fittingShowsAllInTheMiddle(int width, int height) {
        Viewport port = Viewport.fitting(PLATE, width, height);
        assertTrue(port.pixelX(0) >= -1e-9 && port.pixelX(210) <= width + 1e-9);
        assertTrue(port.pixelY(0) >= -1e-9 && port.pixelY(148) <= height + 1e-9);
        assertEquals(width / 2.0, port.pixelX(105), 1e-9);
        assertEquals(height / 2.0, port.pixelY(74), 1e-9);
    }

    @Test
    void thePlaceUnderThePointerStaysThere() {
        Viewport port = Viewport.fitting(PLATE, 900, 600).zoomed(123, 456, 1.25, 1e-3, 10);
        Viewport before = Viewport.fitting(PLATE, 900, 600);
        assertEquals(before.planeX(123), port.planeX(123), 1e-9);
        assertEquals(before.planeY(456), port.planeY(456), 1e-9);
        assertEquals(before.perPixel() / 1.25, port.perPixel(), 1e-12);
    }

    @Test
    void trueSizeMeasuresAnInchOnTheScreen() {
        Viewport port = Viewport.fitting(PLATE, 900, 600).atScale(Viewport.trueSize(96));
        assertEquals(96, port.pixelX(25.4) - port.pixelX(0), 1e-9);
    }

    @Test
    void thePlateIsNeverLostFromSight() {
        Viewport port = Viewport.fitting(PLATE, 900, 600).dragged(1e6, -1e6).within(PLATE);
        assertTrue(port.pixelX(0) < 900 && port.pixelY(148) > 0);
    }

    /** Twice the pixels on the same part, as a finer screen asks for. */
    @Test
    void aFinerScreenSeesTheSamePart() {
        Viewport port = new Viewport(-3, 5, 0.2, 400, 300);
        LiveView view = port.view(2);
        assertEquals(new LiveView(-3, 5, 0.1, 800, 600), view);
    }

    @Test
    void rulersHaveRoundNumbersAtLeastHalfAnInchApart() {
        for (double perPixel = 0.002; perPixel < 3; perPixel *= 1.7) {
            List<RulerTicks.Tick> ticks = RulerTicks.of(-17.3, perPixel, 900).stream()
                    .filter(RulerTicks.Tick::numbered)
                    .toList();
            assertTrue(ticks.size() >= 3 && ticks.size() <= 900 / 48, ticks.size() + " ticks");
            for (RulerTicks.Tick tick : ticks) {
                assertEquals(tick.value(), Double.parseDouble(RulerTicks.words(tick.value(), perPixel)), 1e-9);
                assertEquals(tick.value(), -17.3 + tick.pixel() * perPixel, 1e-9);
            }
        }
    }
}
