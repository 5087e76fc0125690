package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class LinesResponseTest extends PlateResponseContract {
    @Override
    protected List<PlateResponse> responses() {
        return List.of(
                new LinesResponse(180, 8, 0.03, 0.85),
                new LinesResponse(120, 0, 0.01, 0.9),
                new LinesResponse(200, 12, 0, 0.8),
                new LinesResponse(166, 0, 0, 1));
    }

    /** Growth is geometry, a printed half at n = 1.7 has density 0.485318 (Yule and Nielsen 1951), lightness is CIE 15:2004's. */
    @Test
    void theChainIsGrowthThenGainThenLightness() {
        LinesResponse response = new LinesResponse(100, 10, 0.02, 0.8);
        assertEquals(Lightness.ofDensity(0.485318), response.lightness(0.3), 1e-3);
        assertEquals(94.7791, response.lightness(0), 1e-4);
    }
}
