package greyground.plate.neighbourhood;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.bench.NeighbourhoodTruth;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Windows of real art on whole jobs, against the engine on the pixels of the response. */
class NeighbourhoodTruthIT {
    /** Mended blacks are worse than the rest: the pad rests on specks whose place is known to a film pixel only. */
    @ParameterizedTest
    @CsvSource({
        "still-life.png, 60, 50, 0.2, 0.8, false",
        "gravel.png, 60, 50, 0.2, 0.8, false",
        "cat.png, 40, 40, 0.2, 0.8, false",
        "hatched-jug.png, 100, 60, 0.2, 0.8, false",
        "hatched-jug.png, 100, 60, 0.35, 1.5, true"
    })
    void printsAsTheEngineDoes(String art, double left, double top, double rms, double within, boolean mended)
            throws Exception {
        NeighbourhoodTruth.Errors errors = NeighbourhoodTruth.print(
                Path.of("testimages", art), left, top, 5, mended ? Map.of("mend", "") : Map.of());
        assertTrue(Math.abs(errors.bias()) < 0.1 && errors.rms() < rms && errors.within() < within, errors.toString());
    }
}
