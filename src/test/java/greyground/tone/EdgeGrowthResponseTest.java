package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class EdgeGrowthResponseTest extends PlateResponseContract {
    private static EdgeGrowthResponse response(DotGrowth growth, double shift, double least, double ceiling) {
        return new EdgeGrowthResponse(growth, shift, 1.7, 0.06, 1.6, least, ceiling);
    }

    @Override
    protected List<PlateResponse> responses() {
        List<PlateResponse> responses = new ArrayList<>();
        Random random = new Random(87);
        for (int i = 0; i < 6; i++) {
            double pitch = 120 + 100 * random.nextDouble();
            double shift = -3 + 15 * random.nextDouble();
            double least = 0.01 + 0.03 * random.nextDouble();
            double ceiling = 0.75 + 0.15 * random.nextDouble();
            responses.add(response(new RoundDots(pitch), shift, least, ceiling));
            responses.add(response(new SquareDots(pitch, true), shift, least, ceiling));
            responses.add(response(new DiagonalSquares(pitch), shift, least, ceiling));
            responses.add(response(new Lines(pitch), Math.abs(shift), least, ceiling));
            responses.add(response(new RandomPixels(pitch / 4), shift, least, ceiling));
            responses.add(response(new WholeDots(pitch, 40, 40), shift, least, ceiling));
        }
        responses.add(response(new ContinuousTone(), 8, 0, 1));
        responses.add(response(new RoundDots(166), 10, 0, 1));
        return responses;
    }

    /** The links of the chain by themselves: growth (geometry), Yule-Nielsen 1951, CIE 15:2004. */
    @Test
    void theChainIsGrowthThenGainThenLightness() {
        EdgeGrowthResponse response = response(new RoundDots(1e4 / 60), 10, 0, 0.9);
        double film = new RoundDots(1e4 / 60).filmCoverage(0.5, 10).orElseThrow();
        assertEquals(0.360912, film, 1e-5);
        // A printed half with n = 1.7 has density 0.485318.
        assertEquals(Lightness.ofDensity(0.485318), response.lightness(film), 1e-3);
        assertEquals(94.7791, response.lightness(0), 1e-4);
    }

    @Test
    void openingsThatDoNotWashOutPrintAsPaper() {
        EdgeGrowthResponse response = response(new RoundDots(166), 8, 0.03, 0.85);
        assertEquals(response.lightness(0), response.lightness(0.029));
        assertTrue(response.lightness(0.03) < response.lightness(0) - 1);
        assertEquals(0.03, response.usable().least());
        assertEquals(0.85, response.usable().most());
    }

    @Test
    void theTurningPointIsWhereTheLandsCloseIfThatComesFirst() {
        // Lines of 100 um that grow 10 um on both sides are solid at 80 %.
        EdgeGrowthResponse response = response(new Lines(100), 10, 0.02, 0.95);
        assertEquals(0.8, response.usable().most(), 1e-9);
    }

    @Test
    void refusesAPlateThatHoldsNoTone() {
        Refusal refusal = assertThrows(
                Refusal.class, () -> response(new Lines(30), 20, 0, 1).usable());
        assertTrue(refusal.getMessage().contains("closes every land"), refusal.getMessage());
        assertThrows(Refusal.class, () -> new EdgeGrowthResponse(new Lines(100), 5, 0.5, 0.06, 1.6, 0, 1));
        assertThrows(Refusal.class, () -> new EdgeGrowthResponse(new Lines(100), 5, 1.7, 0.06, 0.05, 0, 1));
        assertThrows(Refusal.class, () -> new EdgeGrowthResponse(new Lines(100), 5, 1.7, 0.06, 1.6, 0.5, 0.4));
    }
}
