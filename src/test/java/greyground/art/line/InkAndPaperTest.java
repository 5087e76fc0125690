package greyground.art.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import greyground.art.OutsideTools;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InkAndPaperTest {
    /** Worked by hand from the paper's formulas. */
    @Test
    void sixGreysArePartedAfterTheThird() {
        InkAndPaper found = InkAndPaper.of(new long[] {8, 7, 2, 6, 9, 4});
        assertEquals(2, found.last());
        assertEquals(0.842645, found.separation(), 1e-6);
        assertEquals(11 / 17.0, found.ink(), 1e-12);
        assertEquals((18 + 36 + 20) / 19.0, found.paper(), 1e-12);
    }

    /** Two bells at 60 and 200, with deviations of 15 and 20: numpy gives these. */
    @ParameterizedTest
    @CsvSource({"0.1, 129, 0.82520", "0.5, 129, 0.94083"})
    void twoBellsArePartedBetweenThem(double share, double last, double separation) {
        long[] counts = new long[256];
        for (int grey = 0; grey < 256; grey++) {
            double dark = share / 15 * Math.exp(-0.5 * Math.pow((grey - 60) / 15.0, 2));
            double light = (1 - share) / 20 * Math.exp(-0.5 * Math.pow((grey - 200) / 20.0, 2));
            counts[grey] = Math.round(1e9 * (dark + light));
        }
        InkAndPaper found = InkAndPaper.of(counts);
        assertEquals(last, found.last());
        assertEquals(separation, found.separation(), 2e-3);
        assertEquals(130, (found.ink() + found.paper()) / 2, 2.5);
    }

    @Test
    void whatIsPartedByNothingIsPartedInTheMiddleOfIt() {
        InkAndPaper found = InkAndPaper.of(new long[] {5, 0, 0, 0, 0, 5});
        assertEquals(2, found.last());
        assertEquals(1, found.separation(), 1e-12);
    }

    @Test
    void oneGreyIsNoDrawing() {
        InkAndPaper found = InkAndPaper.of(new long[] {0, 9, 0});
        assertFalse(found.apart());
        assertEquals(1, found.ink());
    }

    @Test
    void scikitImagePartsAlike(@TempDir Path folder) throws Exception {
        String python = OutsideTools.python("import skimage.filters, numpy");
        Random random = new Random(5);
        for (int trial = 0; trial < 4; trial++) {
            long[] counts = new long[64];
            Arrays.setAll(counts, i -> 1 + random.nextInt(1000));
            String listed = Arrays.stream(counts).mapToObj(Long::toString).collect(Collectors.joining(","));
            String said = OutsideTools.run(
                    folder,
                    List.of(
                            python,
                            "-c",
                            "import numpy, skimage.filters as f\nh=numpy.array([" + listed
                                    + "])\nprint(f.threshold_otsu(hist=(h, numpy.arange(64))))"),
                    null);
            assertEquals(
                    Double.parseDouble(said.strip()), InkAndPaper.of(counts).last(), 1e-9, listed);
        }
    }
}
