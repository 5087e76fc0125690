package greyground.plate.neighbourhood;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.bench.NeighbourhoodTruth;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whole plates of real art, a window of each held against the engine on the pixels of the response. */
class NeighbourhoodTruthIT {
    @ParameterizedTest
    @CsvSource({
        "still-life.png, 30, 25, false",
        "gravel.png, 30, 25, false",
        "cat.png, 20, 20, false",
        "hatched-jug.png, 50, 30, false",
        "hatched-jug.png, 50, 30, true"
    })
    void printsAsTheEngineDoes(String art, double left, double top, boolean mended) throws Exception {
        Map<String, String> words = new HashMap<>(Map.of("plate", "105x74mm"));
        if (mended) {
            words.put("mend", "");
        }
        NeighbourhoodTruth.Errors errors = NeighbourhoodTruth.print(Path.of("testimages", art), left, top, 10, words);
        assertTrue(
                Math.abs(errors.bias()) < 0.1 && errors.rms() < 0.2 && errors.within() < 0.8,
                () -> art + ": " + errors);
    }
}
