package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EnlargedRowsTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"17, 100", "64, 64", "200, 31", "3, 50", "1, 9", "5, 3"})
    void uniformArtStaysExact(int artSide, int filmSide) {
        for (int grey : new int[] {0, 1, 12_345, 65_534, 65_535}) {
            int[] film = enlarge(ArrayPlane.uniform(artSide, artSide, grey), filmSide, filmSide);
            for (int got : film) {
                assertEquals(grey, got);
            }
        }
    }

    @Test
    void samePixelsAtScaleOne() {
        ArrayPlane art = noise(23, 19);
        assertArrayEquals(greys(art), enlarge(art, 23, 19));
    }

    @Test
    void readingAnAxisFromItsOtherEndMirrorsTheFilm() {
        ArrayPlane art = noise(40, 30);
        ResampleAxis across = ResampleAxis.of(113, 0, 40 / 113.0, 40);
        ResampleAxis down = ResampleAxis.of(67, 0, 30 / 67.0, 30);
        int[] plain = run(art, across, down);
        int[] turned = run(art, across.reversed(), down.reversed());
        for (int i = 0; i < plain.length; i++) {
            assertEquals(plain[i], turned[plain.length - 1 - i]);
        }
    }

    @Test
    void pastTheEdgeTheMirrorImageContinues() {
        ArrayPlane art = noise(8, 8);
        ResampleAxis across = ResampleAxis.of(40, -16, 1, 8);
        ResampleAxis down = ResampleAxis.of(8, 0, 1, 8);
        int[] film = run(art, across, down);
        for (int y = 0; y < 8; y++) {
            for (int x = 0; x < 40; x++) {
                int place = Math.floorMod(x - 16, 16);
                assertEquals(greys(art)[y * 8 + Math.min(place, 15 - place)], film[y * 40 + x]);
            }
        }
    }

    @Test
    void startPutsTheSignOfEverySumOnTheSideOfItsGrey() {
        Random random = new Random(5);
        for (int round = 0; round < 20_000; round++) {
            int sum = random.nextInt(1_280_000_001) - 640_000_000;
            int limit = random.nextInt(65_537);
            assertEquals(EnlargedRows.grey(sum) < limit, sum + EnlargedRows.start(limit) < 0, sum + " " + limit);
        }
        for (int limit : new int[] {0, 1, 65_535, 65_536}) {
            for (int sum : new int[] {-640_000_000, 0, 640_000_000}) {
                assertEquals(EnlargedRows.grey(sum) < limit, sum + EnlargedRows.start(limit) < 0);
            }
        }
    }

    /** Hard checks and stripes drive the kernel to its widest overshoot; a sum that left its bounds would wrap. */
    @Test
    void noArtDrivesASumPastItsBounds() {
        for (int period = 1; period <= 4; period++) {
            int half = period;
            ArrayPlane art = ArrayPlane.of(60, 60, (x, y) -> ((x / half) + (y / half)) % 2 == 0 ? 0 : 65_535);
            ResampleAxis axis = ResampleAxis.of(997, 0, 60 / 997.0, 60);
            EnlargedRows rows = new EnlargedRows(art, axis, axis, 0);
            int[] sums = new int[997];
            for (int y = 0; y < 997; y++) {
                java.util.Arrays.fill(sums, 0);
                rows.turnTo(y);
                rows.addTo(sums, 0, 997);
                for (int sum : sums) {
                    assertTrue(Math.abs((long) sum) < EnlargedRows.BEYOND);
                }
            }
        }
    }

    /**
     * Against Pillow's Lanczos resize of 32-bit float images, enlarging and reducing. Our weights are 13-bit numbers and rows
     * between the two passes whole greys: six weights, each off by less than 1/8192, bound the difference by 48 of 65 535
     * greys, and the bound on the mean is a tenth of that.
     */
    @ParameterizedTest
    @CsvSource({"61, 47, 173, 131", "173, 131, 61, 47", "50, 50, 50, 141"})
    void agreesWithAnIndependentLibrary(int artWidth, int artHeight, int width, int height) throws Exception {
        ArrayPlane art = noise(artWidth, artHeight);
        float[] theirs = pillow(art, width, height);
        int[] ours = enlarge(art, width, height);
        double sum = 0;
        for (int i = 0; i < ours.length; i++) {
            double held = Math.max(0, Math.min(65_535, theirs[i]));
            assertEquals(held, ours[i], 48, "pixel " + i);
            sum += Math.abs(held - ours[i]);
        }
        assertTrue(sum / ours.length < 4.8, "mean difference " + sum / ours.length);
    }

    private float[] pillow(ArrayPlane art, int width, int height) throws IOException, InterruptedException {
        Path in = folder.resolve("in.raw");
        Path out = folder.resolve("out.raw");
        ByteBuffer bytes = ByteBuffer.allocate(art.codes().length * 4).order(ByteOrder.LITTLE_ENDIAN);
        for (int grey : greys(art)) {
            bytes.putFloat(grey);
        }
        Files.write(in, bytes.array());
        String script = "from PIL import Image; import sys\n"
                + "i=Image.frombytes('F',(%d,%d),open(sys.argv[1],'rb').read())%n".formatted(art.width(), art.height())
                + "open(sys.argv[2],'wb').write(i.resize((%d,%d),Image.LANCZOS).tobytes())%n".formatted(width, height);
        String said = "no Python found";
        for (String python : new String[] {"/usr/bin/python3", "python3"}) {
            try {
                Process process = new ProcessBuilder(python, "-c", script, in.toString(), out.toString())
                        .redirectErrorStream(true)
                        .start();
                try (InputStream words = process.getInputStream()) {
                    said = new String(words.readAllBytes(), StandardCharsets.UTF_8);
                }
                if (process.waitFor() == 0) {
                    ByteBuffer back = ByteBuffer.wrap(Files.readAllBytes(out)).order(ByteOrder.LITTLE_ENDIAN);
                    float[] values = new float[width * height];
                    back.asFloatBuffer().get(values);
                    return values;
                }
            } catch (IOException absent) {
                said = absent.getMessage();
            }
        }
        assertTrue(!"true".equals(System.getenv("CI")), "python3-pil is missing, and CI must have it: " + said);
        Assumptions.abort("python3-pil is not installed here");
        return new float[0];
    }

    private static ArrayPlane noise(int width, int height) {
        Random random = new Random(11);
        return ArrayPlane.of(width, height, (x, y) -> random.nextInt(65_536));
    }

    private static int[] greys(ArrayPlane art) {
        int[] greys = new int[art.codes().length];
        for (int i = 0; i < greys.length; i++) {
            greys[i] = art.codes()[i] & 0xFFFF;
        }
        return greys;
    }

    private static int[] enlarge(GreyPlane art, int width, int height) {
        return run(
                art,
                ResampleAxis.of(width, 0, (double) art.width() / width, art.width()),
                ResampleAxis.of(height, 0, (double) art.height() / height, art.height()));
    }

    private static int[] run(GreyPlane art, ResampleAxis across, ResampleAxis down) {
        EnlargedRows rows = new EnlargedRows(art, across, down, 3);
        int width = across.count();
        int[] film = new int[width * down.count()];
        int[] sums = new int[width + 3];
        for (int y = 0; y < down.count(); y++) {
            java.util.Arrays.fill(sums, 0);
            rows.turnTo(y);
            rows.addTo(sums, 0, width + 3);
            for (int x = 0; x < width; x++) {
                film[y * width + x] = EnlargedRows.grey(sums[x + 3]);
            }
        }
        return film;
    }
}
