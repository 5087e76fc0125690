package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Samples that aren't unsigned whole numbers lie on the scale that TIFF 6.0 section 19 states, or are refused. */
class TiffNumbersTest {
    private static final int SIGNED = 2;
    private static final int FRACTIONS = 3;
    /** IEEE 754 half-precision numbers. */
    private static final int ONE = 0x3C00;

    private static final int HALF = 0x3800;

    @TempDir
    Path folder;

    private Path file(int format, int... samples) throws Exception {
        Path file = folder.resolve("numbers.tif");
        TestTiff tiff = TestTiff.of(samples.length, 1, 1, 1, samples).withShort(339, format);
        return Files.write(file, tiff.bytes());
    }

    private int[] decoded(int format, int... samples) throws Exception {
        try (GreyPlane plane = Picture.decode(file(format, samples))) {
            return Picture.samples(plane);
        }
    }

    private String refused(int format, int... samples) throws Exception {
        Path file = file(format, samples);
        return assertThrows(Refusal.class, () -> Picture.decode(file).close()).getMessage();
    }

    private static int light(double coded) {
        return (int) Math.round(65_535 * Picture.linear(coded));
    }

    @Test
    void signedSamplesSpanTheWholeRangeOfTheirType() throws Exception {
        int[] expected = {0, light(32_768 / 65_535.0), 65_535};
        assertArrayEquals(expected, decoded(SIGNED, -32_768, 0, 32_767));
    }

    @Test
    void fractionsRunFromZeroToOneAndBeyondItAreWhite() throws Exception {
        int[] expected = {0, light(32_768 / 65_535.0), 65_535, 65_535};
        assertArrayEquals(expected, decoded(FRACTIONS, 0, HALF, ONE, ONE + 0x400));
    }

    @Test
    void scalesThatCannotBeKnownAreRefused() throws Exception {
        String unsigned = refused(SIGNED, 5, 30_000);
        assertTrue(unsigned.contains("no negative number") && unsigned.contains("-32768"), unsigned);
        String reach = refused(FRACTIONS, 0, 0x5BF8);
        assertTrue(reach.contains("reach 255") && reach.contains("1 is white"), reach);
        String strange = refused(FRACTIONS, 0, 0x7E00);
        assertTrue(strange.contains("NaN"), strange);
    }
}
