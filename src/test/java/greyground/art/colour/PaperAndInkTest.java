package greyground.art.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.raster.GreyPlane;
import greyground.raster.PlaneStore;
import greyground.tone.ArtRange;
import java.nio.file.Path;
import java.util.Random;
import java.util.function.IntBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PaperAndInkTest {
    private static GreyPlane plane(int width, int height, IntBinaryOperator luminance) {
        PlaneStore store = PlaneStore.open(width, height, 1 << 30, Path.of("."));
        short[] row = new short[width];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                row[x] = (short) luminance.applyAsInt(x, y);
            }
            store.putRows(y, 1, row);
        }
        return store.finish();
    }

    /** A drawing: noisy paper of one luminance, strokes of another over 4 %. */
    private static GreyPlane drawing(int width, int height, double paper, double ink, long seed) {
        Random random = new Random(seed);
        return plane(width, height, (x, y) -> {
            double base = x % 50 < 2 ? ink : paper;
            return (int) (65_535 * Math.max(0, Math.min(1, base + 0.01 * random.nextGaussian())));
        });
    }

    @ParameterizedTest
    @CsvSource({"0.70, 0.05", "0.85, 0.02", "0.55, 0.10"})
    void findsPaperAndInkOfADrawing(double paper, double ink) {
        ArtRange range = PaperAndInk.find(drawing(600, 400, paper, ink, 3));
        assertEquals(ink, range.black(), 0.03);
        assertTrue(range.white() <= paper, "paper itself prints bare: " + range);
        assertEquals(paper, range.white(), 0.05);
    }

    @Test
    void aFewSpecksDoNotSetTheEnds() {
        GreyPlane clean = drawing(2100, 1600, 0.7, 0.05, 8);
        Random random = new Random(9);
        short[] row = new short[2100];
        GreyPlane specked = plane(2100, 1600, (x, y) -> {
            if (x == 0) {
                clean.readRow(y, row);
            }
            return random.nextInt(5000) == 0 ? random.nextInt(2) * 65_535 : row[x] & 0xFFFF;
        });
        ArtRange a = PaperAndInk.find(clean);
        ArtRange b = PaperAndInk.find(specked);
        assertEquals(a.white(), b.white(), 0.01);
        assertEquals(a.black(), b.black(), 0.01);
    }

    @Test
    void anEvenScaleKeepsNearlyAllOfIt() {
        ArtRange range = PaperAndInk.find(plane(512, 64, (x, y) -> x * 128));
        assertEquals(0.005, range.black(), 0.004);
        assertEquals(0.995, range.white(), 0.006);
    }

    @Test
    void flatArtGetsTheWholeScale() {
        assertEquals(ArtRange.WHOLE, PaperAndInk.find(plane(40, 40, (x, y) -> 30_000)));
        assertEquals(ArtRange.WHOLE, PaperAndInk.find(plane(1, 1, (x, y) -> 65_535)));
    }

    @Test
    void darkerArtNeverGetsALighterRange() {
        ArtRange before = ArtRange.WHOLE;
        for (double shade : new double[] {1, 0.9, 0.7, 0.5}) {
            ArtRange range = PaperAndInk.find(plane(512, 64, (x, y) -> (int) (x * 128 * shade)));
            assertTrue(range.white() <= before.white());
            before = range;
        }
    }
}
