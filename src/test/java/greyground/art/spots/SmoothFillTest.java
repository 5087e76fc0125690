package greyground.art.spots;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.art.OutsideTools;
import java.nio.file.Path;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SmoothFillTest {
    private static final int SIDE = 21;

    @TempDir
    Path folder;

    /** The disc of 113 pixels, x² + y² at most 36.1, in the middle. */
    private static boolean[] disc() {
        boolean[] hole = new boolean[SIDE * SIDE];
        for (int i = 0; i < hole.length; i++) {
            int x = i % SIDE - SIDE / 2;
            int y = i / SIDE - SIDE / 2;
            hole[i] = x * x + y * y <= 36.1;
        }
        return hole;
    }

    private static double[] field(DoubleBinaryOperator of) {
        double[] field = new double[SIDE * SIDE];
        for (int i = 0; i < field.length; i++) {
            field[i] = of.applyAsDouble(i % SIDE - SIDE / 2, i / SIDE - SIDE / 2);
        }
        return field;
    }

    private static double[] filled(double[] field, boolean twice) {
        double[] filled = field.clone();
        boolean[] hole = disc();
        for (int i = 0; i < filled.length; i++) {
            filled[i] = hole[i] ? 0 : filled[i];
        }
        new SmoothFill(SIDE, SIDE, hole, twice).fill(filled);
        return filled;
    }

    private static double rms(double[] one, double[] other) {
        double sum = 0;
        int count = 0;
        boolean[] hole = disc();
        for (int i = 0; i < one.length; i++) {
            if (hole[i]) {
                sum += (one[i] - other[i]) * (one[i] - other[i]);
                count++;
            }
        }
        assertEquals(113, count);
        return Math.sqrt(sum / count);
    }

    private static double wave(double x, double y) {
        return 50 + 5 * Math.cos(2 * Math.PI * x / 20);
    }

    /** Planes and saddles are harmonic on this grid, paraboloids biharmonic. */
    @Test
    void fillsWhatItsEquationAllowsExactly() {
        double[] saddle = field((x, y) -> 40 + x - 2 * y + x * x - y * y);
        assertArrayEquals(saddle, filled(saddle, false), 1e-9);
        double[] bowl = field((x, y) -> x * x + y * y);
        assertArrayEquals(bowl, filled(bowl, true), 1e-9);
    }

    /** Solved directly, as a sparse system, elsewhere. */
    @Test
    void agreesWithDirectSolutions() {
        double[] bowl = field((x, y) -> x * x + y * y);
        assertEquals(24.62284, rms(bowl, filled(bowl, false)), 1e-4);
        double[] wave = field(SmoothFillTest::wave);
        int middle = SIDE / 2 * SIDE + SIDE / 2;
        assertEquals(51.15332, filled(wave, false)[middle], 1e-4);
        assertEquals(53.80326, filled(wave, true)[middle], 1e-4);
        assertEquals(2.19925, rms(wave, filled(wave, false)), 1e-4);
        assertEquals(0.58379, rms(wave, filled(wave, true)), 1e-4);
        double[] edge = field((x, y) -> 50 + 10 * Math.tanh(x / 3));
        assertEquals(1.47513, rms(edge, filled(edge, false)), 1e-4);
        assertEquals(0.66536, rms(edge, filled(edge, true)), 1e-4);
    }

    @Test
    void agreesWithScikitImagesBiharmonicFill() throws Exception {
        String python = OutsideTools.python("import numpy, skimage.restoration");
        String said = OutsideTools.run(
                folder,
                java.util.List.of(
                        python,
                        "-c",
                        "import numpy as np\nfrom skimage.restoration import inpaint_biharmonic\n"
                                + "y,x=np.mgrid[-10:11,-10:11]\nf=.5+.05*np.cos(2*np.pi*x/20)+.002*y+.01*np.sin(x*y/9)\n"
                                + "print(' '.join('%.12f'%v for v in inpaint_biharmonic(f,(x*x+y*y<=36.1)).ravel()))\n"),
                null);
        double[] outside = java.util.Arrays.stream(
                        said.strip().lines().reduce((a, b) -> b).orElseThrow().split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        double[] ours = filled(
                field((x, y) -> 0.5 + 0.05 * Math.cos(2 * Math.PI * x / 20) + 0.002 * y + 0.01 * Math.sin(x * y / 9)),
                true);
        assertArrayEquals(outside, ours, 1e-8);
    }
}
