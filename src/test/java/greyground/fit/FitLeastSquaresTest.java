package greyground.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.Arrays;
import java.util.function.UnaryOperator;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Certified values of the NIST Statistical Reference Datasets, nonlinear regression (itl.nist.gov/div898/strd). */
class FitLeastSquaresTest {
    private static final double NONE = Double.POSITIVE_INFINITY;

    private static final double[] MISRA_X = {
        77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0
    };
    private static final double[] MISRA_Y = {
        10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78
    };
    private static final double[] THURBER_X = {
        -3.067, -2.981, -2.921, -2.912, -2.840, -2.797, -2.702, -2.699, -2.633, -2.481, -2.363, -2.322, -1.501, -1.460,
        -1.274, -1.212, -1.100, -1.046, -0.915, -0.714, -0.566, -0.545, -0.400, -0.309, -0.109, -0.103, 0.010, 0.119,
        0.377, 0.790, 0.963, 1.006, 1.115, 1.572, 1.841, 2.047, 2.200
    };
    private static final double[] THURBER_Y = {
        80.574, 84.248, 87.264, 87.195, 89.076, 89.608, 89.868, 90.101, 92.405, 95.854, 100.696, 101.060, 401.672,
        390.724, 567.534, 635.316, 733.054, 759.087, 894.206, 990.785, 1090.109, 1080.914, 1122.643, 1178.351, 1260.531,
        1273.514, 1288.339, 1327.543, 1353.863, 1414.509, 1425.208, 1421.384, 1442.962, 1464.350, 1468.705, 1447.894,
        1457.628
    };

    private static double[] misra(double[] b) {
        return Arrays.stream(MISRA_X).map(x -> -b[0] * Math.expm1(-b[1] * x)).toArray();
    }

    private static double[] thurber(double[] b) {
        return Arrays.stream(THURBER_X)
                .map(x -> (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6]))))
                .toArray();
    }

    private static void check(
            UnaryOperator<double[]> model,
            double[] readings,
            double[] least,
            double[] most,
            double[] start,
            double[] certified,
            double[] deviations,
            double sum) {
        double[] ones = new double[readings.length];
        Arrays.fill(ones, 1);
        double[] steps =
                Arrays.stream(certified).map(value -> 1e-5 * Math.abs(value)).toArray();
        FitLeastSquares.Solution solution =
                new FitLeastSquares(model, readings, ones, least, most, steps, 1e-14, 500).solve(start);
        RealMatrix covariance = solution.covariance(certified).scalarMultiply(solution.varianceOfUnit());
        for (int i = 0; i < certified.length; i++) {
            assertEquals(certified[i], solution.values().getEntry(i), 1e-6 * Math.abs(certified[i]), "b" + (i + 1));
            assertEquals(
                    deviations[i], Math.sqrt(covariance.getEntry(i, i)), 1e-4 * deviations[i], "error of b" + (i + 1));
        }
        assertEquals(sum, solution.sum(), 1e-8 * sum);
        assertEquals(readings.length - certified.length, solution.degrees());
    }

    private static double[] filled(int count, double value) {
        double[] filled = new double[count];
        Arrays.fill(filled, value);
        return filled;
    }

    /** Misra1a, lower difficulty, from its far start. */
    @Test
    void misra1aWithoutBounds() {
        check(
                FitLeastSquaresTest::misra,
                MISRA_Y,
                filled(2, -NONE),
                filled(2, NONE),
                new double[] {500, 0.0001},
                new double[] {2.3894212918E+02, 5.5015643181E-04},
                new double[] {2.7070075241E+00, 7.2668688436E-06},
                1.2455138894E-01);
    }

    /** Bounds that the solution does not touch change neither it nor its errors. */
    @Test
    void misra1aWithinBounds() {
        check(
                FitLeastSquaresTest::misra,
                MISRA_Y,
                new double[] {50, 0.00005},
                new double[] {600, 0.005},
                new double[] {500, 0.0001},
                new double[] {2.3894212918E+02, 5.5015643181E-04},
                new double[] {2.7070075241E+00, 7.2668688436E-06},
                1.2455138894E-01);
    }

    /** Thurber, higher difficulty, from its near start. */
    @Test
    void thurberWithoutBounds() {
        check(
                FitLeastSquaresTest::thurber,
                THURBER_Y,
                filled(7, -NONE),
                filled(7, NONE),
                new double[] {1300, 1500, 500, 75, 1, 0.4, 0.05},
                new double[] {
                    1.2881396800E+03,
                    1.4910792535E+03,
                    5.8323836877E+02,
                    7.5416644291E+01,
                    9.6629502864E-01,
                    3.9797285797E-01,
                    4.9727297349E-02
                },
                new double[] {
                    4.6647963344E+00,
                    3.9571156086E+01,
                    2.8698696102E+01,
                    5.5675370270E+00,
                    3.1333340687E-02,
                    1.4984928198E-02,
                    6.5842344623E-03
                },
                5.6427082397E+03);
    }

    @ParameterizedTest
    @ValueSource(doubles = {60, 150, 238})
    void aBoundIsNeverPassed(double most) {
        FitLeastSquares.Solution solution = new FitLeastSquares(
                        FitLeastSquaresTest::misra,
                        MISRA_Y,
                        filled(14, 1),
                        new double[] {50, 0.00005},
                        new double[] {most, 0.005},
                        new double[] {0.01, 1e-7},
                        1e-12,
                        500)
                .solve(new double[] {55, 0.001});
        assertTrue(solution.values().getEntry(0) <= most);
        assertEquals(most, solution.values().getEntry(0), 0.02 * most);
    }

    @Test
    void moreNumbersThanReadingsAreRefused() {
        FitLeastSquares small = new FitLeastSquares(
                b -> new double[] {b[0] + b[1]},
                new double[] {1},
                new double[] {1},
                filled(2, -NONE),
                filled(2, NONE),
                filled(2, 0.1),
                1e-9,
                500);
        assertThrows(Refusal.class, () -> small.solve(new double[2]));
    }
}
