package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.art.touch.Crispness;
import greyground.raster.GreyPlane;
import greyground.raster.PlaneStore;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;
import greyground.tone.ToneCurve;
import greyground.tone.UsableCoverage;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CrispnessAgainstScipyTest {
    private static final int WIDTH = 90;
    private static final int HEIGHT = 70;

    /** L* + A s (L* - G), G by scipy.ndimage.gaussian_filter with mirrored edges, s the smooth step from 0.5 to 1.5. */
    private static final String SCRIPT = """
            import numpy as np
            from scipy.ndimage import gaussian_filter
            y = np.fromfile('art.raw', '<u2').reshape(70, 90) / 65535.0
            l = np.where(y > 216 / 24389, 116 * np.cbrt(y) - 16, 24389 / 27 * y)
            d = l - gaussian_filter(l, sigma=2, mode='reflect', truncate=3.5)
            t = np.clip((np.abs(d) - 0.5) / 1.0, 0, 1)
            (l + 0.6 * t * t * (3 - 2 * t) * d).astype('<f8').tofile('crisp.raw')
            """;

    @TempDir
    Path folder;

    @Test
    void theMaskIsWhatScipyMakesOfIt() throws Exception {
        String python = OutsideTools.python("import scipy.ndimage");
        Random random = new Random(5);
        short[] art = new short[WIDTH * HEIGHT];
        ByteBuffer raw = ByteBuffer.allocate(2 * art.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < art.length; i++) {
            art[i] = (short) Math.round(65_535 * Lightness.toLuminance(random.nextDouble(35, 65)));
            raw.putShort(art[i]);
        }
        Files.write(folder.resolve("art.raw"), raw.array());
        OutsideTools.run(folder, List.of(python, "-c", SCRIPT), null);
        ByteBuffer expected =
                ByteBuffer.wrap(Files.readAllBytes(folder.resolve("crisp.raw"))).order(ByteOrder.LITTLE_ENDIAN);
        char[] even = new char[ToneCurve.CODES];
        Crispness crispness = new Crispness(
                0.6, 60, 30, 30, ArtRange.WHOLE, new ToneCurve("even", even), 180, new UsableCoverage(0, 1));
        try (PlaneStore store = PlaneStore.open(WIDTH, HEIGHT, 1 << 20, folder)) {
            store.putRows(0, HEIGHT, art);
            try (GreyPlane plane = store.finish()) {
                crispness.rows(
                        plane,
                        2,
                        (first, count, rows) -> {
                            for (int i = 0; i < count * WIDTH; i++) {
                                assertEquals(
                                        expected.getDouble(8 * (first * WIDTH + i)),
                                        Lightness.ofLuminance((rows[i] & 0xFFFF) / 65_535.0),
                                        0.003);
                            }
                        },
                        Progress.NONE);
            }
        }
    }
}
