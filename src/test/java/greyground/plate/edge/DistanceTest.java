package greyground.plate.edge;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.awt.image.Raster;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ForkJoinPool;
import java.util.function.DoubleBinaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DistanceTest {
    private static final String SCIPY = """
            import sys, numpy as np
            from scipy.ndimage import distance_transform_edt
            w, h = int(sys.argv[1]), int(sys.argv[2])
            while data := sys.stdin.buffer.read(w * h):
                out = distance_transform_edt(np.frombuffer(data, dtype=np.uint8).reshape(h, w) == 0)
                sys.stdout.buffer.write(np.rint(out * out).astype('<f4').tobytes())
                sys.stdout.buffer.flush()
            """;

    /** Random at several densities, grain, and shapes that defeat approximate or careless transforms. */
    static Map<String, boolean[]> bitmaps(int width, int height) {
        Map<String, boolean[]> bitmaps = new TreeMap<>();
        Random random = new Random(11);
        for (double density : new double[] {0.002, 0.02, 0.3, 0.9}) {
            boolean[] mask = new boolean[width * height];
            for (int i = 0; i < mask.length; i++) {
                mask[i] = random.nextDouble() < density;
            }
            bitmaps.put("random " + density, mask);
        }
        float[] noise = new float[width * height];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) random.nextGaussian();
        }
        float[] smooth = Softening.gaussian(noise, new Grid(width, height, 1, Rim.WRAPPED), 3);
        boolean[] grain = new boolean[width * height];
        boolean[] corner = new boolean[width * height];
        boolean[] diagonal = new boolean[width * height];
        boolean[] circle = new boolean[width * height];
        boolean[] checks = new boolean[width * height];
        boolean[] comb = new boolean[width * height];
        for (int i = 0; i < grain.length; i++) {
            int x = i % width;
            int y = i / width;
            grain[i] = smooth[i] > 0.02;
            diagonal[i] = x == y;
            // Sites at nearly one distance from a common centre: every pixel near it has many near-ties.
            double r = Math.hypot(x - width / 2.0, y - height / 2.0);
            circle[i] = Math.abs(r - Math.min(width, height) / 2.5) < 0.5;
            checks[i] = ((x + y) & 1) == 0;
            comb[i] = x % 7 == 0 && y < height - 1 - x % 13;
        }
        corner[width - 1] = true;
        bitmaps.put("grain", grain);
        bitmaps.put("one pixel in a corner", corner);
        bitmaps.put("diagonal line", diagonal);
        bitmaps.put("circle of near-ties", circle);
        bitmaps.put("checks", checks);
        bitmaps.put("comb", comb);
        bitmaps.put("photograph", photograph(width, height));
        bitmaps.put("empty", new boolean[width * height]);
        return bitmaps;
    }

    /** A real picture, gravel, cut at its mean. */
    private static boolean[] photograph(int width, int height) {
        try {
            Raster picture = ImageIO.read(new File("testimages/gravel.png")).getRaster();
            boolean[] bits = new boolean[width * height];
            long sum = 0;
            for (int i = 0; i < bits.length; i++) {
                sum += picture.getSample(i % width % picture.getWidth(), i / width % picture.getHeight(), 0);
            }
            for (int i = 0; i < bits.length; i++) {
                int sample = picture.getSample(i % width % picture.getWidth(), i / width % picture.getHeight(), 0);
                bits[i] = (long) sample * bits.length > sum;
            }
            return bits;
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    private static float[] naive(boolean[] set, Grid grid) {
        float[] squared = new float[set.length];
        for (int i = 0; i < set.length; i++) {
            long best = Long.MAX_VALUE;
            for (int j = 0; j < set.length; j++) {
                if (set[j]) {
                    long dx = Math.abs(i % grid.width() - j % grid.width());
                    long dy = Math.abs(i / grid.width() - j / grid.width());
                    if (grid.rim() == Rim.WRAPPED) {
                        dx = Math.min(dx, grid.width() - dx);
                        dy = Math.min(dy, grid.height() - dy);
                    }
                    best = Math.min(best, dx * dx + dy * dy);
                }
            }
            squared[i] = best == Long.MAX_VALUE ? Float.POSITIVE_INFINITY : best;
        }
        return squared;
    }

    @ParameterizedTest
    @EnumSource(Rim.class)
    void equalsTheDistanceFoundByTryingEveryPixel(Rim rim) {
        for (int[] size : new int[][] {{41, 29}, {32, 32}, {1, 33}, {50, 1}}) {
            Grid grid = new Grid(size[0], size[1], 1, rim);
            bitmaps(size[0], size[1])
                    .forEach((name, set) -> assertArrayEquals(
                            naive(set, grid), Distance.squaredPixels(set, true, grid), name + " " + grid));
        }
    }

    @Test
    void equalsAnIndependentLibrarysTransform() throws Exception {
        Grid grid = new Grid(701, 523, 1, Rim.BOUNDED);
        Map<String, boolean[]> bitmaps = bitmaps(grid.width(), grid.height());
        bitmaps.remove("empty");
        Process python = scipy(grid);
        try (OutputStream in = python.getOutputStream()) {
            for (Map.Entry<String, boolean[]> bitmap : bitmaps.entrySet()) {
                assertArrayEquals(
                        transformed(python, in, bitmap.getValue()),
                        Distance.squaredPixels(bitmap.getValue(), true, grid),
                        bitmap.getKey());
            }
        }
    }

    private static Process scipy(Grid grid) {
        try {
            return new ProcessBuilder(
                            "python3", "-c", SCIPY, Integer.toString(grid.width()), Integer.toString(grid.height()))
                    .start();
        } catch (IOException absent) {
            return missing();
        }
    }

    private static <T> T missing() {
        if ("true".equals(System.getenv("CI"))) {
            fail("python3 with scipy is needed to check distances, and it gave no answer");
        }
        return abort("python3 with scipy is not here");
    }

    private static float[] transformed(Process python, OutputStream in, boolean[] set) {
        byte[] bytes = new byte[set.length];
        for (int i = 0; i < set.length; i++) {
            bytes[i] = (byte) (set[i] ? 1 : 0);
        }
        byte[] answer;
        try {
            in.write(bytes);
            in.flush();
            answer = python.getInputStream().readNBytes(4 * set.length);
        } catch (IOException ended) {
            answer = new byte[0];
        }
        if (answer.length != 4 * set.length) {
            return missing();
        }
        float[] squared = new float[set.length];
        ByteBuffer.wrap(answer).order(ByteOrder.LITTLE_ENDIAN).asFloatBuffer().get(squared);
        return squared;
    }

    @Test
    void edgesLieMidwayBetweenPixels() {
        Grid grid = new Grid(8, 1, 10, Rim.BOUNDED);
        boolean[] set = {true, false, false, false, false, false, false, false};
        float[] distances = Distance.micrometres(set, true, grid);
        assertEquals(0, distances[0]);
        assertEquals(5, distances[1], 1e-6);
        assertEquals(65, distances[7], 1e-5);
    }

    /** Straight edges at many angles, and a round dot: signed distances known in closed form. */
    @Test
    void edgesSetByLightAreFoundFinerThanAPixel() {
        for (int degrees = 0; degrees < 360; degrees += 7) {
            double c = Math.cos(Math.toRadians(degrees));
            double s = Math.sin(Math.toRadians(degrees));
            checkEdge("straight, " + degrees + " degrees", (x, y) -> (x - 47.5) * c + (y - 47.5) * s + 0.29);
        }
        checkEdge("round dot", (x, y) -> Math.hypot(x - 47.3, y - 46.8) - 17.4);
        checkEdge("round land", (x, y) -> 17.4 - Math.hypot(x - 47.3, y - 46.8));
    }

    private static void checkEdge(String what, DoubleBinaryOperator distance) {
        Grid grid = new Grid(96, 96, 1, Rim.BOUNDED);
        double[] exact = new double[grid.area()];
        float[] dose = new float[grid.area()];
        boolean[] hard = new boolean[grid.area()];
        for (int i = 0; i < dose.length; i++) {
            exact[i] = distance.applyAsDouble(i % 96, i / 96);
            dose[i] = (float) Normal.below(exact[i]);
            hard[i] = dose[i] >= 0.5f;
        }
        float[] beyond = EdgeDistance.micrometres(hard, false, new DoseEdge(dose, 0.5), grid);
        double sum = 0;
        double worst = 0;
        int count = 0;
        for (int i = 0; i < dose.length; i++) {
            boolean near = Math.hypot(i % 96 - 47.5, i / 96 - 47.5) < 30;
            if (near && hard[i] && exact[i] < 8) {
                double error = beyond[i] - exact[i];
                assertTrue(error > -0.05, what + " is " + error + " too near");
                worst = Math.max(worst, error);
                sum += error;
                count++;
            }
        }
        assertTrue(worst < 0.4, what + " is up to " + worst + " too far");
        assertTrue(sum / count < 0.1, what + " is on average " + sum / count + " too far");
    }

    @Test
    void theNumberOfThreadsChangesNothing() throws Exception {
        Grid grid = new Grid(301, 203, 1, Rim.WRAPPED);
        boolean[] set = bitmaps(301, 203).get("grain");
        float[] many = Distance.squaredPixels(set, true, grid);
        float[] one = new ForkJoinPool(1)
                .submit(() -> Distance.squaredPixels(set, true, grid))
                .get();
        assertArrayEquals(many, one);
        assertTrue(many.length > 0);
    }
}
