package greyground.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** The statistics that a lesson adds to those of {@link MeasuredStatisticsTest} and {@link FitLeastSquaresTest}. */
class LessonStatisticsTest {
    /** numpy.linalg.lstsq on the weighted design, evaluated at two places. */
    @Test
    void localRegressionAgreesWithNumPy() {
        Random random = new Random(3);
        List<double[]> places = new ArrayList<>();
        double[] values = new double[20];
        for (int i = 0; i < values.length; i++) {
            places.add(new double[] {random.nextGaussian(), random.nextGaussian()});
            values[i] = 50 + 4 * Math.sin(places.get(i)[0]) - Math.exp(places.get(i)[1] / 2) + random.nextGaussian();
        }
        double[][] asked = {{0.1, -0.2}, {0.7, 0.4}};
        List<double[]> rows = new ArrayList<>(places);
        rows.add(values);
        double[] theirs = MeasuredStatisticsTest.python(
                "import sys,numpy as np\n"
                        + "t=[np.array(l.split(),float) for l in sys.stdin];P=np.array(t[:-1]);v=t[-1]\n"
                        + "m=np.array([.1,-.2]);h=.9;D=P-m;w=np.exp(-(D**2).sum(1)/h**2/2)\n"
                        + "def B(d): x,y=d.T; return np.c_[np.ones(len(x)),x,y,x*x,x*y,y*y]\n"
                        + "r=np.sqrt(w);b=np.linalg.lstsq(B(D)*r[:,None],v*r,rcond=None)[0]\n"
                        + "print(*(B(np.array([[.1,-.2],[.7,.4]])-m)@b))",
                rows);
        LocalQuadratic local = new LocalQuadratic(places, asked[0], 0.9);
        for (int k = 0; k < asked.length; k++) {
            double[] shares = local.shares(asked[k]);
            double ours = 0;
            for (int i = 0; i < shares.length; i++) {
                ours += shares[i] * values[i];
            }
            assertEquals(theirs[k], ours, 1e-9);
            assertEquals(1, Arrays.stream(shares).sum(), 1e-9);
        }
    }

    /**
     * A belief is a reading like others: normal belief and normal readings give the weighted mean and its variance in closed form
     * (Gelman et al., Bayesian Data Analysis, 3rd ed., eq. 2.11 and 2.12, from memory): belief 10 +- 2, readings 14 and 15 +- 1.
     */
    @Test
    void beliefAndReadingsMeetAsTheClosedFormSays() {
        double precision = 1.0 / 4 + 2;
        double mean = (10.0 / 4 + 14 + 15) / precision;
        FitLeastSquares.Solution solution = new FitLeastSquares(
                        at -> new double[] {at[0], at[0], at[0]},
                        new double[] {14, 15, 10},
                        new double[] {1, 1, 2},
                        new double[] {0},
                        new double[] {30},
                        new double[] {0.1},
                        1e-9,
                        40)
                .solve(new double[] {10});
        assertEquals(mean, solution.values().getEntry(0), 1e-6);
        RealMatrix covariance = solution.covariance(new double[] {2});
        assertEquals(1 / precision, covariance.getEntry(0, 0), 1e-6);
        assertEquals(2, solution.degrees());
    }

    @Test
    void everyNumberIsBelievedWithinItsRange() {
        for (FitParameter number : FitParameter.values()) {
            double spread = LessonNumbers.belief(number);
            assertTrue(spread > 0 && spread < number.range() / 2, number + " " + spread);
        }
    }
}
